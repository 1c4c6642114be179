#pragma once

#include "coaching/care_input.hpp"
#include "coaching/paper.hpp"
#include "coaching/trial_reading.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// An item of CENT 2015 (10.1136/bmj.h1738, 10.1136/bmj.h1793) filled from the record.
struct ReportItem {
    std::string item;
    std::string text;
};

/// What the record can tell of the statement's items; 13 to 20 only after the trial's end. Items
/// 1a, 3a and 5 as read, the others as remembered. What no record holds (2a, 22, 25) is left to
/// the coach: `items_left_to_write`.
std::vector<ReportItem> report_items(const Trial& trial, const TrialReading& reading,
                                     const ReviewInput& input);
std::vector<std::string> items_left_to_write();

/// The report as a paper for the coach: the answer as allotted, then as done, its pairs as figure 0
/// once the trial has ended, what it can't tell, the items, and room for those the record can't
/// fill.
Paper trial_report(const Trial& trial, const TrialReading& reading, const ReviewInput& input,
                   const CareInput& care);

}  // namespace tracewright
