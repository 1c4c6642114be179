#include "findings/published_effects.hpp"

#include "diary/table_cells.hpp"
#include "findings/habit_effects_text.hpp"
#include "units/glucose.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace tracewright {

namespace {

std::optional<double> number(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end == text.data()) {
        return std::nullopt;
    }
    return value;
}

// Which row tells of which question, and the factor that turns its effect into that of our change
// in mmol/L or hours; 0: shown beside, measured otherwise.
struct Match {
    Cause cause;
    Outcome outcome;
    const char* habit;
    const char* measured;
    double factor;
};

constexpr Match matches[] = {
    // Four hours less there, two here.
    {Cause::sleep, Outcome::fasting, "one night of 4 h sleep vs 8 h",
     "fasting glucose next morning", 0.5},
    {Cause::sleep, Outcome::breakfast_rise, "worse sleep efficiency",
     "2 h iAUC after next breakfast", 0},
    {Cause::sleep, Outcome::spread, "1 h longer sleep last night", "CV of glucose next day", 0},
    // 497 mmol/L x min over the nine hours from 23:00 to 08:00.
    {Cause::dinner_time, Outcome::overnight, "dinner at 21:00 vs 18:00", "iAUC 23:00-08:00",
     1.0 / 540},
    {Cause::dinner_time, Outcome::fasting, "dinner at 21:00 vs 18:00", "iAUC 23:00-08:00", 0},
    {Cause::meal_carbohydrate, Outcome::breakfast_rise, "10 g more carbohydrate at breakfast",
     "day's peak glucose", 0},
    {Cause::walk_after, Outcome::breakfast_rise, "exercise (mostly walking) soon after a meal",
     "post-meal glucose excursion", 0},
    {Cause::walk_after, Outcome::lunch_rise, "exercise (mostly walking) soon after a meal",
     "post-meal glucose excursion", 0},
    {Cause::walk_after, Outcome::dinner_rise, "exercise (mostly walking) soon after a meal",
     "post-meal glucose excursion", 0},
    // A ratio of areas and a peak, where ours is a mean height over three hours.
    {Cause::meal_order, Outcome::lunch_rise, "protein and vegetables 10 min before starch",
     "3 h post-meal iAUC", 0},
    {Cause::meal_order, Outcome::dinner_rise, "protein and vegetables 10 min before starch",
     "3 h post-meal iAUC", 0},
    {Cause::meal_order, Outcome::breakfast_rise, "protein and vegetables 10 min before starch",
     "3 h post-meal iAUC", 0},
    {Cause::movement, Outcome::day_mean, "any structured exercise session", "24 h mean glucose", 1},
    {Cause::movement, Outcome::hours_high, "any structured exercise session",
     "time above 10 mmol/L", 1.0 / 60},
    {Cause::movement, Outcome::fasting, "any structured exercise session", "fasting glucose", 1},
    {Cause::stress, Outcome::fasting, "acute psychological stress when fasting",
     "glucose after the stressor", 0},
    {Cause::stress, Outcome::dinner_rise, "acute psychological stress 75 min after a meal",
     "glucose after the stressor", 0},
};

// Two-sided p to |z|.
double z_of(double p) {
    double low = 0;
    double high = 10;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (std::erfc(middle / std::sqrt(2.0)) > p ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace

std::optional<double> PublishedEffect::standard_error() const {
    const std::string_view text = spread;
    const auto after = [&](std::string_view start) {
        return text.starts_with(start) ? number(text.substr(start.size())) : std::nullopt;
    };
    if (const auto se = after("se:")) {
        return se;
    }
    if (const auto low = after("ci:")) {
        const auto semicolon = text.find(';');
        if (semicolon != std::string_view::npos) {
            if (const auto high = number(text.substr(semicolon + 1))) {
                return (*high - *low) / (2 * 1.96);
            }
        }
        return std::nullopt;
    }
    if (const auto p = after("p:")) {
        const double z = z_of(*p);
        return z > 0 ? std::optional(std::abs(effect) / z) : std::nullopt;
    }
    return std::nullopt;
}

std::string PublishedEffect::sentence() const {
    std::string unit = units;
    std::ranges::replace(unit, '_', ' ');
    const std::string size =
        units == "direction_only" ? std::string(effect > 0 ? "higher" : "lower") + ", size not told"
        : units == "ratio"        ? fmt::format("times {:g}", effect)
        : units.starts_with("percent_change") ? fmt::format("{:+g} %{}", effect, unit.substr(14))
                                              : fmt::format("{:+g} {}", effect, unit);
    return fmt::format("{}: {} {}; {}{} ({})", habit, outcome, size, people,
                       n.empty() ? "" : ", n " + n, source);
}

std::vector<PublishedEffect> published_effects_in(std::string_view csv) {
    std::vector<PublishedEffect> effects;
    for (const auto& cells : table_cells(csv)) {
        const auto effect = cells.size() == 10 ? number(cells[2]) : std::nullopt;
        if (effect) {
            effects.push_back({cells[0], cells[1], *effect, cells[3], cells[4], cells[5], cells[6],
                               cells[7], cells[8], cells[9]});
        }
    }
    return effects;
}

const std::vector<PublishedEffect>& published_effects() {
    static const std::vector<PublishedEffect> table = published_effects_in(habit_effects_csv());
    return table;
}

OthersSay others_say(Cause cause, Outcome outcome) {
    OthersSay say;
    for (const Match& match : matches) {
        if (match.cause != cause || match.outcome != outcome) {
            continue;
        }
        for (const PublishedEffect& effect : published_effects()) {
            if (!effect.habit.starts_with(match.habit) ||
                !effect.outcome.starts_with(match.measured)) {
                continue;
            }
            say.rows.push_back(effect);
            const auto error = effect.standard_error();
            if (match.factor != 0 && error && !say.prior) {
                const double to_unit =
                    facts_of(outcome).unit == OutcomeUnit::glucose ? mg_per_dl_in_mmol_per_l : 1;
                const double told = effect.effect * match.factor * to_unit;
                const double wide = 2 * *error * std::abs(match.factor) * to_unit;
                say.prior = NormalTelling{told / 2, std::max(std::abs(told), wide)};
            }
        }
    }
    return say;
}

}  // namespace tracewright
