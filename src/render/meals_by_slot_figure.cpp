#include "findings/wording.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <map>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr double width = 495;
constexpr double left = 96;
constexpr double right = 470;
constexpr double top = 14;
constexpr double row_height = 70;
constexpr double gap = 14;
constexpr double minutes_before = 30;
constexpr double minutes_after = 180;

struct Row {
    MealSlot slot{};
    std::vector<std::size_t> meals;  // readable ones, by index
    int not_readable = 0;
};

std::vector<Row> rows_of(const MealReport& report) {
    std::map<MealSlot, Row> by_slot;
    for (std::size_t i = 0; i < report.occasions.size(); ++i) {
        Row& row = by_slot[report.occasions[i].slot];
        row.slot = report.occasions[i].slot;
        if (report.responses[i].not_readable.empty()) {
            row.meals.push_back(i);
        } else {
            ++row.not_readable;
        }
    }
    std::vector<Row> rows;
    for (auto& [slot, row] : by_slot) {
        rows.push_back(std::move(row));
    }
    return rows;
}

// Readings are joined while none is missing between them.
std::vector<std::vector<Point>> curves_of(const TraceView& view, Instant first_bite,
                                          GlucoseUnit unit) {
    const Interval window{first_bite - 30min, first_bite + 180min};
    std::vector<std::vector<Point>> curves(1);
    const Reading* before = nullptr;
    for (const Reading& reading : readings_within(cut(view, window))) {
        if (reading.implausible()) {
            continue;
        }
        if (before != nullptr && 2 * (reading.at - before->at) > 3 * before->interval()) {
            curves.emplace_back();
        }
        curves.back().push_back({static_cast<double>((reading.at - first_bite).count()) / 60,
                                 reading.value().in(unit)});
        before = &reading;
    }
    return curves;
}

struct Scale {
    double low = 0;
    double high = 1;
    double row_top = 0;

    Point at(Point minutes_and_level) const {
        const double share =
            (minutes_and_level.x + minutes_before) / (minutes_before + minutes_after);
        const double up = std::clamp((minutes_and_level.y - low) / (high - low), 0.0, 1.0);
        return {left + share * (right - left), row_top + row_height - up * row_height};
    }
};

void draw_frame(Canvas& canvas, const Scale& scale, GlucoseUnit unit, bool last) {
    const bool mg = unit == GlucoseUnit::mg_per_dl;
    for (const double edge : {mg ? 70 : 3.9, mg ? 180 : 10.0}) {
        const double y = scale.at({0, edge}).y;
        canvas.line({left, y}, {right, y}, {0.6, Ink::line, true});
        canvas.text({left - 4, y + 2.6}, glucose_number(edge, unit),
                    {7, false, Anchor::end, Ink::quiet});
    }
    const double bottom = scale.row_top + row_height;
    canvas.line({left, bottom}, {right, bottom}, {0.6, Ink::line, false});
    const double bite = scale.at({0, 0}).x;
    canvas.line({bite, scale.row_top}, {bite, bottom}, {0.8, Ink::text, false});
    if (last) {
        for (const int minutes : {0, 60, 120, 180}) {
            const double x = scale.at({static_cast<double>(minutes), 0}).x;
            canvas.line({x, bottom}, {x, bottom + 3}, {0.6, Ink::line, false});
            canvas.text({x, bottom + 11},
                        minutes == 0 ? "first bite" : std::to_string(minutes / 60) + " h",
                        {7, false, Anchor::middle, Ink::quiet});
        }
    }
}

}  // namespace

Figure meals_by_slot_figure(const FirstReview& review) {
    const MealReport& report = *review.goes_with.meals;
    const GlucoseUnit unit = review.input.unit;
    const std::vector<Row> rows = rows_of(report);
    double highest = unit == GlucoseUnit::mg_per_dl ? 200 : 11;
    for (const MealResponse& response : report.responses) {
        if (response.not_readable.empty()) {
            highest = std::max(highest, converted(response.peak, GlucoseUnit::mg_per_dl, unit));
        }
    }
    Figure figure;
    figure.width = width;
    figure.height = top + (row_height + gap) * static_cast<double>(rows.size()) + 6;
    figure.title = "Meals by slot, from the first bite";
    figure.alternative =
        "Every readable meal as a line, from half an hour before its first bite "
        "to three hours after; dashed: the range.";
    figure.columns = {"slot", "meals drawn", "not readable",
                      std::string("middle rise, ") + name_of(unit)};
    for (const Row& row : rows) {
        std::vector<double> rises;
        for (const std::size_t meal : row.meals) {
            rises.push_back(report.responses[meal].rise);
        }
        std::sort(rises.begin(), rises.end());
        const std::string middle =
            rises.empty()
                ? "none"
                : glucose_number(
                      converted(rises[(rises.size() - 1) / 2], GlucoseUnit::mg_per_dl, unit), unit);
        figure.rows.push_back({name_of(row.slot), std::to_string(row.meals.size()),
                               std::to_string(row.not_readable), middle});
        figure.alternative +=
            fmt::format(" After {}: {} drawn, middle rise {}.", name_of(row.slot), row.meals.size(),
                        rises.empty() ? middle : middle + " " + name_of(unit));
    }
    figure.draw = [&review, &report, rows, unit, highest](Canvas& canvas) {
        for (std::size_t r = 0; r < rows.size(); ++r) {
            const Scale scale{unit == GlucoseUnit::mg_per_dl ? 40 : 2.2, highest,
                              top + (row_height + gap) * static_cast<double>(r)};
            draw_frame(canvas, scale, unit, r + 1 == rows.size());
            canvas.text({0, scale.row_top + 14}, name_of(rows[r].slot),
                        {9.5, true, Anchor::start, Ink::text});
            canvas.text({0, scale.row_top + 26}, fmt::format("{} drawn", rows[r].meals.size()),
                        {7.5, false, Anchor::start, Ink::quiet});
            if (rows[r].not_readable > 0) {
                canvas.text({0, scale.row_top + 37},
                            fmt::format("{} not readable", rows[r].not_readable),
                            {7.5, false, Anchor::start, Ink::quiet});
            }
            for (const std::size_t meal : rows[r].meals) {
                for (auto& curve :
                     curves_of(review.trace.view(), report.occasions[meal].at, unit)) {
                    std::transform(curve.begin(), curve.end(), curve.begin(),
                                   [&](Point point) { return scale.at(point); });
                    canvas.polyline(curve, {0.7, Ink::accent, false});
                }
            }
        }
    };
    return figure;
}

}  // namespace tracewright
