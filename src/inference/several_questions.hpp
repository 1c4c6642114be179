#pragma once

#include <span>
#include <vector>

namespace tracewright {

/// p values adjusted for being several, in the order given; empty for none.

/// Holm 1979, Scand J Stat 6:65: questions that were written down before.
std::vector<double> holm_adjusted(std::span<const double> p);

/// Benjamini & Hochberg 1995, 10.1111/j.2517-6161.1995.tb02031.x: an open scan.
std::vector<double> benjamini_hochberg_adjusted(std::span<const double> p);

}  // namespace tracewright
