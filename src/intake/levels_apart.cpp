#include "intake/levels_apart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace tracewright {

std::optional<std::chrono::seconds> levels_apart(const Intake& intake) {
    std::vector<std::chrono::seconds> steps;
    for (std::size_t i = 1; i < intake.readings.size(); ++i) {
        steps.push_back(intake.readings[i].at - intake.readings[i - 1].at);
    }
    if (steps.empty()) {
        return std::nullopt;
    }
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>((steps.size() - 1) / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return *middle > std::chrono::hours{2} ? std::optional{*middle} : std::nullopt;
}

std::string step_words(std::chrono::seconds step) {
    const auto minutes = std::chrono::round<std::chrono::minutes>(step).count();
    return minutes < 90 ? fmt::format("{} min", minutes)
                        : fmt::format("{:.0f} h", static_cast<double>(minutes) / 60);
}

}  // namespace tracewright
