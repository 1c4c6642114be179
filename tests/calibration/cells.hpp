#pragma once

namespace tracewright {

/// A bar on standard error where that is a terminal.
void progress(int done, int of);

// Each prints its part of docs/calibration.md on standard output.

/// How far the told size of an effect lies from the planted one, in lives of the meal model.
void print_bias_cells(int lives);
/// How often chance alone answers one of a review's standing questions, or offers a scan's trial.
void print_standing_cells(int draws);
/// Unwritten meals found, and rises asked about for nothing.
void print_unwritten_cells(int lives);

/// Trials without an effect, equal wears, power, the next A1c.
void print_change_cells(int draws);

}  // namespace tracewright
