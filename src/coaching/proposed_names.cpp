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

}  // namespace tracewright
