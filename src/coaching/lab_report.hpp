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
};

struct LabReport {
    std::vector<LineRow> line;        ///< ascending by date
    std::vector<LabResult> not_read;  ///< kept, but no A1c, fasting glucose or weight
    std::vector<Finding> findings;    ///< sensor and laboratory apart, what to expect, remission
    std::optional<ExpectedA1c> expected;
    RemissionCheck remission;
    CivilDate next_test;  ///< no sooner than 90 days after the last A1c, medicine or agreed change
};

struct LabQuestion {
    const ReviewInput& input;
    const ClientFacts& facts;
    std::optional<CivilDate> diet_started{};
    std::optional<CivilDate> surgery_on{};
    std::span<const KeptTrial> trials{};
};

/// Labs beside what the sensor saw: why they differ, what the next A1c may be, remission. Method:
/// docs/methods/a1c.md.
LabReport lab_report(const LabQuestion& question);

/// Day means of the days with at least 70 % of their readings, ascending.
std::vector<DayMean> day_means(const ReviewInput& input);

}  // namespace tracewright
