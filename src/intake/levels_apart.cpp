#include "intake/levels_apart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace tracewright {

namespace {

constexpr std::chrono::hours longest_of_a_sensor{2};

}  // namespace

std::optional<std::chrono::seconds> levels_apart(const Intake& intake) {
    const auto& readings = intake.readings;
    const auto step = [&](std::size_t i) { return readings[i].at - readings[i - 1].at; };
    // Of a sensor, that its steps are short is seen without putting them in order.
    std::size_t longer = 0;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        longer += step(i) > longest_of_a_sensor ? 1U : 0U;
    }
    if (readings.size() < 2 || 2 * longer < readings.size()) {
        return std::nullopt;
    }
    std::vector<std::chrono::seconds> steps;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        steps.push_back(step(i));
    }
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>((steps.size() - 1) / 2);
    std::ranges::nth_element(steps, middle);
    return *middle > longest_of_a_sensor ? std::optional{*middle} : std::nullopt;
}

std::string step_words(std::chrono::seconds step) {
    const auto minutes = std::chrono::round<std::chrono::minutes>(step).count();
    return minutes < 90 ? fmt::format("{} min", minutes)
                        : fmt::format("{:.0f} h", static_cast<double>(minutes) / 60);
}

}  // namespace tracewright
