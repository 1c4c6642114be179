#pragma once

#include "diary/doubt.hpp"
#include "diary/eaten_words.hpp"
#include "diary/food_table.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What a word such as "slice", "cup" or "g" measures by.
struct HouseholdMeasure {
    enum class Of : std::uint8_t { weight, volume, piece };
    const char* name = "";
    Of of = Of::piece;
    double amount = 0;      ///< grams or millilitres of one; 0 for a piece
    double half_width = 0;  ///< as a share: how far one may be from another. Ours, no source.
};

/// How much was written, before it is known of what.
struct WrittenPortion {
    std::optional<double> count;  ///< empty: no number, no "a"
    double count_half_width = 0;
    const HouseholdMeasure* measure = nullptr;  ///< null: a bare count, or nothing at all
    double size = 1;                            ///< "small" 0.75, "large" 1.3: ours, no source
    std::string vague;                          ///< the word that makes it vague: "some", "few"

    bool told() const { return count.has_value() || measure != nullptr; }
};

/// A piece's words as portion and name: "2 large slices of bread", "rice 150 g", "half a banana".
struct PortionAndName {
    WrittenPortion portion;
    std::vector<std::string> name;
};
PortionAndName portion_and_name(std::span<const EatenWord> words);
/// Takes a measure that ends the name for a portion of one: "chocolate bar". False if it has none.
bool take_measure_from_name(PortionAndName& read);

/// Grams, true within `half_width` of them, and what was not sure.
struct PortionWeight {
    double grams = 0;
    double half_width = 0;
    std::vector<Doubt> doubts;
};

/// What the portion weighs of this food. Weights are taken as written; volumes by the weight of the
/// food's own cup or spoon, else as water for drinks; slices, pieces and bare counts by its
/// household portion. A portion that is not written is the household one within half of it, unless
/// `own` says that it is the client's usual one. Ours, no source.
PortionWeight portion_weight(const WrittenPortion& portion, const FoodFacts& food, bool own);

/// Whether it is drunk: by its name or by a portion in fluid ounces.
bool is_drink(const FoodFacts& food);

}  // namespace tracewright
