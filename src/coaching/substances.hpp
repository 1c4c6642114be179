#pragma once

#include "coaching/care_input.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// A substance that makes some sensors read wrong, over the time it may do so (safety rule 13).
struct SubstanceStretch {
    enum class Effect { not_usable_for_lows, may_read_wrong, ask_the_amount };
    Effect effect;
    Interval stretch{};
    std::string name;
};

/// Within the window, from the list of medicines and from what the diary says was taken:
/// hydroxycarbamide while it is listed and 24 h after a dose, paracetamol 8 h after a dose, others
/// of the table as long as they are listed and 8 h after a dose; high doses only (vitamin C,
/// salicylates): ask. In order of time. The 24 h are ours, no source.
std::vector<SubstanceStretch> substance_stretches(const CareInput& input, Interval window);

/// Whether some of the window is not usable for lows.
bool not_usable_for_lows(const std::vector<SubstanceStretch>& stretches);

/// One sentence for each substance.
std::vector<std::string> substances_for_coach(const std::vector<SubstanceStretch>& stretches);

}  // namespace tracewright
