#pragma once

#include "coaching/before_after.hpp"
#include "coaching/lab_report.hpp"
#include "coaching/next_lab.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// A change that was agreed, and what the wears before and after it say.
struct DidItHelp {
    AgreedChange change;
    std::string none_because;  ///< why nothing is compared; empty if something is
    std::optional<BeforeAfter> compared;
    std::vector<std::string> else_changed;  ///< other changes, trials and illness between
    /// Why it does not go on though nobody ended it, in the coach's words; empty: as its outcome
    /// says.
    std::string closed;
    bool kept_off_paper = false;  ///< by the eating screen (safety rule 12)
};

/// What client and coach went through together, and what is not known yet.
struct Story {
    std::string very_low;           ///< the latest, with how many there are; empty: none
    std::string last_reading;       ///< when it was, and its age
    std::vector<std::string> care;  ///< who leads, and what is not for the client; may be empty
    bool fewer_numbers = false;     ///< the eating screen is positive or not answered
    LabReport labs;                 ///< the time line, the A1c's findings, remission
    std::vector<DidItHelp> changes;
    std::vector<Finding> trials;  ///< of those that ended or were stopped
    std::vector<std::string> kept;
    std::vector<std::string> unknown;
    NextLab next_lab;
};

/// Of each change: the last wear whose middle lies before the day it was agreed against the first
/// that begins after it and not after it ended. 'Better' is told of hours in range between two
/// wears, never as the change's doing: a trial alone tells that. Labs, weights, medicines, trials
/// and changes stand on one line of dates. Very lows come before everything (safety rule 2), from
/// the raw wears and finger-pricks; what a gate has closed since does not go on.
Story story_of(const LabQuestion& question);

}  // namespace tracewright
