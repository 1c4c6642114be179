#include "findings/wording.hpp"
#include "measures/shown_range.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace tracewright {

namespace {

constexpr double width = 495;
constexpr double track_left = 92;
constexpr double track_right = 330;
constexpr double words_left = 342;
constexpr double row_height = 27;

// A number on a scale of its own: what it is, how far it can be trusted, and what is aimed at.
struct Row {
    std::string name;
    double value = 0;
    std::optional<std::array<double, 2>> interval95;
    std::string absent;  ///< why there is no interval
    double from = 0;     ///< ends of the scale
    double to = 1;
    std::string from_words;
    std::string to_words;
    std::string value_words;
    std::string interval_words;
    std::optional<double> goal;
    std::string goal_words;
};

std::string hours_words(double percent) {
    const auto seconds = std::lround(percent / 100 * 86400);
    return percent > 0 && seconds < 30 ? "under 1 min"
                                       : hours_and_minutes(std::chrono::seconds{seconds});
}

// The shortest scale of whole hours that shows all of it.
double scale_hours(double percent) {
    for (const double hours : {0.5, 1.0, 2.0, 3.0, 6.0, 12.0}) {
        if (percent / 100 * 24 <= 0.92 * hours) {
            return hours;
        }
    }
    return 24;
}

Row row_of(const Measure& measure, std::string name) {
    Row row;
    row.name = std::move(name);
    row.value = *measure.value;
    row.interval95 = measure.interval95;
    row.absent = measure.no_interval_because;
    return row;
}

void set_words(Row& row, const std::function<std::string(double)>& told) {
    row.value_words = told(row.value);
    row.interval_words = row.interval95
                             ? from_to_words(told((*row.interval95)[0]), told((*row.interval95)[1]))
                             : "no interval: " + row.absent;
}

void add_band(std::vector<Row>& rows, const FirstReview& review, const char* measure_name,
              const char* name, std::optional<double> goal, const char* goal_begins) {
    const Measure* measure = find(review.measures, measure_name);
    if (measure == nullptr || !measure->value) {
        return;
    }
    Row row = row_of(*measure, name);
    const double most =
        std::max({row.value, row.interval95 ? (*row.interval95)[1] : row.value, goal.value_or(0)});
    const double hours = scale_hours(most);
    row.to = hours / 24 * 100;
    row.from_words = "0";
    row.to_words = hours_words(row.to);
    set_words(row, hours_words);
    if (goal) {
        row.goal = goal;
        row.goal_words = std::string(goal_begins) + hours_words(*goal);
    }
    rows.push_back(std::move(row));
}

std::vector<Row> rows_of(const FirstReview& review) {
    const GlucoseUnit unit = review.input.unit;
    const Goals& goals = review.input.goals;
    std::vector<Row> rows;
    add_band(rows, review, "very_low", "Very low", goals.very_low_below, "goal: under ");
    if (shown_range(goals).in_pregnancy()) {
        const bool mg = unit == GlucoseUnit::mg_per_dl;
        add_band(rows, review, "pregnancy_range", mg ? "63 to 140 mg/dL" : "3.5 to 7.8 mmol/L",
                 std::nullopt, "");
    } else {
        add_band(rows, review, "low", "Low", std::nullopt, "");
        add_band(rows, review, "in_range", "In range", goals.in_range_above, "goal: more than ");
        add_band(rows, review, "high", "High", std::nullopt, "");
        add_band(rows, review, "very_high", "Very high", goals.very_high_below, "goal: under ");
    }
    const Measure* mean = find(review.measures, "mean");
    if (mean != nullptr && mean->value) {
        Row row = row_of(*mean, "Average");
        row.from = unit == GlucoseUnit::mg_per_dl ? 50 : 3;
        row.to = unit == GlucoseUnit::mg_per_dl ? 300 : 16;
        row.from_words = glucose_number(row.from, unit);
        row.to_words = glucose_words(row.to, unit);
        set_words(row, [unit](double value) { return glucose_number(value, unit); });
        row.value_words = glucose_words(row.value, unit);
        rows.push_back(std::move(row));
    }
    const Measure* cv = find(review.measures, "cv");
    if (cv != nullptr && cv->value) {
        Row row = row_of(*cv, "Variation (CV)");
        row.to = 60;
        row.from_words = "0";
        row.to_words = "60 %";
        set_words(row, percent_words);
        row.goal = 36;
        row.goal_words = "up to 36 %: usually called steady";
        rows.push_back(std::move(row));
    }
    return rows;
}

void draw_row(Canvas& canvas, const Row& row, double y) {
    const auto x = [&row](double value) {
        const double share = std::clamp((value - row.from) / (row.to - row.from), 0.0, 1.0);
        return track_left + share * (track_right - track_left);
    };
    canvas.text({0, y + 3}, row.name, {9, true, Anchor::start, Ink::text});
    if (!row.interval95) {
        canvas.rectangle(track_left, y - 4, track_right - track_left, 8, Fill::suspect);
    }
    canvas.line({track_left, y}, {track_right, y}, {0.5, Ink::faint, false});
    canvas.line({track_left, y - 3}, {track_left, y + 3}, {0.5, Ink::line, false});
    canvas.line({track_right, y - 3}, {track_right, y + 3}, {0.5, Ink::line, false});
    const TextStyle small{6.8, false, Anchor::start, Ink::quiet};
    canvas.text({track_left, y + 11}, row.from_words, small);
    canvas.text({track_right, y + 11}, row.to_words, {6.8, false, Anchor::end, Ink::quiet});
    if (row.goal) {
        const double at = x(*row.goal);
        canvas.line({at, y - 6}, {at, y + 6}, {1, Ink::text, true});
        const double half = canvas.text_width(row.goal_words, small) / 2;
        const double left = track_left + canvas.text_width(row.from_words, small) + 6 + half;
        const double right = track_right - canvas.text_width(row.to_words, small) - 6 - half;
        canvas.text({std::clamp(at, left, std::max(left, right)), y + 12}, row.goal_words,
                    {6.8, false, Anchor::middle, Ink::text});
    }
    if (row.interval95) {
        canvas.line({x((*row.interval95)[0]), y}, {x((*row.interval95)[1]), y},
                    {2.6, Ink::accent, false});
    }
    canvas.circle({x(row.value), y}, 3.4, Fill::paper, {1.6, Ink::accent, false});
    canvas.text({words_left, y - 1.5}, row.value_words, {9, true, Anchor::start, Ink::text});
    canvas.text({words_left, y + 8.5}, row.interval95 ? row.interval_words : "can't tell how far",
                {7.2, false, Anchor::start, Ink::quiet});
}

}  // namespace

Figure intervals_figure(const FirstReview& review) {
    const std::vector<Row> rows = rows_of(review);
    Figure figure;
    figure.width = width;
    figure.height = 4 + row_height * static_cast<double>(rows.size());
    figure.title = "How far each number can be trusted";
    figure.alternative =
        "Dot: what these days gave; line: where it may truly lie (95 % interval); hatched: can't "
        "tell.";
    figure.columns = {"measure", "value", "95 % interval", "beside it"};
    for (const Row& row : rows) {
        figure.rows.push_back({row.name, row.value_words, row.interval_words, row.goal_words});
        if (row.name == "In range") {
            figure.alternative +=
                fmt::format(" In range: {} ({}).", row.value_words, row.interval_words);
        }
    }
    figure.draw = [rows](Canvas& canvas) {
        double y = 10;
        for (const Row& row : rows) {
            draw_row(canvas, row, y);
            y += row_height;
        }
    };
    return figure;
}

}  // namespace tracewright
