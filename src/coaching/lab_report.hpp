#pragma once

#include "coaching/expected_a1c.hpp"
#include "coaching/kept_trial.hpp"
#include "coaching/remission.hpp"
#include "findings/finding.hpp"
#include "findings/first_review.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What happened, on one time line.
struct LineRow {
    CivilDate on;
    std::string kind;  ///< "lab", "weight", "wear", "medicine", "change", "trial"
    std::string words;
    /// The same without hours in range, foods and weight, for a client's paper while the eating
    /// screen is positive or not answered; empty: left off it.
    std::string without_numbers;
};

struct LabReport {
    std::vector<LineRow> line;        ///< ascending by date
    std::vector<LabResult> not_read;  ///< kept, but no A1c, fasting glucose or weight
    std::vector<Finding> findings;    ///< sensor and laboratory apart, what to expect, remission
    std::optional<ExpectedA1c> expected;
    RemissionCheck remission;
    /// No sooner than 90 days after the last A1c, medicine or agreed change; empty in pregnancy.
    std::optional<CivilDate> next_test;
};

struct LabQuestion {
    const ReviewInput& input;
    const ClientFacts& facts;
    std::optional<CivilDate> diet_started{};
    std::optional<CivilDate> surgery_on{};
    std::span<const KeptTrial> trials{};
};

/// Labs beside what the sensor saw: why they differ, what the next A1c may be, remission; nothing
/// of these in pregnancy, while planning one or when unsure (safety rule 11). Method:
/// docs/methods/a1c.md.
LabReport lab_report(const LabQuestion& question);

/// Whether the words of a change or a trial stay off a client's paper, as the eating screen closes
/// it (safety rule 12).
bool is_kept_off_paper(const AgreedChange& change, const CareInput& care);
bool is_kept_off_paper(const Trial& trial, const CareInput& care);

/// Day means of the days with at least 70 % of their readings, ascending.
std::vector<DayMean> day_means(const ReviewInput& input);

}  // namespace tracewright
