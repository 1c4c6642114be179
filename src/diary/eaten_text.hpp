#pragma once

#include "diary/carbohydrate.hpp"
#include "diary/diary_entry.hpp"
#include "diary/food_match.hpp"
#include "diary/portion_weight.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// One food of a diary text, as well as it could be read.
struct EatenFood {
    std::string written;       ///< its part of the text
    bool denied = false;       ///< "no rice": not eaten
    bool alternative = false;  ///< "or potatoes": the second of two
    /// Counts in the sums: eaten, not the second of "rice or potatoes", and a food was found.
    bool counted = false;
    std::vector<FoodCandidate> candidates;  ///< best first; the first is taken where `counted`
    double confidence = 0;                  ///< 0 where no food was found
    PortionWeight portion;
    std::optional<TotalCarbohydrate> total;
    std::optional<AvailableCarbohydrate> available;
    std::optional<double> fibre_g;
    std::optional<double> energy_kcal;
    std::vector<Doubt> doubts;  ///< of food, portion, and whether it was eaten

    bool sure() const { return confidence >= sure_food; }
};

/// A diary text about food, worked out.
struct EatenText {
    std::vector<EatenFood> foods;  ///< as written, denied ones too
    // Sums: each known only while every food that was eaten is found and has it.
    std::optional<TotalCarbohydrate> total;
    std::optional<AvailableCarbohydrate> available;
    std::optional<double> fibre_g;
    std::optional<double> energy_kcal;
    double confidence = 0;  ///< the least of the foods that were eaten; 0 without one

    bool found_all() const;  ///< at least one was eaten, and all that were are counted
};

/// Reads what was eaten: "2 slices of bread with cheese, no butter". Foods, portions in words,
/// denials and alternatives; what is not sure is in the doubts, and what is not found counts
/// nowhere. English words, plus whatever the client's own foods are called. Any bytes are taken; an
/// empty text has no foods.
EatenText eaten_text(std::string_view text, const KnownFoods& known = {});

/// Writes what was worked out into a meal without carbohydrate of its own, as an estimate, by the
/// basis given (`total` or `available`). False, and nothing is changed, where the entry is no
/// described meal, has carbohydrate already, or the text's is not known by that basis.
bool fill_in(DiaryEntry& entry, const EatenText& eaten, CarbohydrateBasis basis);

/// The foods' names in order, where all are sure and at least one is the client's own: what the
/// coach calls that which the client writes. Empty otherwise: the text stands as written.
std::optional<std::string> clients_name(const EatenText& eaten);

/// The basis by which a diary may be filled in so that nothing is mixed: that of its own numbers;
/// total where it has none; empty where they don't tell or differ among themselves.
std::optional<CarbohydrateBasis> basis_to_fill_in(const Diary& diary);

}  // namespace tracewright
