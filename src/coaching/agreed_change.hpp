#pragma once

#include "coaching/care_input.hpp"
#include "coaching/gates.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What a change that is to be agreed still lacks, each in a word: "when", "how often", ...; what
/// the client does, when, where, how often, what then if not, how and when it is checked, and when
/// it is stopped are all asked for. Empty: it can be agreed.
std::vector<std::string> lacking(const AgreedChange& change);

/// Whether a coach has to answer what it does (WhatItDoes): it was filed as something else or as
/// another food, and is none of the candidates.
bool asks_what_it_does(const AgreedChange& change);

/// What closes agreeing on it, over the words of all its parts: an offer of ours
/// (gates_before_offer), or a plan made with the prescriber (gates_before_plan). Where it is asked
/// what the change does, an answer not given counts as yes: eating less, moving, and touching a
/// medicine; words that limit food count as eating less in spite of an answer. A change that goes
/// on closes it for the client's sake, not as a gate: see agree().
std::vector<Gate> gates_before_agreeing(const AgreedChange& change, bool with_prescriber,
                                        const CareInput& care);

/// What has closed the change that goes on since it was agreed (safety rules 7 to 12): it is not to
/// be gone on with. What the prescriber has answered for it, with an answer that holds, closes
/// nothing, and neither does a question not asked yet. Empty without such a change.
std::vector<Gate> gates_since_agreed(const CareInput& care);

/// What keeps it off the client's page: as gates_before_agreeing with the prescriber's answers, but
/// that nobody answered whether it touches a medicine is no reason: its words are read for that.
std::vector<Gate> gates_before_printing(const AgreedChange& change, const CareInput& care);

/// A change is agreed and open, and nothing has closed it since.
bool goes_on_as_agreed(const CareInput& care);

/// Puts the change that goes on among the earlier ones. False if none goes on.
bool end_agreed_change(ClientFacts& facts, ChangeOutcome outcome, CivilDate on);

/// "kept", "dropped", "changed" or "open".
const char* name_of(ChangeOutcome outcome);

/// "walk 15 minutes; when: right after dinner; ...": what was told of it.
std::string change_words(const AgreedChange& change);

}  // namespace tracewright
