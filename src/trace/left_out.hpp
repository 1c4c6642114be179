#pragma once

#include "trace/wear.hpp"

#include <span>

namespace tracewright {

/// The wear without its readings in the stretches: for the answer that would be given without them,
/// beside the one with all. Nothing is deleted of what was given.
Wear without_stretches(Wear wear, std::span<const Interval> stretches);

}  // namespace tracewright
