#include "trace/left_out.hpp"

#include <algorithm>

namespace tracewright {

Wear without_stretches(Wear wear, std::span<const Interval> stretches) {
    std::erase_if(wear.readings, [&](const Reading& reading) {
        return std::ranges::any_of(
            stretches, [&](const Interval& stretch) { return stretch.contains(reading.at); });
    });
    return wear;
}

}  // namespace tracewright
