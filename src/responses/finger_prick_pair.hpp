#pragma once

#include "diary/diary_entry.hpp"
#include "responses/eating_occasion.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// The finger-pricks round one eating occasion: one before, one two hours after the first bite.
struct FingerPrickPair {
    std::size_t occasion = 0;  ///< index among the occasions asked
    Instant at;                ///< the first bite
    std::optional<Glucose> before;
    std::optional<Glucose> after;
    std::optional<double> after_minutes;  ///< from the first bite
    std::string left_out_because;         ///< empty: a pair

    bool used() const { return left_out_because.empty(); }
    /// After less before, mg/dL. Of a used pair.
    double rise() const;
};

/// For each occasion with a finger-prick in the 30 minutes before (or at) the first bite or 30
/// minutes to 4 hours after it and before the next occasion: used if there is one before and one at
/// 2 hours +- 15 minutes.
/// Source of the two hours from the first bite: Holt et al. 2021, 10.1007/s00125-021-05568-3 (table
/// of the American Diabetes Association); the 15 minutes are ours.
std::vector<FingerPrickPair> finger_prick_pairs(const Diary& diary,
                                                std::span<const EatingOccasion> occasions);

}  // namespace tracewright
