#pragma once

#include "diary/eaten_words.hpp"
#include "diary/household_measure.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

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

}  // namespace tracewright
