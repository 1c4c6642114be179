#pragma once

namespace tracewright {

/// The value below which a standard normal draw lies with probability `p`, 0 < p < 1.
double normal_quantile(double p);

}  // namespace tracewright
