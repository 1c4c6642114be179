#pragma once

#include "coaching/care_input.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Whether the client's papers and shares leave out meal photos, energy, carbohydrate totals,
/// fasting, portion changes, weight, food rankings, hours in range and live numbers (safety rule
/// 12): where the eating screen is positive or not answered. An answer without a date or without
/// who gave it is none.
bool numbers_turned_down(const EatingScreen& screen);

enum class EatingSign {
    skipped_meals_and_falling_weight,
    little_carbohydrate,
    many_finger_pricks,
    words_of_shame
};

struct EatingSignSeen {
    EatingSign sign;
    std::string seen;
};

/// Signs to raise (safety rule 12, our own rule): in the diary a whole day with a single meal on
/// two days or more while weight falls by 5 %; less than 50 g of carbohydrate a day over three days
/// unless a prescriber agreed to little carbohydrate; more than 20 finger-pricks on a day; words of
/// shame in what the client wrote of themselves. Each kind once.
std::vector<EatingSignSeen> eating_signs(const CareInput& input);

/// "Talk first. Don't set a food change. Offer a referral." with what was seen; empty without signs
/// where the screen was answered no.
std::string eating_for_coach(const CareInput& input);

/// The three plain questions of our own, marked as not a validated screen.
std::vector<std::string> eating_questions();

}  // namespace tracewright
