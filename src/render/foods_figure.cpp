#include "findings/wording.hpp"
#include "render/review_figures.hpp"
#include "render/review_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr double width = 495;
constexpr double name_width = 178;
constexpr double track_left = 186;
constexpr double track_right = 400;
constexpr double words_left = 408;
constexpr double top = 20;
constexpr double row_height = 17;
constexpr double box_line = 13;
constexpr std::size_t most_seen_once = 12;

std::string shown(double mg_per_dl, GlucoseUnit unit) {
    return glucose_number(converted(mg_per_dl, GlucoseUnit::mg_per_dl, unit), unit);
}

// As much of a name as fits.
std::string fitted(Canvas& canvas, const std::string& name, const TextStyle& style, double room) {
    std::string text = name;
    while (!text.empty() && canvas.text_width(text + "…", style) > room) {
        text.pop_back();
        while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) {
            text.pop_back();
        }
    }
    return text.size() + 3 >= name.size() ? name : text + "…";
}

double scale_end(const FoodComparison& foods) {
    double most = 0;
    for (const FoodStanding& food : foods.foods) {
        most = std::max(most, food.interval80[1]);
    }
    return std::max(18.0, std::ceil(most / 18) * 18);
}

void draw_scale(Canvas& canvas, double end, double bottom, GlucoseUnit unit) {
    canvas.text({track_left, 10}, "0", {7, false, Anchor::middle, Ink::quiet});
    canvas.text({track_right, 10},
                glucose_words(converted(end, GlucoseUnit::mg_per_dl, unit), unit) + " of rise",
                {7, false, Anchor::end, Ink::quiet});
    canvas.line({track_left, top - 6}, {track_left, bottom}, {0.5, Ink::faint, false});
    canvas.line({track_right, top - 6}, {track_right, bottom}, {0.5, Ink::faint, false});
}

void draw_food(Canvas& canvas, const FoodStanding& food, double end, double y, GlucoseUnit unit) {
    const auto x = [&](double mg) {
        return track_left + std::clamp(mg / end, 0.0, 1.0) * (track_right - track_left);
    };
    const TextStyle name{8.5, false, Anchor::start, Ink::text};
    canvas.text({0, y + 3}, fitted(canvas, food.food, name, name_width), name);
    canvas.line({x(food.interval80[0]), y}, {x(food.interval80[1]), y}, {2.4, Ink::accent, false});
    canvas.circle({x(food.mean), y}, 3.2, Fill::paper, {1.5, Ink::accent, false});
    canvas.text({words_left, y + 3},
                fmt::format("{}, {} times", shown(food.mean, unit), food.times),
                {8, false, Anchor::start, Ink::text});
}

// What was eaten once stands apart, in a box of its own.
void draw_seen_once(Canvas& canvas, const std::vector<std::string>& lines, double y) {
    const double height = box_line * static_cast<double>(lines.size()) + 16;
    canvas.rectangle(0, y, width, height, Fill::suspect);
    canvas.frame(0, y, width, height, {0.6, Ink::line, false});
    canvas.rectangle(4, y + 4, width - 8, height - 8, Fill::paper);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const TextStyle style{8, i == 0, Anchor::start, Ink::text};
        canvas.text({10, y + 15 + box_line * static_cast<double>(i)},
                    fitted(canvas, lines[i], style, width - 20), style);
    }
}

std::vector<std::string> seen_once_lines(const FoodComparison& foods) {
    if (foods.seen_once.empty()) {
        return {};
    }
    std::vector<std::string> lines = {"Eaten once: can't tell"};
    for (std::size_t i = 0; i < std::min(foods.seen_once.size(), most_seen_once); i += 3) {
        std::string line;
        for (std::size_t j = i; j < std::min({i + 3, foods.seen_once.size(), most_seen_once});
             ++j) {
            line += (line.empty() ? "" : "; ") + foods.seen_once[j];
        }
        lines.push_back(line);
    }
    if (foods.seen_once.size() > most_seen_once) {
        lines.push_back(fmt::format("and {} more", foods.seen_once.size() - most_seen_once));
    }
    return lines;
}

}  // namespace

Figure foods_figure(const FirstReview& review) {
    const FoodComparison& foods = review.goes_with.meals->foods;
    const GlucoseUnit unit = review.input.unit;
    const std::vector<std::string> once = seen_once_lines(foods);
    Figure figure;
    figure.width = width;
    const double rows_end = top + row_height * static_cast<double>(foods.foods.size());
    figure.height =
        rows_end + (once.empty() ? 4 : 12 + box_line * static_cast<double>(once.size()) + 16);
    figure.title = "Meals compared";
    figure.alternative =
        "Dot: the rise after a meal, neighbours and time of day taken off and drawn towards the "
        "others; line: its 80 % interval. Lines that overlap are not told apart by it.";
    if (const auto lines = meal_lines(review); !lines.empty()) {
        figure.alternative += " " + lines.front();
    }
    figure.columns = {"meal", "times eaten", std::string("rise, ") + name_of(unit), "80 % interval",
                      "rank"};
    for (const FoodStanding& food : foods.foods) {
        figure.rows.push_back(
            {food.food, std::to_string(food.times), shown(food.mean, unit),
             shown(food.interval80[0], unit) + " to " + shown(food.interval80[1], unit),
             fmt::format("{} to {} of {}", food.ranks80[0], food.ranks80[1], foods.foods.size())});
    }
    for (const std::string& food : foods.seen_once) {
        figure.rows.push_back({food, "1", "can't tell", "", ""});
    }
    figure.draw = [&foods, unit, once, rows_end](Canvas& canvas) {
        if (!foods.foods.empty()) {
            const double end = scale_end(foods);
            draw_scale(canvas, end, rows_end - 6, unit);
            double y = top + 4;
            for (const FoodStanding& food : foods.foods) {
                draw_food(canvas, food, end, y, unit);
                y += row_height;
            }
        }
        if (!once.empty()) {
            draw_seen_once(canvas, once, rows_end + 6);
        }
    };
    return figure;
}

}  // namespace tracewright
