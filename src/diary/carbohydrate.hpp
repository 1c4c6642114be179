#pragma once

#include <algorithm>
#include <optional>

namespace tracewright {

/// Carbohydrate with the fibre in it (by difference, as US tables give it), grams; true within
/// `half_width` of `grams`. Nothing adds it to, or makes it of, an AvailableCarbohydrate: the two
/// differ by the fibre and are never mixed.
struct TotalCarbohydrate {
    double grams = 0;
    double half_width = 0;

    TotalCarbohydrate& operator+=(const TotalCarbohydrate& other) {
        grams += other.grams;
        half_width += other.half_width;
        return *this;
    }
};

/// Carbohydrate without the fibre (European tables and labels), grams.
struct AvailableCarbohydrate {
    double grams = 0;
    double half_width = 0;

    AvailableCarbohydrate& operator+=(const AvailableCarbohydrate& other) {
        grams += other.grams;
        half_width += other.half_width;
        return *this;
    }
};

/// Total less fibre, where both are known. Source: AOAC (glycaemia 5.3).
inline AvailableCarbohydrate without_fibre(TotalCarbohydrate total, double fibre_g) {
    return {std::max(0.0, total.grams - fibre_g), total.half_width};
}

}  // namespace tracewright
