#pragma once

#include "coaching/escalation.hpp"

#include <vector>

namespace tracewright {

// The rules of the ladder, one file each; each reads the input alone. Numbers: docs/safety.md,
// mostly from memory or our own rule, as marked there.

/// Very lows of every wear and of finger-pricks, a low that needed another's help, and two or more
/// lows in 7 days on insulin, a sulfonylurea or a glinide (or on a list not answered).
std::vector<Escalation> lows_on_the_ladder(const LadderInput& input);

/// Above 300 mg/dL (16.7 mmol/L); above 240 (13.3) with raised ketones; above 250 (13.9) most of a
/// day.
std::vector<Escalation> highs_on_the_ladder(const LadderInput& input);

/// What the diary says: ketones, symptoms, illness of two days or more, vomiting or diarrhoea for
/// more than 6 hours.
std::vector<Escalation> diary_on_the_ladder(const LadderInput& input);

/// Improvement on a risky medicine (safety rule 10): the mean of seven days down by 1.5 mmol/L (27
/// mg/dL) or more against the seven before (each with 70 % seen), any low after a change was
/// agreed, weight down by 5 % or more; dizziness or such a fall of weight on blood-pressure
/// tablets.
std::vector<Escalation> improvement_on_the_ladder(const LadderInput& input);

/// Above 300 mg/dL (16.7 mmol/L), or HIGH.
bool above_300(const Reading& reading);

/// "very_low@1772673300": kind and moment.
std::string event_key(const char* kind, Instant at);
/// Of what an entry of the diary says: several may bear one moment, as messages without a time do,
/// and an answer to one is none to another. "ketones@1772673300=1f3c...": with a mark of what it
/// says.
std::string event_key(const char* kind, const DiaryEntry& entry);

/// The medicines that make a low likelier at that time, or that they are not answered; empty where
/// they are answered and none can.
std::string lows_by_medicine(const LadderInput& input, Instant at);

}  // namespace tracewright
