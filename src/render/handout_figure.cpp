#include "render/handout_figure.hpp"

#include "coaching/handout_words.hpp"
#include "render/bands_of_day.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr double page_width = 495;
constexpr double phone_width = 260;
constexpr std::size_t names_a_row_on_a_phone = 3;
constexpr double bar_height = 34;
constexpr double tick = 5;
constexpr double label_size = 12;
constexpr double label_base = bar_height + tick + 15;
constexpr double label_row = 20;
constexpr TextStyle label{label_size, false, Anchor::start, Ink::text};

// Every hour of the day has its tick, every sixth a longer one.
void draw_hours(Canvas& canvas, double width) {
    canvas.frame(0, 0, width, bar_height, {1, Ink::text, false});
    for (int hour = 0; hour <= 24; ++hour) {
        const double x = hour * width / 24;
        canvas.line({x, bar_height}, {x, bar_height + (hour % 6 == 0 ? tick : tick / 2)},
                    {0.8, Ink::line, false});
    }
}

std::size_t names_a_row(double width, std::size_t bands) {
    return width < page_width ? names_a_row_on_a_phone : std::max<std::size_t>(bands, 1);
}

void draw_bands(Canvas& canvas, const std::vector<BandOfDay>& bands, double width) {
    double x = 0;
    for (const BandOfDay& band : bands) {
        const double part = band.percent / 100 * width;
        canvas.rectangle(x, 0, std::max(part, 0.6), bar_height, band.fill);
        x += part;
        canvas.line({x, 0}, {x, bar_height}, {0.8, Ink::text, false});
    }
    draw_hours(canvas, width);
    x = 0;
    double base = label_base;
    const std::size_t a_row = names_a_row(width, bands.size());
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const BandOfDay& band = bands[i];
        if (i > 0 && i % a_row == 0) {
            x = 0;
            base += label_row;
        }
        canvas.rectangle(x, base - 11, 13, 13, band.fill);
        canvas.frame(x, base - 11, 13, 13, {0.7, Ink::text, false});
        canvas.text({x + 19, base}, band.name, label);
        x += 19 + canvas.text_width(band.name, label) + 22;
    }
}

// "Longest first: in range, high, low."
std::string in_order_of_length(std::vector<BandOfDay> bands) {
    std::ranges::stable_sort(bands, std::ranges::greater{}, &BandOfDay::percent);
    std::string text;
    for (const BandOfDay& band : bands) {
        text += (text.empty() ? "" : ", ") + std::string(band.name);
    }
    return text.empty() ? "No reading was seen." : "Longest first: " + text + ".";
}

Figure bar_of_bands(const FirstReview& review, double width) {
    std::vector<BandOfDay> bands = bands_of_day(review);
    std::erase_if(bands, [](const BandOfDay& band) { return band.percent <= 0; });
    Figure figure;
    figure.title = "A day and a night, on average";
    figure.alternative = in_order_of_length(bands);
    figure.draw = [bands, width](Canvas& canvas) { draw_bands(canvas, bands, width); };
    const std::size_t a_row = names_a_row(width, bands.size());
    const std::size_t rows = std::max<std::size_t>((bands.size() + a_row - 1) / a_row, 1);
    figure.height = label_base + 4 + static_cast<double>(rows - 1) * label_row;
    return figure;
}

void draw_day_to_mark(Canvas& canvas, double width) {
    draw_hours(canvas, width);
    const HandoutWords& words = english_handout;
    double centre = width / 8;
    for (const char* part : {words.night, words.morning, words.afternoon, words.evening}) {
        canvas.text({centre, label_base}, part, {label_size, false, Anchor::middle, Ink::text});
        if (centre > width / 8) {
            canvas.line({centre - width / 8, 0}, {centre - width / 8, bar_height},
                        {0.5, Ink::line, true});
        }
        centre += width / 4;
    }
}

Figure day_to_mark(double width) {
    Figure figure;
    figure.title = "A day and a night to mark";
    figure.alternative = "An empty bar with night, morning, afternoon and evening, to mark by pen.";
    figure.draw = [width](Canvas& canvas) { draw_day_to_mark(canvas, width); };
    figure.height = label_base + 4;
    return figure;
}

Figure of_width(HandoutPicture picture, const FirstReview& review, double width) {
    Figure figure =
        picture == HandoutPicture::hours_bar ? bar_of_bands(review, width) : day_to_mark(width);
    figure.width = width;
    return figure;
}

}  // namespace

Figure handout_figure(HandoutPicture picture, const FirstReview& review) {
    return of_width(picture, review, page_width);
}

Figure narrow_handout_figure(HandoutPicture picture, const FirstReview& review) {
    return of_width(picture, review, phone_width);
}

}  // namespace tracewright
