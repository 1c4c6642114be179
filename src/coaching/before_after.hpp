#pragma once

#include "diary/medicine_timeline.hpp"
#include "findings/finding.hpp"
#include "findings/first_review.hpp"
#include "measures/sensor_error.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace tracewright {

struct BeforeAfterSettings {
    /// Smallest difference worth acting on, hours in range a day: 5 percentage points, the
    /// consensus figure for one person (Battelino et al. 2023, 10.1016/S2213-8587(22)00319-9; from
    /// memory).
    double worth_hours = 1.2;
    double sensor_sd = one_sensors_error;  ///< SD, a share of glucose
    double sensor_sd_other_kind = one_sensors_error_of_other_kind;
    bool other_kind = false;  ///< of sensor; wears that report at other intervals count so anyhow
};

/// Hours in range a day of later wears against earlier ones.
struct BeforeAfter {
    int days_before = 0;  ///< civil days with at least 70 % of readings, without noted illness
    int days_after = 0;
    int left_out = 0;
    /// The mean of those days as the comparison takes it, so that `difference` is theirs: fitted
    /// with the days' leaning on one another, at the same share of weekends. The plain mean where
    /// nothing is compared. Empty: none, or in pregnancy.
    std::optional<double> hours_before;
    std::optional<double> hours_after;
    /// A day's share of all the time seen, as a review and the story count it: days seen in part
    /// or with illness are in it. Empty: nothing seen, or in pregnancy.
    std::optional<double> hours_before_of_all;
    std::optional<double> hours_after_of_all;
    bool worn_at_once = false;   ///< a wear of one side doesn't lie before each of the other
    bool same_readings = false;  ///< both stretches hold the very same readings: one record twice
    bool weekdays_matched = false;
    double difference = 0;  ///< hours a day, after less before; exactly 0 for the same readings
    /// Ends no further than a day can go: none in range, or all of its 24 hours.
    std::array<double, 2> interval95{};
    std::array<double, 2> interval95_of_days{};  ///< without the sensors' own error
    double sensor_sd = 0;                        ///< hours: of the difference, by the sensors alone
    double probability_more = 0.5;
    double beyond = 0;  ///< the larger of P(> worth), P(< -worth)
    double within = 0;  ///< P(between -worth and worth)
    std::optional<int>
        days_needed;  ///< a wear, for a half-width of the worth; empty: none in reach
    Finding finding;
};

/// `before` and `after`: indices into the input's wears, not empty, apart from one another. Day
/// values of both in one regression, begun anew at each wear, the difference told at the same share
/// of weekends; the sensors' error added to its variance, found by moving every reading up and down
/// by it. 'More' or 'less' needs P >= 0.975 to that side; 'no difference worth acting on' at most
/// 0.05 beyond the worth on either side; else can't tell, and what would. Under 5 days on either
/// side: can't tell. Wears worn at once are not compared. In pregnancy: nothing. Medicine changes
/// between are told, and take the credit. Method: docs/methods/before-after.md.
BeforeAfter before_after(const ReviewInput& input, const std::vector<std::size_t>& before,
                         const std::vector<std::size_t>& after, const MedicineTimeline& medicines,
                         const BeforeAfterSettings& settings = {});

/// Days with readings that a wear on each side of a change must have to tell hours in range to
/// `hours` a day either way (95 %), if days scatter and lean on each other as in the last wear with
/// five or more of them, with both sensors' own error. Empty: over 120, never, or no such wear.
std::optional<int> days_to_check(const ReviewInput& input, double hours,
                                 const BeforeAfterSettings& settings = {});

}  // namespace tracewright
