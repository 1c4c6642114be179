#pragma once

#include "measures/shown_range.hpp"
#include "units/glucose.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// A level of a client's trace at a place of the figure's own axis: hours, or days.
struct IllustratedPoint {
    double x = 0;
    double level = 0;  ///< in the illustration's unit
};

/// A stretch of the trace. Each run is a line; between runs nothing was seen.
struct IllustratedCurve {
    enum class Look { first, second, others, dots };
    std::string label;
    Look look = Look::first;
    std::vector<std::vector<IllustratedPoint>> runs;
};

/// What was done, under the curve: a meal, a walk, sleep. An end before the begin: a moment.
struct IllustratedSpan {
    double from = 0;
    double to = 0;
    std::string label;
};

struct IllustratedTick {
    double x = 0;
    std::string label;
};

/// A level straight through the figure.
struct IllustratedLevel {
    double level = 0;
    std::string label;
    bool dashed = false;
};

/// What a page shows of a client's own trace, as values alone: the figure draws them and adds
/// nothing.
struct Illustration {
    std::string title;
    std::string alternative;  ///< what the figure shows, in words
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
    ShownRange range;
    bool numbers = true;  ///< off: no level is told, only up and down
    double from = 0;
    double to = 0;
    std::vector<IllustratedTick> ticks;
    std::vector<IllustratedCurve> curves;
    std::vector<IllustratedSpan> spans;
    std::vector<IllustratedLevel> levels;
    std::string wedge;  ///< what grows along the axis (how a lab test looks back); empty: nothing
};

}  // namespace tracewright
