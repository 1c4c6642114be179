#pragma once

#include "coaching/care_input.hpp"
#include "coaching/gates.hpp"
#include "coaching/trial.hpp"
#include "findings/first_review.hpp"
#include "inference/trial_power.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

struct TrialWish {
    const TrialTemplate* made_from = nullptr;
    std::optional<int> pairs;            ///< empty: as many as the length says
    std::optional<double> worth;         ///< mg/dL or hours; empty: twice the outcome's own
    Draw draw = Draw::fair_coins;        ///< balanced: even, from 8 pairs on
    std::optional<CivilDate> first_day;  ///< empty: tomorrow
    std::uint64_t seed = 1;
};

/// What is said before a trial starts, and the trial where nothing stands against it.
struct TrialPlan {
    std::vector<Gate> gates;      ///< why it may not be offered; all of them
    std::string refused_because;  ///< the wish itself can't be met; empty if it can
    int own_values = 0;           ///< nights, days or meals of the client that tell of the noise
    TrialLength length;
    /// Fewest pairs if the noise is at the lower and the upper end of what those values leave open
    /// (80 %); empty ends: not known or over 60.
    std::array<std::optional<int>, 2> pairs_range{};
    std::vector<std::string> sentences;  ///< for the coach, in order
    std::optional<Trial> trial;
};

/// What closes an offer of this trial, over the words of both arms (safety rules 7 to 12).
std::vector<Gate> gates_before_trial(const TrialTemplate& made_from, const CareInput& care);

/// Plans a trial from the client's own readings: the noise of a pair is the difference of values a
/// day or two apart in one wear, taken in either order. At least 5 such differences are needed, or
/// nothing is said of power. A day of the schedule never lies before tomorrow. With a gate
/// closed (gates_before_trial) no trial is made.
/// Method: docs/methods/trials.md.
TrialPlan plan_trial(const TrialWish& wish, const ReviewInput& input, const CareInput& care);

/// Differences of the outcome between neighbouring days of one wear: the noise of a pair.
std::vector<double> own_pair_noise(const ReviewInput& input, Outcome outcome,
                                   int* values = nullptr);

}  // namespace tracewright
