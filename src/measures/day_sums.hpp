#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>
#include <vector>

namespace tracewright {

/// Sums over a stretch of trace from which every additive measure follows; they add up over days,
/// so a resample of days is a weighted sum of them. Levels are summed exactly in hundredths of the
/// unit they were reported in.
struct GlucoseSums {
    double readings = 0;
    double seconds = 0;
    std::array<double, 2> level{};          ///< by GlucoseUnit: seconds x hundredths
    std::array<double, 2> level_squared{};  ///< seconds x hundredths^2
    std::array<double, 2> unit_seconds{};
    std::array<double, 5> band_seconds{};  ///< by Band
    double tight_seconds = 0;
    double pregnancy_seconds = 0;
    double censored_seconds = 0;
    double low_risk = 0;  ///< seconds x risk
    double high_risk = 0;
    double m_value = 0;  ///< seconds x term
    double change = 0;   ///< sum of |step| between neighbours without a gap, mg/dL
    double path = 0;     ///< sum of sqrt(minutes^2 + (mg/dL)^2) over the same steps
    double step_seconds = 0;
    double day_before = 0;  ///< sum of |difference to the day before|, mg/dL
    double day_before_pairs = 0;
    std::array<double, 3> hourly{};  ///< sum of differences 1, 2, 4 h apart, mg/dL
    std::array<double, 3> hourly_squared{};
    std::array<double, 3> hourly_pairs{};

    /// Adds `times` of `other`.
    void add(const GlucoseSums& other, double times = 1);

    /// In `unit`; not defined without readings.
    double mean(GlucoseUnit unit) const;
    /// Weighted by time with n - 1; empty below two readings.
    std::optional<double> sd(GlucoseUnit unit) const;
    double percent_in(std::size_t band) const { return 100 * band_seconds.at(band) / seconds; }

  private:
    double centre(GlucoseUnit unit) const;  // the mean in hundredths
};

/// One civil day's share of a window.
struct DayOfTrace {
    CivilDate date;
    Interval part;  ///< of the day: all of it, or a clock window of it
    TraceView view;
    GlucoseSums sums;
    double low_risk_max = 0;  ///< for ADRR
    double high_risk_max = 0;
    std::optional<double> swing;  ///< MAGE in mg/dL; whole days only
    bool valid = false;           ///< at least 70 % of `part` sensed

    double seconds_possible() const { return static_cast<double>(part.length().count()); }
};

/// The days of a window with their sums. Steps and pairs across midnight count for the later day.
std::vector<DayOfTrace> days_of_trace(const TraceView& view, const ZoneHistory& zones);
/// The part of each day in which the clock shows [begin, end): levels only, no steps, pairs or
/// swings.
std::vector<DayOfTrace> clock_windows_of_trace(const TraceView& view, const ZoneHistory& zones,
                                               std::chrono::seconds begin,
                                               std::chrono::seconds end);

}  // namespace tracewright
