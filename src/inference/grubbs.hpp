#pragma once

namespace tracewright {

/// The largest |value - mean| / SD that chance leaves to one of twenty samples of n normal values,
/// two-sided. n of 3 or more. Grubbs 1969, Technometrics 11:1, 10.1080/00401706.1969.10490657.
double grubbs_limit(double n);

}  // namespace tracewright
