#include "coaching/red_cell_memory.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

double RedCellMemory::share(double from, double to) const {
    const double a = lifespan_ - std::clamp(from, 0.0, lifespan_);
    const double b = lifespan_ - std::clamp(to, 0.0, lifespan_);
    return (a * a - b * b) / (lifespan_ * lifespan_);
}

double RedCellMemory::half_time() const {
    return lifespan_ * (1 - std::sqrt(0.5));
}

double mean_by_rule_of_thumb(double last_30, double before_30, double before_60) {
    return last_30 / 2 + before_30 / 4 + before_60 / 4;
}

}  // namespace tracewright
