#include "coaching/proposed_names.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

std::optional<Proposed> proposed_called(std::string_view name) {
    // In the order of Proposed.
    constexpr std::array<std::string_view, 7> names = {
        "low-carbohydrate", "fasting", "meal-skipping", "weight-loss",
        "food-change",      "walking", "other"};
    const auto found = std::ranges::find(names, name);
    return found == names.end() ? std::nullopt
                                : std::optional(static_cast<Proposed>(found - names.begin()));
}

std::optional<EatingChange> eating_change_called(std::string_view name) {
    constexpr std::array<std::string_view, 4> names = {"", "nothing", "as-much", "less"};
    const auto found = std::ranges::find(names, name);
    return found == names.end() ? std::nullopt
                                : std::optional(static_cast<EatingChange>(found - names.begin()));
}

std::optional<Answered> answer_called(std::string_view name) {
    constexpr std::array<std::string_view, 3> names = {"", "no", "yes"};
    const auto found = std::ranges::find(names, name);
    return found == names.end() ? std::nullopt
                                : std::optional(static_cast<Answered>(found - names.begin()));
}

}  // namespace tracewright
