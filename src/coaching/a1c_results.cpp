#include "coaching/a1c_results.hpp"

#include "diary/written_words.hpp"
#include "units/a1c.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr double least_percent = 3;
constexpr double most_percent = 20;

// Halves away from zero, whatever the binary neighbour of 48.65.
double to_tenth(double value) {
    return std::round(value * 10 + 1e-9) / 10;
}

// A result without its day was once kept as the clock's first.
bool dated(const LabResult& lab) {
    return lab.on != CivilDate{};
}

bool is_fasting(const std::string& what) {
    const std::string name = small_letters(what);
    return name == "fasting glucose" || name == "fasting plasma glucose" || name == "fasting" ||
           name == "fpg";
}

}  // namespace

bool is_a1c(const std::string& what) {
    // What stands in brackets says where or how: '(lab)', '(IFCC)'.
    std::string name = small_letters(what.substr(0, what.find('(')));
    while (name.ends_with(' ')) {
        name.pop_back();
    }
    constexpr std::array names = {"a1c",
                                  "hba1c",
                                  "hb a1c",
                                  "hgba1c",
                                  "hgb a1c",
                                  "haemoglobin a1c",
                                  "hemoglobin a1c",
                                  "glycated haemoglobin",
                                  "glycated hemoglobin",
                                  "glycosylated haemoglobin",
                                  "glycosylated hemoglobin"};
    return std::ranges::find(names, name) != names.end();
}

double A1cResult::percent() const {
    return in_mmol_per_mol ? to_percent(A1cMmolPerMol{reported}).percent : reported;
}

bool A1cResult::under_6_5() const {
    return reported < (in_mmol_per_mol ? 48.0 : 6.5);
}

std::string A1cResult::words() const {
    const double mmol =
        in_mmol_per_mol ? reported : to_mmol_per_mol(A1cPercent{reported}).mmol_per_mol;
    return fmt::format("{:.1f} % ({:.0f} mmol/mol)", to_tenth(percent()), std::round(mmol));
}

std::vector<A1cResult> a1c_results(std::span<const LabResult> labs) {
    std::vector<A1cResult> results;
    for (const LabResult& lab : labs) {
        const std::string unit = small_letters(lab.unit);
        const A1cResult result{lab.on, lab.value, unit == "mmol/mol"};
        if (is_a1c(lab.what) && dated(lab) &&
            (result.in_mmol_per_mol || unit == "%" || unit == "percent") &&
            result.percent() >= least_percent && result.percent() <= most_percent) {
            results.push_back(result);
        }
    }
    std::ranges::stable_sort(results, {}, &A1cResult::on);
    return results;
}

bool FastingResult::under_126() const {
    return level.hundredths < (level.unit == GlucoseUnit::mg_per_dl ? 12600 : 700);
}

std::vector<FastingResult> fasting_results(std::span<const LabResult> labs) {
    std::vector<FastingResult> results;
    for (const LabResult& lab : labs) {
        const std::string unit = small_letters(lab.unit);
        if (is_fasting(lab.what) && dated(lab) && lab.value > 0 &&
            (unit == "mg/dl" || unit == "mmol/l")) {
            results.push_back(
                {lab.on,
                 {rounded_hundredths(lab.value),
                  unit == "mg/dl" ? GlucoseUnit::mg_per_dl : GlucoseUnit::mmol_per_l}});
        }
    }
    std::ranges::stable_sort(results, {}, &FastingResult::on);
    return results;
}

std::vector<std::string> a1c_doubted_because(const ClientFacts& facts) {
    std::vector<std::string> reasons;
    if (facts.cautions.kidney_disease == Answered::yes) {
        reasons.emplace_back("kidney disease");
    }
    if (facts.cautions.pregnancy == Pregnancy::pregnant) {
        reasons.emplace_back("pregnancy");
    }
    const std::string others = small_letters(facts.cautions.others);
    constexpr std::array<std::array<const char*, 2>, 11> named = {{
        {"anaemia", "anaemia"},
        {"anemia", "anaemia"},
        {"iron", "iron deficiency or its treatment"},
        {"haemoglobin", "a haemoglobin variant"},
        {"hemoglobin", "a haemoglobin variant"},
        {"sickle", "a haemoglobin variant"},
        {"thalass", "a haemoglobin variant"},
        {"transfus", "a transfusion"},
        {"blood loss", "blood loss"},
        {"haemoly", "red cells that live shorter"},
        {"erythropoietin", "erythropoietin"},
    }};
    for (const auto& [word, reason] : named) {
        if (others.find(word) != std::string::npos &&
            std::ranges::find(reasons, reason) == reasons.end()) {
            reasons.emplace_back(reason);
        }
    }
    return reasons;
}

}  // namespace tracewright
