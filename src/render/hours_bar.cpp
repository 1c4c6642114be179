#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace tracewright {

namespace {

struct BandOfDay {
    Band band;
    Fill fill;
    const char* name;
    double percent;
};

constexpr double bar_top = 24;
constexpr double bar_height = 34;
constexpr double key_top = bar_top + bar_height + 28;
constexpr double key_height = 46;
constexpr double narrow = 400;  // below, the key stands in two columns

std::vector<BandOfDay> bands_of(const FirstReview& review) {
    std::vector<BandOfDay> bands = {{Band::very_low, Fill::very_low, "very low", 0},
                                    {Band::low, Fill::low, "low", 0},
                                    {Band::in_range, Fill::in_range, "in range", 0},
                                    {Band::high, Fill::high, "high", 0},
                                    {Band::very_high, Fill::very_high, "very high", 0}};
    for (BandOfDay& band : bands) {
        const Measure* measure = find(review.measures, name_of(band.band));
        band.percent = measure != nullptr ? measure->value.value_or(0) : 0;
    }
    return bands;
}

std::string time_words(double percent) {
    const auto seconds = std::lround(percent / 100 * 86400);
    return percent > 0 && seconds < 30 ? "under 1 min"
                                       : hours_and_minutes(std::chrono::seconds{seconds});
}

// The bands are apart: what is very low is not told again as low.
std::string range_words(Band band, GlucoseUnit unit) {
    const auto number = [unit](int edge) {
        const std::string words = edge_words(edge, unit);
        return words.substr(0, words.find(' '));
    };
    switch (band) {
        case Band::very_low:
            return "below " + edge_words(54, unit);
        case Band::low:
            return number(54) + " to below " + edge_words(70, unit);
        case Band::in_range:
            return number(70) + " to " + edge_words(180, unit);
        case Band::high:
            return "above " + number(180) + " to " + edge_words(250, unit);
        case Band::very_high:
            return "above " + edge_words(250, unit);
    }
    return "";
}

void draw_ticks(Canvas& canvas, double width) {
    const double hour = width / 24;
    for (int h = 0; h <= 24; ++h) {
        const double x = h * hour;
        const bool labelled = h % 6 == 0;
        canvas.line({x, bar_top + bar_height}, {x, bar_top + bar_height + (labelled ? 6.0 : 3.0)},
                    {labelled ? 0.8 : 0.5, Ink::line, false});
        if (labelled) {
            const Anchor anchor = h == 0 ? Anchor::start : h == 24 ? Anchor::end : Anchor::middle;
            canvas.text({x, bar_top + bar_height + 16}, std::to_string(h) + " h",
                        {8, false, anchor, Ink::quiet});
        }
    }
}

// Labels stand over their part; those that find no room go to the key below, which has all.
void draw_bar(Canvas& canvas, const std::vector<BandOfDay>& bands, double width) {
    double x = 0;
    double label_end = -10;
    for (const BandOfDay& band : bands) {
        const double w = band.percent / 100 * width;
        if (w <= 0) {
            continue;
        }
        canvas.rectangle(x, bar_top, std::max(w, 0.6), bar_height, band.fill);
        const std::string label = time_words(band.percent);
        const TextStyle style{10.5, true, Anchor::start, Ink::text};
        const double needed = canvas.text_width(label, style);
        if (w >= needed + 4 && x >= label_end) {
            canvas.text({x + 2, bar_top - 8}, label, style);
            label_end = x + needed + 8;
        }
        x += w;
    }
    canvas.frame(0, bar_top, width, bar_height, {0.8, Ink::line, false});
    x = 0;
    for (const BandOfDay& band : bands) {
        x += band.percent / 100 * width;
        if (x > 0.5 && x < width - 0.5) {
            canvas.line({x, bar_top}, {x, bar_top + bar_height}, {0.6, Ink::line, false});
        }
    }
}

std::size_t key_columns(double width) {
    return width < narrow ? 2 : 5;
}

void draw_key(Canvas& canvas, const std::vector<BandOfDay>& bands, GlucoseUnit unit, double width) {
    const std::size_t columns = key_columns(width);
    const double column = width / static_cast<double>(columns);
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const double x = static_cast<double>(i % columns) * column;
        const std::size_t row = i / columns;
        const double top = key_top + key_height * static_cast<double>(row);
        canvas.rectangle(x, top, 12, 12, bands[i].fill);
        canvas.frame(x, top, 12, 12, {0.5, Ink::line, false});
        canvas.text({x + 17, top + 9.5}, bands[i].name, {9, true, Anchor::start, Ink::text});
        const std::string time = time_words(bands[i].percent);
        const TextStyle style{9, false, Anchor::start, Ink::text};
        canvas.text({x, top + 25}, time, style);
        canvas.text({x + canvas.text_width(time, style) + 4, top + 25},
                    percent_words(bands[i].percent), {7, false, Anchor::start, Ink::quiet});
        canvas.text({x, top + 36}, range_words(bands[i].band, unit),
                    {7.2, false, Anchor::start, Ink::quiet});
    }
}

}  // namespace

Figure hours_bar(const FirstReview& review, double width) {
    Figure figure;
    figure.width = width;
    figure.title = "Hours of the day in each band";
    figure.columns = {"band", "range", "of 24 hours", "percent of the time seen"};
    const std::vector<BandOfDay> bands = bands_of(review);
    for (const BandOfDay& band : bands) {
        figure.rows.push_back({band.name, range_words(band.band, review.input.unit),
                               time_words(band.percent), percent_words(band.percent)});
        figure.alternative +=
            fmt::format("{}{} {}", figure.alternative.empty() ? "Of 24 hours: " : ", ",
                        time_words(band.percent), band.name);
    }
    figure.alternative += ".";
    const std::size_t key_rows = (bands.size() + key_columns(width) - 1) / key_columns(width);
    figure.height = key_top + key_height * static_cast<double>(key_rows) - 6;
    const GlucoseUnit unit = review.input.unit;
    figure.draw = [bands, unit, width](Canvas& canvas) {
        draw_bar(canvas, bands, width);
        draw_ticks(canvas, width);
        draw_key(canvas, bands, unit, width);
    };
    return figure;
}

}  // namespace tracewright
