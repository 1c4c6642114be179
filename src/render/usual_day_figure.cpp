#include "findings/wording.hpp"
#include "render/level_axis.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr double width = 495;
constexpr double left = 38;
constexpr double right = width;
constexpr double top = 16;
constexpr double strip_height = 22;

// Heights below the plot, which is as high as one wants it.
struct Heights {
    double bottom = 0;
    double strip_top = 0;
    double strip_bottom = 0;
    double figure = 0;
};

Heights heights_of(double plot_height) {
    const double bottom = top + plot_height;
    return {bottom, bottom + 30, bottom + 30 + strip_height, bottom + 74};
}

double x_of(double bin) {
    return left + bin / UsualDay::bins * (right - left);
}

double centre(std::size_t bin) {
    return x_of(static_cast<double>(bin) + 0.5);
}

// Runs of neighbouring bins for which `has` holds.
template <typename Has, typename Visit>
void each_run(const UsualDay& usual, Has has, Visit visit) {
    for (std::size_t b = 0; b < usual.bin.size();) {
        std::size_t end = b;
        while (end < usual.bin.size() && has(usual.bin[end])) {
            ++end;
        }
        if (end > b) {
            visit(b, end);
        }
        b = end + 1;
    }
}

void ribbon(Canvas& canvas, const UsualDay& usual, const LevelAxis& axis, std::size_t low,
            std::size_t high, Fill fill, bool dashed) {
    each_run(
        usual,
        [&](const UsualDay::Bin& bin) { return bin.percentiles[low] && bin.percentiles[high]; },
        [&](std::size_t begin, std::size_t end) {
            std::vector<Point> upper;
            std::vector<Point> lower;
            for (std::size_t b = begin; b < end; ++b) {
                upper.push_back({centre(b), axis.y(*usual.bin[b].percentiles[high])});
                lower.push_back({centre(b), axis.y(*usual.bin[b].percentiles[low])});
            }
            std::vector<Point> area = upper;
            area.insert(area.end(), lower.rbegin(), lower.rend());
            canvas.polygon(area, fill);
            if (dashed) {
                canvas.polyline(upper, {0.7, Ink::line, true});
                canvas.polyline(lower, {0.7, Ink::line, true});
            }
        });
}

void median_line(Canvas& canvas, const UsualDay& usual, const LevelAxis& axis) {
    each_run(
        usual, [](const UsualDay::Bin& bin) { return bin.percentiles[2].has_value(); },
        [&](std::size_t begin, std::size_t end) {
            std::vector<Point> line;
            for (std::size_t b = begin; b < end; ++b) {
                line.push_back({centre(b), axis.y(*usual.bin[b].percentiles[2])});
            }
            canvas.polyline(line, {2, Ink::accent, false});
        });
}

void clock(Canvas& canvas, WayOfWriting way, double bottom) {
    for (int h = 0; h <= 24; h += 3) {
        const double x = x_of(h * 4);
        canvas.line({x, top}, {x, bottom}, {0.35, Ink::faint, false});
        canvas.text({x, bottom + 13}, hour_on_scale(h, way),
                    {8, false,
                     h == 24  ? Anchor::end
                     : h == 0 ? Anchor::start
                              : Anchor::middle,
                     Ink::quiet});
    }
}

void days_strip(Canvas& canvas, const UsualDay& usual, const Heights& heights) {
    const double strip_top = heights.strip_top;
    const double strip_bottom = heights.strip_bottom;
    canvas.text({left, strip_top - 3}, "days behind each quarter hour",
                {7.5, false, Anchor::start, Ink::quiet});
    int most = 1;
    for (const auto& bin : usual.bin) {
        most = std::max(most, bin.days);
    }
    for (std::size_t b = 0; b < usual.bin.size(); ++b) {
        const double h = (strip_bottom - strip_top) * usual.bin[b].days / most;
        canvas.rectangle(x_of(static_cast<double>(b)) + 0.4, strip_bottom - h,
                         (right - left) / UsualDay::bins - 0.8, h, Fill::inner_ribbon);
    }
    canvas.line({left, strip_bottom}, {right, strip_bottom}, {0.6, Ink::line, false});
    canvas.text({left - 4, strip_top + 6}, std::to_string(most),
                {7.5, false, Anchor::end, Ink::quiet});
    canvas.text({left - 4, strip_bottom}, "0", {7.5, false, Anchor::end, Ink::quiet});
}

void key(Canvas& canvas, const UsualDay& usual, double strip_bottom) {
    const double y = strip_bottom + 18;
    canvas.line({left, y - 3}, {left + 18, y - 3}, {2, Ink::accent, false});
    canvas.text({left + 23, y}, "median", {8, false, Anchor::start, Ink::text});
    canvas.rectangle(left + 75, y - 8, 18, 9, Fill::inner_ribbon);
    canvas.text({left + 98, y}, "middle half of days (25 to 75 %)",
                {8, false, Anchor::start, Ink::text});
    canvas.rectangle(left + 250, y - 8, 18, 9, Fill::outer_ribbon);
    canvas.text(
        {left + 273, y},
        usual.outer_dashed ? "9 of 10 (5 to 95 %), dashed: under 14 days" : "9 of 10 (5 to 95 %)",
        {8, false, Anchor::start, Ink::text});
}

double highest_of(const UsualDay& usual) {
    double highest = 0;
    for (const auto& bin : usual.bin) {
        for (const auto& p : bin.percentiles) {
            highest = std::max(highest, p.value_or(0));
        }
    }
    return highest;
}

std::string finding_of(const UsualDay& usual, WayOfWriting way) {
    const UsualDay::Bin* low = nullptr;
    const UsualDay::Bin* high = nullptr;
    for (const auto& bin : usual.bin) {
        if (bin.percentiles[2]) {
            low = low == nullptr || *bin.percentiles[2] < *low->percentiles[2] ? &bin : low;
            high = high == nullptr || *bin.percentiles[2] > *high->percentiles[2] ? &bin : high;
        }
    }
    if (low == nullptr) {
        return "Too few days were seen at any time of day to draw a usual day.";
    }
    const auto at = [&](const UsualDay::Bin* bin) {
        const auto quarter = bin - usual.bin.data();
        return clock_time(WallTime{std::chrono::minutes{15 * quarter}}, way);
    };
    return fmt::format(
        "The median is lowest about {} ({}) and highest about {} ({}), from {} days.", at(low),
        glucose_words(*low->percentiles[2], usual.unit), at(high),
        glucose_words(*high->percentiles[2], usual.unit), usual.days);
}

}  // namespace

Figure usual_day_figure(const FirstReview& review, double plot_height) {
    const UsualDay& usual = review.usual_day;
    const WayOfWriting way = review.input.zones.writing();
    const Heights heights = heights_of(plot_height);
    Figure figure;
    figure.width = width;
    figure.height = heights.figure;
    figure.title = "The usual day (ambulatory glucose profile)";
    figure.alternative = finding_of(usual, way);
    figure.columns = {"time", "days", "5 %", "25 %", "median", "75 %", "95 %"};
    for (std::size_t b = 0; b < usual.bin.size(); b += 4) {
        std::vector<std::string> row = {full_hour(static_cast<int>(b / 4), way),
                                        std::to_string(usual.bin[b].days)};
        for (const auto& p : usual.bin[b].percentiles) {
            row.push_back(p ? glucose_number(*p, usual.unit) : "");
        }
        figure.rows.push_back(std::move(row));
    }
    const ShownRange range = shown_range(review.input.goals);
    figure.draw = [&usual, heights, range, way](Canvas& canvas) {
        const LevelAxis axis(usual.unit, range, highest_of(usual), top, heights.bottom);
        clock(canvas, way, heights.bottom);
        ribbon(canvas, usual, axis, 0, 4, Fill::outer_ribbon, usual.outer_dashed);
        ribbon(canvas, usual, axis, 1, 3, Fill::inner_ribbon, false);
        axis.draw(canvas, left, right);
        median_line(canvas, usual, axis);
        days_strip(canvas, usual, heights);
        key(canvas, usual, heights.strip_bottom);
    };
    return figure;
}

Figure hours_seen(const FirstReview& review) {
    const Fitness& fitness = review.fitness;
    const WayOfWriting way = review.input.zones.writing();
    Figure figure;
    figure.width = width;
    figure.height = 58;
    figure.title = "On how many days each hour was seen";
    figure.columns = {"hour", "days"};
    int most = 1;
    int least = 1 << 20;
    for (std::size_t h = 0; h < 24; ++h) {
        most = std::max(most, fitness.by_hour[h].days_with_readings);
        least = std::min(least, fitness.by_hour[h].days_with_readings);
        figure.rows.push_back({full_hour(static_cast<int>(h), way),
                               std::to_string(fitness.by_hour[h].days_with_readings)});
    }
    figure.alternative = fmt::format(
        "Every hour of the clock was seen on {} of {} days.",
        least == most ? std::to_string(most) : fmt::format("{} to {}", least, most), fitness.days);
    figure.draw = [&fitness, most, way](Canvas& canvas) {
        constexpr double base = 38;
        const double cell = (width - left) / 24;
        for (std::size_t h = 0; h < 24; ++h) {
            const int days = fitness.by_hour[h].days_with_readings;
            const double x = left + static_cast<double>(h) * cell;
            canvas.rectangle(x + 1, base - 30.0 * days / most, cell - 2, 30.0 * days / most,
                             Fill::inner_ribbon);
            // "11 pm" has no room in every cell.
            if (!way.twelve_hours || h % 3 == 0) {
                canvas.text({x + cell / 2, base + 11},
                            way.twelve_hours ? hour_on_scale(static_cast<int>(h), way)
                                             : fmt::format("{:02}", h),
                            {7, false, Anchor::middle, Ink::quiet});
            }
        }
        canvas.line({left, base}, {width, base}, {0.6, Ink::line, false});
        canvas.text({left - 4, base - 24}, std::to_string(most),
                    {7.5, false, Anchor::end, Ink::quiet});
        canvas.text({left - 4, base}, "0", {7.5, false, Anchor::end, Ink::quiet});
    };
    return figure;
}

}  // namespace tracewright
