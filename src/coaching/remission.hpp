#pragma once

#include "coaching/a1c_results.hpp"
#include "coaching/client_facts.hpp"
#include "findings/finding.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// A sensor's estimate of A1c, which counts only where the laboratory's is doubted.
struct SensorEstimate {
    CivilDate on;  ///< last day of what it is made of
    double percent = 0;
};

struct RemissionInput {
    const ClientFacts& facts;
    CivilDate today;
    std::optional<CivilDate> diet_started;  ///< a diet programme
    std::optional<CivilDate> surgery_on;
    std::optional<SensorEstimate> sensor{};
};

enum class RemissionState : std::uint8_t {
    meets,           ///< the numbers of the consensus definition
    too_high,        ///< the result that counts is not under the limit
    not_yet,         ///< too early, or the result came too early
    on_medicine,     ///< a glucose-lowering medicine is taken
    medicines_open,  ///< not asked, not recognised, or no date of stopping told
    no_result,
    clinic_leads  ///< in pregnancy, while planning one or when unsure nothing is asked (rule 11)
};

struct RemissionCheck {
    RemissionState state = RemissionState::no_result;
    std::optional<CivilDate> earliest;    ///< the first day on which a result can count
    std::optional<CivilDate> counted_on;  ///< of the result that decided
    std::optional<CivilDate> test_next;
    std::vector<std::string> blocks;  ///< every thing in the way, a sentence each
    bool a1c_doubted = false;
};

/// The consensus definition, to the day: A1c under 6.5 % (48 mmol/mol) no sooner than 3 months (90
/// days: ours) after the last day of every glucose-lowering medicine, whatever it was taken for;
/// 3 months after surgery; 6 months (180 days) after a diet programme's start. Where A1c is
/// doubted, fasting glucose under 126 mg/dL (7.0 mmol/L) or the sensor's estimate under 6.5 %
/// instead. Again at least yearly.
/// Source: Riddle et al. 2021, 10.2337/dci21-0034; the waits after diet and surgery, and that any
/// glucose-lowering medicine counts: from memory.
RemissionCheck remission_check(const RemissionInput& input);

/// In words: 'meets the numbers of', never that it is one; the prescriber confirms.
Finding remission_finding(const RemissionCheck& check, const RemissionInput& input);

}  // namespace tracewright
