#pragma once

#include "measures/day_sums.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// How often each whole level was read, where every reading stood the same time: then the middle of
/// the readings is the middle of the time.
class LevelCounts {
  public:
    /// Readings that stand across midnight are one. Empty if their times differ, if a level is
    /// between two whole ones (mg/dL, tenths of mmol/L), or if there is no reading.
    static std::optional<LevelCounts> of(std::span<const DayOfTrace> days);

    /// The median of a function of the level; of an even count midway between the middle two.
    double median(const std::function<double(Glucose)>& value) const;

  private:
    std::vector<std::uint32_t> mg_;  // by place in the unit's table
    std::vector<std::uint32_t> mmol_;
    std::uint32_t readings_ = 0;
};

}  // namespace tracewright
