#pragma once

#include "measures/goals.hpp"
#include "trace/trace_view.hpp"

#include <chrono>

namespace tracewright {

/// The range by which a person's hours are shown, in mg/dL: 70 to 180 (3.9 to 10.0 mmol/L), or 63
/// to 140 (3.5 to 7.8) in pregnancy, while planning one or when unsure (safety rule 11). Below 54
/// (3.0) is very low in both; above 250 (13.9) is told apart only in the first.
/// Source: Battelino et al. 2019, Diabetes Care 42:1593, 10.2337/dci19-0028.
struct ShownRange {
    int low = 70;
    int high = 180;

    bool in_pregnancy() const { return low == 63; }
    bool operator==(const ShownRange&) const = default;
};

ShownRange shown_range(const Goals& goals);

/// Time in the parts that a shown range makes: disjoint, adding up to the time sensed.
struct TimeByRange {
    std::chrono::seconds very_low{0};
    std::chrono::seconds low{0};
    std::chrono::seconds in_range{0};
    std::chrono::seconds high{0};
    std::chrono::seconds very_high{0};  ///< zero in pregnancy: counted with high

    std::chrono::seconds sensed() const { return very_low + low + in_range + high + very_high; }
    std::chrono::seconds above() const { return high + very_high; }
    TimeByRange& operator+=(const TimeByRange& other);
};

TimeByRange time_by_range(const TraceView& view, const ShownRange& range);

}  // namespace tracewright
