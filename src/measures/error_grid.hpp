#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace tracewright {

enum class ErrorGrid : std::uint8_t {
    consensus_type_1,  ///< also the grid of ISO 15197
    consensus_type_2,
    clarke
};

std::string_view name_of(ErrorGrid grid);

/// The zone of a reading against its reference, both in mg/dL: 'A' (no effect on what one would do)
/// to 'E'. On a line the better zone; beyond 550 the last stretch of a line runs on.
/// Sources: Parkes et al. 2000, vertices as in Pfuetzner et al. 2013, 10.1177/193229681300700517;
/// Clarke et al. 1987, 10.2337/diacare.10.5.622. **Vertices and rules are from memory.**
char error_zone(ErrorGrid grid, double reference, double reading);

/// Where the line between A and B lies above the reference (consensus grids): for checks.
double upper_line_of_zone_b(ErrorGrid grid, double reference);

}  // namespace tracewright
