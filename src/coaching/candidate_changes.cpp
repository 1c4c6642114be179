#include "coaching/candidate_changes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr EffortSigns nothing_more{};
constexpr EffortSigns a_walk{true, false, false};
constexpr EffortSigns at_table{false, true, false};
constexpr EffortSigns the_evening{false, true, true};
constexpr EffortSigns the_day{true, false, true};
constexpr EffortSigns bedtime{false, false, true};

constexpr std::array candidates = {
    CandidateChange{"walk-after-breakfast", "walk 15 minutes after breakfast", Cause::walk_after,
                    false, Outcome::breakfast_rise, Proposed::walking, a_walk,
                    "walk-after-breakfast"},
    CandidateChange{"walk-after-lunch", "walk 15 minutes after lunch", Cause::walk_after, false,
                    Outcome::lunch_rise, Proposed::walking, a_walk, "walk-after-lunch"},
    CandidateChange{"walk-after-dinner", "walk 15 minutes after dinner", Cause::walk_after, false,
                    Outcome::dinner_rise, Proposed::walking, a_walk, "walk-after-dinner"},
    CandidateChange{"vegetables-first-lunch", "eat vegetables and protein first at lunch",
                    Cause::meal_order, false, Outcome::lunch_rise, Proposed::food_change,
                    nothing_more},
    CandidateChange{"vegetables-first-dinner", "eat vegetables and protein first at dinner",
                    Cause::meal_order, false, Outcome::dinner_rise, Proposed::food_change,
                    nothing_more, "vegetables-first"},
    CandidateChange{"smaller-breakfast-starch", "a smaller portion of starch at breakfast",
                    Cause::meal_carbohydrate, true, Outcome::breakfast_rise, Proposed::food_change,
                    at_table},
    CandidateChange{"smaller-lunch-starch", "a smaller portion of starch at lunch",
                    Cause::meal_carbohydrate, true, Outcome::lunch_rise, Proposed::food_change,
                    at_table},
    CandidateChange{"smaller-dinner-starch", "a smaller portion of starch at dinner",
                    Cause::meal_carbohydrate, true, Outcome::dinner_rise, Proposed::food_change,
                    at_table},
    CandidateChange{"earlier-dinner", "dinner earlier in the evening", Cause::dinner_time, true,
                    Outcome::overnight, Proposed::food_change, the_evening, "earlier-dinner"},
    CandidateChange{"last-food-earlier", "more time between the last food and bed",
                    Cause::last_meal_to_bed, false, Outcome::overnight, Proposed::food_change,
                    bedtime},
    CandidateChange{"longer-sleep", "a longer night", Cause::sleep, false, Outcome::fasting,
                    Proposed::other, bedtime, "earlier-bedtime"},
    CandidateChange{"more-movement", "half an hour more movement in the day", Cause::movement,
                    false, Outcome::day_mean, Proposed::walking, the_day},
    CandidateChange{"sitting-broken-up", "get up for three minutes each half hour", std::nullopt,
                    false, Outcome::day_mean, Proposed::walking, the_day, "sitting-broken-up",
                    "3 min "},
    CandidateChange{"low-carb-breakfast", "a breakfast with little carbohydrate", std::nullopt,
                    false, Outcome::hours_in_range, Proposed::low_carbohydrate, at_table,
                    "low-carb-breakfast", "very low-carbohydrate breakfast"},
};

// Compared with what nobody does at home, or with another form of the same.
bool wrong_comparator(const PublishedEffect& row) {
    return row.habit.find("vs starch first") != std::string::npos ||
           row.habit.find("vs one 30 min walk") != std::string::npos;
}

// In mg/dL or hours per `change`; empty where the row is in another measure.
std::optional<NormalTelling> telling_of(const PublishedEffect& row, const OwnScale& own) {
    std::optional<double> scale;
    double effect = row.effect;
    if (row.units == "ratio" && own.mean > 0) {
        scale = own.mean;
        effect = row.effect - 1;
    } else if (row.units == "SMD" && own.sd > 0) {
        scale = own.sd;
    }
    auto error = row.standard_error();
    if (row.units == "ratio" && row.spread.starts_with("selog:")) {
        error = row.effect * std::strtod(row.spread.c_str() + std::size("selog:") - 1, nullptr);
    }
    if (!scale || !error) {
        return std::nullopt;
    }
    const double told = effect * *scale;
    return NormalTelling{told / 2, std::max(std::abs(told), 2 * *error * *scale)};
}

}  // namespace

Effort effort_of(const EffortSigns& signs) {
    const int count = (signs.takes_time ? 1 : 0) + (signs.touches_others ? 1 : 0) +
                      (signs.rearranges_day ? 1 : 0);
    return count == 0 ? Effort::little : count == 1 ? Effort::some : Effort::much;
}

const char* name_of(Effort effort) {
    constexpr std::array names = {"little", "some", "much"};
    return names.at(static_cast<std::size_t>(effort));
}

std::string effort_words(const EffortSigns& signs) {
    std::string why;
    const auto add = [&](bool holds, const char* words) {
        if (holds) {
            why += (why.empty() ? ": " : ", ") + std::string(words);
        }
    };
    add(signs.takes_time, "it takes over ten minutes of the day");
    add(signs.touches_others, "who cooks or eats along has to agree");
    add(signs.rearranges_day, "work, evening or bedtime has to move");
    return name_of(effort_of(signs)) + why;
}

std::span<const CandidateChange> candidate_changes() {
    return candidates;
}

const CandidateChange* candidate_called(std::string_view code) {
    const auto found =
        std::ranges::find_if(candidates, [&](const auto& one) { return one.code == code; });
    return found == candidates.end() ? nullptr : &*found;
}

OthersOfCandidate others_of(const CandidateChange& candidate, const OwnScale& own) {
    OthersOfCandidate others;
    OthersSay say;
    if (candidate.cause) {
        say = others_say(*candidate.cause, candidate.outcome);
        others.prior = say.prior;
    } else {
        std::ranges::copy_if(published_effects(), std::back_inserter(say.rows),
                             [&](const PublishedEffect& row) {
                                 return row.habit.starts_with(candidate.others_habit);
                             });
    }
    for (PublishedEffect& row : say.rows) {
        if (wrong_comparator(row)) {
            continue;
        }
        if (!others.prior) {
            others.prior = telling_of(row, own);
        }
        others.rows.push_back(std::move(row));
    }
    const auto points_to = [](const PublishedEffect& row, double side) {
        const double nothing = row.units == "ratio" ? 1 : 0;
        return (row.effect - nothing) * side > 0;
    };
    const auto any = [&](double side) {
        return std::ranges::any_of(
            others.rows, [&](const PublishedEffect& row) { return points_to(row, side); });
    };
    if (any(1) && any(-1)) {
        others.conflict = true;
        others.prior.reset();
    }
    return others;
}

}  // namespace tracewright
