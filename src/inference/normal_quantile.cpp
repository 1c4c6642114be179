#include "inference/normal_quantile.hpp"

#include <boost/math/distributions/normal.hpp>

namespace tracewright {

double normal_quantile(double p) {
    return boost::math::quantile(boost::math::normal{}, p);
}

}  // namespace tracewright
