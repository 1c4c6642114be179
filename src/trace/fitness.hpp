#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <array>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Whether a window's data can carry what one wants to read off them.
struct Fitness {
    struct Hour {
        int days_with_readings = 0;  ///< days with at least one reading in this clock hour
        std::chrono::seconds sensed{0};
        std::chrono::seconds possible{0};  ///< the hour's length summed over the window's days
    };

    int days = 0;        ///< civil days touched by the window
    int valid_days = 0;  ///< civil days with at least 70 % of their own length sensed
    std::chrono::seconds sensed{0};
    std::chrono::seconds possible{0};
    std::string denominator;  ///< what `possible` is, in words
    std::array<Hour, 24> by_hour;
    std::chrono::seconds longest_gap{0};

    /// 0 to 100; 0 for an empty window.
    double active_percent() const;
    /// Clock hours that fewer than `days` days were seen in.
    std::vector<int> hours_seen_on_fewer_than(int days) const;
};

/// The civil days of a view's window, without a last one that only the last reading's standing
/// reaches into, and without those that lie whole in a stretch without a sensor.
std::vector<CivilDay> days_of(const TraceView& view, const ZoneHistory& zones,
                              std::span<const Interval> not_worn = {});

/// `denominator` says what the window is ("from the first to the last reading"). Stretches in which
/// no sensor was worn are not missing: they count in nothing, and days that lie whole in them are
/// no days of the window. They are disjoint and without readings.
Fitness fitness_of(const TraceView& view, const ZoneHistory& zones, std::string denominator,
                   std::span<const Interval> not_worn = {});

/// What a kind of measure needs before its value can be called settled.
enum class Settles { mean_and_bands, tight_range, lows, spread };

struct Sufficiency {
    Settles kind;
    bool enough = false;
    int days_have = 0;     ///< valid days
    int days_needed = 0;   ///< valid days
    std::string sentence;  ///< plain words, for the page as well as the JSON
};

/// One answer per kind. Sources: 14 days and 70 %, Battelino et al. 2019, 10.2337/dci19-0028; lows
/// and spread 21 days or more, review 10.1089/dia.2023.0476 (type 1); tight range 10 days, meeting
/// abstract 1907-LB, Diabetes 2024;73 Suppl 1.
/// An edge in the words stands in `unit`, the other in brackets.
std::vector<Sufficiency> sufficiency_of(const Fitness& fitness,
                                        GlucoseUnit unit = GlucoseUnit::mg_per_dl);

}  // namespace tracewright
