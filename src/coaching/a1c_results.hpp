#pragma once

#include "coaching/client_facts.hpp"
#include "time/instant.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// A laboratory A1c with the scale it was reported in, in which it is held against limits.
struct A1cResult {
    CivilDate on;
    double reported = 0;
    bool in_mmol_per_mol = false;

    double percent() const;
    /// Under 6.5 %, or under 48 mmol/mol: by the scale reported; 6.5 and 48 themselves are not.
    bool under_6_5() const;
    /// "6.5 % (48 mmol/mol)": both scales, rounded as the trade does.
    std::string words() const;
};

/// Whether a laboratory calls it so: A1c, HbA1c, haemoglobin A1c, 'HbA1c (lab)' and the like.
bool is_a1c(const std::string& what);

/// Results called so in percent or mmol/mol, ascending by date; values outside
/// 3 to 20 % (9 to 195 mmol/mol) are passed over as slips of the unit.
std::vector<A1cResult> a1c_results(std::span<const LabResult> labs);

/// Laboratory fasting glucose.
struct FastingResult {
    CivilDate on;
    Glucose level;

    /// Under 126 mg/dL, or under 7.0 mmol/L: by the unit reported.
    bool under_126() const;
};
std::vector<FastingResult> fasting_results(std::span<const LabResult> labs);

/// Why a laboratory A1c of this client may mislead: kidney disease, pregnancy, and what is written
/// among the cautions (anaemia, iron, haemoglobin variant, transfusion, blood loss, ...). Empty:
/// nothing known. List: from memory.
std::vector<std::string> a1c_doubted_because(const ClientFacts& facts);

}  // namespace tracewright
