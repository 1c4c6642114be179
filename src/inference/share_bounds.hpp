#pragma once

namespace tracewright {

/// The exact lower bound of a share of which `met` of `all` were seen: the share at which so many
/// or more would come with a chance of 1 - level. 0 where none was met or nothing seen.
/// Source: Clopper & Pearson 1934, 10.1093/biomet/26.4.404.
double lower_bound_of_share(int met, int all, double level = 0.95);

/// How many must be looked at, all met, before that bound passes `share`.
int looks_needed(double share, double level = 0.95);

}  // namespace tracewright
