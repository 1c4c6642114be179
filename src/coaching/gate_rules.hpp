#pragma once

#include "coaching/gates.hpp"

namespace tracewright {

// The gates, by what they are about; each reads the client alone, whatever is proposed.

/// Under 18 (or may be), pregnancy (also planned, unsure or not asked).
std::vector<Gate> gates_for_anything(const CareInput& input);

/// The type to be checked, SGLT2 inhibitor, insulin, secretagogue, frailty, eyes.
std::vector<Gate> gates_for_eating_less(const CareInput& input);

/// The eating screen and signs.
std::vector<Gate> gates_for_food(const CareInput& input);

/// Lows with a medicine, beta-blocker, feet, eyes, chest.
std::vector<Gate> gates_for_walking(const CareInput& input);

/// Eye disease, not asked, or no check in 12 months.
std::vector<Gate> eye_gates(const CareInput& input);

}  // namespace tracewright
