#pragma once

#include "intake/bring_in.hpp"
#include "intake/read_row.hpp"

#include <cstddef>

namespace tracewright {

inline constexpr std::size_t rows_shown = 10;

/// Keeps a row of data as it was understood, for the eye, while fewer than `rows_shown` are.
void keep_sample(Intake& intake, const ReadRow& row);

}  // namespace tracewright
