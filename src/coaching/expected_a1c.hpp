#pragma once

#include "coaching/a1c_results.hpp"
#include "measures/sensor_error.hpp"
#include "time/instant.hpp"

#include <array>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Mean glucose of one civil day that was seen well enough, mg/dL.
struct DayMean {
    CivilDate date;
    double mg_per_dl = 0;
};

struct A1cSettings {
    double lifespan_days = 120;
    /// How far people of one mean glucose differ in A1c, percentage points: 0.59 about the line in
    /// the JDRF study 2011 (Diabetes Care 34:540, sampling error included), 0.46 from Bergenstal et
    /// al. 2018 (28 % differ by 0.5 or more; from memory). 0.5 is between.
    double people_sd = 0.5;
    double laboratory_cv = 0.02;           ///< from memory
    double sensor_sd = one_sensors_error;  ///< share of the mean
    double weeks_unseen_sd = 10;  ///< mg/dL: weeks not seen against those seen; our assumption
};

/// A client's laboratory A1c less what the line gives for the glucose before it.
struct PersonalOffset {
    int pairs = 0;
    double weight = 0;  ///< B: how far the pairs are believed, 0 to 1
    double value = 0;   ///< percentage points, shrunk towards 0
    double sd = 0;      ///< of what is left open
};

/// B = t^2 / (t^2 + s^2 / k): t how far people differ, s the error of one pair. No pairs: 0 +- t.
PersonalOffset personal_offset(std::span<const double> gaps, double people_sd, double pair_sd);

struct ExpectedA1c {
    std::string none_because;  ///< empty if there is one
    CivilDate on;
    int days_seen = 0;       ///< of the days that A1c of that date remembers
    double weight_seen = 0;  ///< their share of its memory, 0 to 1
    double mean_mg_per_dl = 0;
    double by_line = 0;  ///< percent, without the own offset
    PersonalOffset offset;
    double percent = 0;
    double sd = 0;
    std::array<double, 2> interval95{};
};

/// The laboratory A1c to be expected on a date, if glucose is on days not seen what it was on the
/// days seen. Needs 10 days in the 60 before `as_of`; a past result is a pair where 14 days of the
/// 60 before it were seen. `days` ascending. The line: Nathan et al. 2008, 10.2337/dc08-0545.
/// Method and variance: docs/methods/a1c.md.
ExpectedA1c expected_a1c(std::span<const DayMean> days, std::span<const A1cResult> past,
                         CivilDate on, CivilDate as_of, const A1cSettings& settings = {});

}  // namespace tracewright
