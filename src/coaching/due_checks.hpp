#pragma once

#include "coaching/caseload.hpp"

#include <string>
#include <vector>

namespace tracewright {

enum class CheckKind { two_hours, trial_day, trial_ended, agreed_change, third_day, laboratory };
const char* name_of(CheckKind kind);

/// A look between wears that is due today.
struct DueCheck {
    CheckKind kind{};
    Instant by;
    std::string why;   ///< to the coach, with the fact
    std::string next;  ///< one action
    std::string text;  ///< for the client, to copy; empty: nothing to send
};

/// Two hours after a logged meal whose finger-prick before is there; a day of a trial, or a trial
/// that ended and was not read; the check of what was agreed; the third day of a wear that nobody
/// looked at; a laboratory A1c whose best date has come (only where there was one before). Texts
/// bear no glucose value; with a positive eating screen none asks for a finger-prick. A trial or a
/// change that a gate has closed since is told to the coach, with nothing to send.
std::vector<DueCheck> due_checks(const CaseloadClient& client, const ZoneHistory& clock,
                                 Instant as_of);

}  // namespace tracewright
