#pragma once

#include "coaching/care_input.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What does not fit the usual course of type 2 (safety rule 7).
enum class TypeSign : std::uint8_t {
    type_not_told,
    other_type_told,
    weight_loss,
    thirst,
    mostly_above_250,
    raised_ketones,
    young_at_diagnosis,
    another_autoimmune_disease,
    quick_worsening,
    new_after_sixty,
    wide_spread
};

struct TypeSignSeen {
    TypeSign sign;
    std::optional<Instant> at;  ///< empty: a fact about the client, without a time
    std::string seen;           ///< "blood ketones of 0.8 mmol/L on Tue 3 March"
};

/// The signs in these data, each kind once with its latest time, in the order of the enumeration.
///
/// Weight down 5 % or more without a change agreed before it; thirst written; two days or more of
/// one wear mostly above 250 mg/dL (13.9 mmol/L), each with 12 h seen; blood ketones of 0.6 mmol/L
/// or more; diagnosed under 35; another autoimmune disease; lab A1c up by 1.0 percentage points
/// within 26 weeks while a glucose-lowering medicine is taken; diagnosed at 60 or later, in the
/// last two years, with weight loss or pancreas trouble; CV above 36 % over the last 14 days (5
/// days of them seen), unless insulin or a secretagogue is on an answered list. Limits of age,
/// time and days: our own rule; ketones and CV: docs/safety.md.
std::vector<TypeSignSeen> type_signs(const CareInput& input);

/// Whether the prescriber has answered that the type was checked, and no sign was seen since.
bool type_was_checked(const CareInput& input, const std::vector<TypeSignSeen>& signs);

/// Whether they are for the prescriber to hear of: not answered, and more than that it is not on
/// record which type the client was told.
bool are_for_the_prescriber(const CareInput& input, const std::vector<TypeSignSeen>& signs);

/// Whether the words say type 2, or a state before it, and nothing else.
bool told_type_2(const std::string& told_type);

/// For the coach, with the signs; never a diagnosis. Empty without signs.
std::string type_signs_for_coach(const std::vector<TypeSignSeen>& signs);
/// For the client; empty without signs, or where the type told, or that it is not on record, is the
/// only one.
std::string type_signs_for_client(const std::vector<TypeSignSeen>& signs);

}  // namespace tracewright
