#pragma once

#include "trace/wear.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// How readings of a file stand to a wear that is known; the numbers are indices into the file's.
struct Meeting {
    std::vector<std::size_t> repeated;  ///< the same moment and level
    std::vector<std::size_t> contradicted;
    std::size_t between = 0;  ///< within the known span, at moments of its own
};

/// `file` ascending. A level told in the other unit is the same to the rounding of the coarser.
Meeting meeting_of(std::span<const Reading> file, const Wear& known);

}  // namespace tracewright
