// What workbooks of people and devices hold, beside what a text of the same rows would.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"
#include "intake/invented_workbook.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

constexpr double second_of_march = 46083;  // 2026, from 30 December 1899

Intake read_book(const std::vector<InventedSheet>& sheets, const IntakeOptions& options = {}) {
    return bring_in_bytes(workbook_of(sheets), "test.xlsx", options);
}

}  // namespace

TEST(WorkbookFile, keeps_its_titles_above_rows_that_have_a_time_and_no_value_yet) {
    InventedSheet sheet{"Wear", {{"time", "heart rate", "glucose (mg/dL)"}}};
    for (int i = 0; i < 15; ++i) {
        sheet.rows.push_back({SheetDay{second_of_march + i / 96.0}});
        if (i > 2) {
            sheet.rows.back().insert(sheet.rows.back().end(), {62.0 + i, 198.0 + i});
        }
    }
    const Intake intake = read_book({sheet});
    EXPECT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(intake.readings.at(0).hundredths(), 20100);
    EXPECT_EQ(code(intake, "no_value"), 3U);
    EXPECT_EQ(count(intake, Fate::not_data), 1U);
}
