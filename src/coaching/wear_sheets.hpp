#pragma once

#include "coaching/care_input.hpp"
#include "coaching/paper.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What a coach knows of the wear that begins; what is empty is left to write in by hand.
struct WearBeginning {
    std::string of_whom;  ///< the client's name; empty: a line to write it on
    std::string site;     ///< where it sits, in words
    std::optional<CivilDate> starts;
    std::optional<int> days;  ///< planned
};

/// The page for the first day of a wear: where it sits, that the first day is not to be relied on,
/// what to write, what to do if it falls off, when to finger-prick, when to ring whom. With an
/// eating screen that is positive or open nothing of live numbers or amounts of food stands on it
/// (safety rule 12); in pregnancy the clinic leads.
Paper start_page(const WearBeginning& wear, const CareInput& care);

/// A fortnight's days on paper, a sheet for each week, to be typed in later: lanes Ate, Moved,
/// Slept, Felt, Took. Each sheet stands alone: with first aid (safety rule 15). Amounts of food are
/// asked for only where the eating screen was answered no. Without a first day the days are left
/// to write in.
std::vector<Paper> diary_sheets(const WearBeginning& wear, const CareInput& care);

}  // namespace tracewright
