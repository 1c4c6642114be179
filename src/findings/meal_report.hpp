#pragma once

#include "findings/review_input.hpp"
#include "responses/finger_prick_pair.hpp"
#include "responses/meal_response.hpp"
#include "responses/overlap_model.hpp"
#include "responses/unwritten_rise.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// One response of a food, ready to be compared.
struct FoodResponse {
    std::string food;
    double response = 0;  ///< mg/dL
    std::vector<double> adjusters;
    MealSlot slot = MealSlot::snack;
};

/// A food among the others.
struct FoodStanding {
    std::string food;
    int times = 0;
    double own_mean = 0;  ///< at the usual slots and adjusters, mg/dL
    double mean = 0;      ///< likewise, shrunken
    std::array<double, 2> interval80{};
    std::array<int, 2> ranks80{};  ///< 1: the largest response
    double in_top_three = 0;
    int group = 0;  ///< from 1, the group of larger responses first
};

struct FoodPair {
    std::string larger;
    std::string smaller;
    double probability = 0;
};

struct FoodComparison {
    std::string none_because;            ///< why nothing is compared; empty if something is
    std::vector<FoodStanding> foods;     ///< eaten twice or more, largest first
    std::vector<std::string> seen_once;  ///< can't tell
    std::vector<FoodPair> different;     ///< P of 0.985 or more
    double within = 0;                   ///< SD of one food from itself, mg/dL
    bool within_assumed = false;         ///< under 6 degrees of freedom: 25 mg/dL is taken
    double between = 0;                  ///< posterior median of the spread between foods
    std::vector<std::string> adjusted_for;
};

/// Fewer than three foods eaten twice, or no two in the same slot: nothing is compared. Slot and
/// adjusters are held equal, foods shrunken together, and only foods that share a slot are told
/// apart (docs/methods/meals.md).
FoodComparison compare_foods(std::span<const FoodResponse> responses,
                             std::vector<std::string> adjuster_names, std::uint64_t seed);

/// Everything known of one client's meals.
struct MealReport {
    std::vector<EatingOccasion> occasions;
    std::vector<MealResponse> responses;
    OverlapModel overlap;
    FoodComparison foods;
    std::vector<UnwrittenRise> ask_about;
    std::vector<FingerPrickPair> pairs;
    std::optional<double> mean_pair_rise;                   ///< mg/dL, of used pairs
    std::optional<std::array<double, 2>> mean_pair_rise95;  ///< by Student's t; two pairs or more
};

/// Occasions outside the wears are left out, but for finger-prick pairs.
MealReport meal_report(const ReviewInput& input);

/// What is said of the foods, in order; no food is called good or bad.
std::vector<std::string> food_sentences(const FoodComparison& foods, GlucoseUnit unit);

}  // namespace tracewright
