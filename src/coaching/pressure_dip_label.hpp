#pragma once

#include "coaching/client_facts.hpp"
#include "coaching/escalation.hpp"
#include "trace/mark.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Stretches that may be called 'may be pressure on the sensor', and those of the same shape that
/// may not, each with why not (safety rule 4). The label takes nothing away: lows in it are
/// escalated and counted all the same.
struct DipLabels {
    std::vector<Mark> may_be_pressure;
    std::vector<std::string> not_labelled;  ///< sentences, one for each shape
};

/// Asleep by the diary, or between 23:00 and 07:00 of the client's clock where no sleep is written
/// for that night. Never without a medicine list answered 'none that can cause lows' for the night
/// and the seven days before; nor within 12 hours after alcohol or movement of an hour or more (or
/// of no written length), nor after a dinner that is late (21:00 or later) or not written; nor with
/// a symptom or a low finger-prick from 2 hours before to 8 after, kidney or liver disease, stomach
/// surgery, an earlier severe low (each also when not asked), age 75 or more or unknown; nor where
/// two nights of one wear have it within 90 minutes of the clock. Source: our own rule.
DipLabels dip_labels(const LadderInput& input, const ClientFacts& facts);

}  // namespace tracewright
