#include "inference/share_bounds.hpp"

#include <boost/math/distributions/beta.hpp>

#include <cmath>

namespace tracewright {

double lower_bound_of_share(int met, int all, double level) {
    if (met <= 0 || all <= 0) {
        return 0;
    }
    return boost::math::quantile(boost::math::beta_distribution<>(met, all - met + 1), 1 - level);
}

int looks_needed(double share, double level) {
    int looks = 1;
    while (std::pow(1 - level, 1.0 / looks) <= share) {
        ++looks;
    }
    return looks;
}

}  // namespace tracewright
