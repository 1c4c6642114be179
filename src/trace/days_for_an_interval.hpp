#pragma once

namespace tracewright {

/// Fewer days with at least 70 % of their readings give no interval (ours, no source).
inline constexpr int days_for_an_interval = 3;

}  // namespace tracewright
