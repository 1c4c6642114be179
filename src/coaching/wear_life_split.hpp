#pragma once

#include "coaching/sensor_record.hpp"

#include <optional>
#include <span>

namespace tracewright {

/// Fewer failures tell no life. Ours; from it on a median is at least not one sensor's.
inline constexpr int fewest_sensor_failures = 5;
/// Fewer wears, in all or in one of two groups, are not compared. Ours.
inline constexpr int fewest_wears_compared = 20;

/// In days; failed: fell off or sensor failed.
Lifetime lifetime_of(const WearLine& wear);

/// The life of sensors with an overpatch beside that of those without. Empty where of no wear it
/// was told.
std::optional<LifeSplit> split_by_overpatch(std::span<const WearLine> wears);

/// The same by site, the most worn first, of one number by name. Sites that differ in capitals or
/// outer spaces alone are one.
std::optional<LifeSplit> split_by_site(std::span<const WearLine> wears);

}  // namespace tracewright
