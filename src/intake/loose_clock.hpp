#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace tracewright {

/// A time of day that is told roughly.
struct LooseClock {
    std::chrono::minutes clock{0};  ///< after midnight
    std::string_view slot;          ///< "breakfast", "lunch", "dinner" where the words name a meal
};

/// The middle of the hours in which people eat "breakfast", "lunch", "dinner", else a snack. Ours,
/// no source.
std::chrono::minutes middle_of(std::string_view slot);

/// "ca. 20:00", "about 7 pm", "breakfast", "evening", "abends": a rough time of day, in English and
/// German. Empty for any other text, and for a clock without such a word before it.
std::optional<LooseClock> loose_clock(std::string_view text);

}  // namespace tracewright
