#pragma once

#include "cli/client_of_change.hpp"
#include "cli/streams.hpp"

#include <optional>
#include <string>

namespace tracewright {

struct PlanOptions {
    std::optional<double> worth;  ///< hours in range a day
    std::string agree;            ///< what the client will do, in their words
    std::string candidate;        ///< code of the candidate it comes from
    std::string kind;             ///< else what it has the client do
    std::string eating;           ///< what it does to eating: nothing, as-much or less
    std::string moves;            ///< whether it moves the body: yes or no
    std::string medicine;         ///< whether it touches a medicine: yes or no
    bool with_prescriber = false;
    std::string when;
    std::string where;
    std::string how_often;
    std::string if_not;
    std::string how_checked;
    std::string check_on;
    std::string stop_when;
    std::string ended;  ///< kept, dropped or changed: ends the one that goes on
    std::string on;     ///< the day of agreeing or ending; else today
};

/// Candidate changes of one client, ranked; agrees on one, or says how the agreed one ended.
Exit plan_change(const WhoseChange& whose, const PlanOptions& options, const Streams& streams);

}  // namespace tracewright
