#include "findings/hours_of_day.hpp"
#include "findings/wording.hpp"
#include "render/bands_of_day.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr double bar_top = 24;
constexpr double bar_height = 34;
constexpr double key_top = bar_top + bar_height + 28;
constexpr double key_height = 46;
constexpr double narrow = 400;  // below, the key stands in two columns

// The whole bar: a day, or the time seen where that is too little to tell hours of a day.
struct Whole {
    std::chrono::seconds length;
    bool day;

    std::string part(double percent) const {
        const auto seconds = std::lround(percent / 100 * static_cast<double>(length.count()));
        return percent > 0 && seconds < 30 ? "under 1 min"
                                           : hours_and_minutes(std::chrono::seconds{seconds});
    }
    std::string words() const {
        return day ? "24 hours" : "the " + hours_and_minutes(length) + " seen";
    }
};

Whole whole_of(const FirstReview& review) {
    const bool day = tells_hours_of_a_day(review.fitness.sensed);
    return {day ? std::chrono::hours{24} : review.fitness.sensed, day};
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
void draw_bar(Canvas& canvas, const std::vector<BandOfDay>& bands, double width,
              const Whole& whole) {
    double x = 0;
    double label_end = -10;
    for (const BandOfDay& band : bands) {
        const double w = band.percent / 100 * width;
        if (w <= 0) {
            continue;
        }
        canvas.rectangle(x, bar_top, std::max(w, 0.6), bar_height, band.fill);
        const std::string label = whole.part(band.percent);
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

void draw_key(Canvas& canvas, const std::vector<BandOfDay>& bands, double width,
              const Whole& whole) {
    const std::size_t columns = key_columns(width);
    const double column = width / static_cast<double>(columns);
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const double x = static_cast<double>(i % columns) * column;
        const std::size_t row = i / columns;
        const double top = key_top + key_height * static_cast<double>(row);
        canvas.rectangle(x, top, 12, 12, bands[i].fill);
        canvas.frame(x, top, 12, 12, {0.5, Ink::line, false});
        canvas.text({x + 17, top + 9.5}, bands[i].name, {9, true, Anchor::start, Ink::text});
        const std::string time = whole.part(bands[i].percent);
        const TextStyle style{9, false, Anchor::start, Ink::text};
        canvas.text({x, top + 25}, time, style);
        canvas.text({x + canvas.text_width(time, style) + 4, top + 25},
                    percent_words(bands[i].percent), {7, false, Anchor::start, Ink::quiet});
        canvas.text({x, top + 36}, bands[i].range, {7.2, false, Anchor::start, Ink::quiet});
    }
}

}  // namespace

Figure hours_bar(const FirstReview& review, double width) {
    Figure figure;
    figure.width = width;
    const Whole whole = whole_of(review);
    figure.title = whole.day ? "Hours of the day in each band" : "Time seen in each band";
    figure.columns = {"band", "range", "of " + whole.words(), "percent of the time seen"};
    const std::vector<BandOfDay> bands = bands_of_day(review);
    for (const BandOfDay& band : bands) {
        figure.rows.push_back(
            {band.name, band.range, whole.part(band.percent), percent_words(band.percent)});
        figure.alternative +=
            fmt::format("{}{} {}", figure.alternative.empty() ? "Of " + whole.words() + ": " : ", ",
                        whole.part(band.percent), band.name);
    }
    figure.alternative += ".";
    const std::size_t key_rows = (bands.size() + key_columns(width) - 1) / key_columns(width);
    figure.height = key_top + key_height * static_cast<double>(key_rows) - 6;
    figure.draw = [bands, width, whole](Canvas& canvas) {
        draw_bar(canvas, bands, width, whole);
        if (whole.day) {
            draw_ticks(canvas, width);
        }
        draw_key(canvas, bands, width, whole);
    };
    return figure;
}

}  // namespace tracewright
