#pragma once

#include <cstdint>
#include <string_view>

namespace tracewright {

/// What a word such as "slice", "cup" or "g" measures by.
struct HouseholdMeasure {
    enum class Of : std::uint8_t { weight, volume, piece };
    const char* name = "";
    Of of = Of::piece;
    double amount = 0;      ///< grams or millilitres of one; 0 for a piece
    double half_width = 0;  ///< as a share: how far one may be from another. Ours, no source.
};

/// The measure of a word, its plural and other spellings: "cups", "tablespoon", "gr"; null for any
/// other word.
const HouseholdMeasure* measure_called(std::string_view word);

}  // namespace tracewright
