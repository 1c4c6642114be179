#pragma once

#include "coaching/care_input.hpp"
#include "coaching/kept_trial.hpp"

#include <cstdint>
#include <map>
#include <span>
#include <string>

namespace tracewright {

/// What a gate has closed since it was agreed or begun and is not to be gone on with (safety rules
/// 7 to 12), in the coach's words, each sentence behind a blank; empty: it goes on.
struct ClosedSince {
    /// Of the agreed change.
    std::string agreed;
    /// By number, of the trials that run on the day of the look.
    std::map<std::int64_t, std::string> trials;
};

/// Reads whole wears and all of the diary given. The same at every moment of one of the client's
/// days, as long as nothing else becomes known.
ClosedSince closed_since(const CareInput& care, std::span<const KeptTrial> trials);

}  // namespace tracewright
