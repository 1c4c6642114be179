#pragma once

#include "trace/mark.hpp"
#include "trace/trace_view.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// Why a wear ended. `not_told` is an answer; `still_on` is one that was.
enum class WearEnd { not_told, planned, fell_off, sensor_failed, removed, still_on };

const char* words_for(WearEnd end);

/// One sensor from insertion to removal, as far as the data tell.
struct Wear {
    std::string label;   ///< "wear 1", or the sensor's own number where a file has one
    std::string source;  ///< the file it came from, as given
    Instant start;       ///< insertion as told, else the first reading
    bool start_told = false;
    WearEnd end = WearEnd::not_told;
    std::optional<Instant> planned_end;
    std::chrono::seconds interval{0};  ///< the most common step between readings
    std::vector<Reading> readings;     ///< ascending, distinct moments
    bool chosen = false;               ///< by a coach, to be counted where another was worn at once
    /// Levels told of moments for which another was told too: which is right is not known, so none
    /// of them is in a measure. Ascending.
    std::vector<Reading> held;

    bool empty() const { return readings.empty(); }
    /// From the first reading's moment to the last one's plus one interval. Not empty().
    Interval sensed_span() const;
    /// From `start` to the last reading: how long it lasted.
    std::chrono::seconds lasted() const;
    TraceView view() const;
};

/// The most common step between neighbours, to the next whole minute where that is within 10 s;
/// 5 minutes for fewer than two readings. `readings` ascending.
std::chrono::seconds interval_found(std::span<const Reading> readings);

/// Sets each reading's interval: that of the run of like steps it lies in, so that a wear that
/// mixes 1-, 5- and 15-minute stretches weighs each by its own (architecture rule 3). A step counts
/// as the sensor's own if it recurs at least 6 times in the wear; extra readings between the
/// regular ones (scans) keep the wear's interval.
void set_intervals(std::vector<Reading>& readings);

/// Cuts one file's readings into wears at each silence of `new_wear_after` or longer. Ours, no
/// source: files rarely name the sensor, and a day without readings rarely is one sensor.
std::vector<Wear> wears_of(std::vector<Reading> readings, const std::string& source,
                           std::chrono::seconds new_wear_after = std::chrono::hours{12});

}  // namespace tracewright
