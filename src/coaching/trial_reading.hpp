#pragma once

#include "coaching/trial.hpp"
#include "findings/finding.hpp"
#include "findings/first_review.hpp"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What was done on a day, whatever the lot had said.
enum class ArmDone : std::uint8_t { not_known, a, b, neither };

/// One day of a trial as it went.
struct TrialDay {
    CivilDate date;
    bool allotted_a = false;
    ArmDone done = ArmDone::not_known;
    std::optional<double> value;  ///< mg/dL or hours
    std::string none_because;
    std::optional<double> carbohydrate_g;
};

/// One way of reading the pairs: A less B.
struct PairsRead {
    int pairs = 0;  ///< with a value on both sides
    double estimate = 0;
    /// By inversion of the exact test. Like the one below it ends no further than the outcome can
    /// go from the mean of b: to 0, of a day's hours to 24.
    std::optional<std::array<double, 2>> interval95;
    std::optional<std::array<double, 2>> t95;  ///< Student's, of three pairs or more; beside it
    double p = 1;
    std::uint64_t at_least = 0;
    std::uint64_t patterns = 0;
};

struct TrialReading {
    bool ended = false;  ///< before that nothing below is filled
    std::vector<TrialDay> days;
    int kept = 0;    ///< days done as allotted
    int broken = 0;  ///< days done otherwise
    PairsRead as_allotted;
    std::optional<PairsRead>
        as_done;  ///< pairs with one day of each arm, whichever the lot said; no p
    Finding finding;
};

/// Told by the coach, over what the diary shows.
using DoneOn = std::map<CivilDate, ArmDone>;

/// Reads a trial after its last day: as allotted first, by the exact test over the set drawn from
/// and its interval; as done second, without a p. A night habit's value is that of the morning
/// after. Can't tell with fewer than 6 complete pairs, under 80 % of days as allotted (of those
/// known), or arms that differ in carbohydrate by over half a standard deviation. Before the end:
/// no verdict, no number.
/// Sources: Fisher 1935; CENT 2015, 10.1136/bmj.h1738. Method: docs/methods/trials.md.
TrialReading read_trial(const Trial& trial, const ReviewInput& input, const DoneOn& told = {});

}  // namespace tracewright
