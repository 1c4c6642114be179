// Row 41 of the table of bad inputs (interchange, section 4.4): footers that sum a table up.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

TEST(BadInput, row_41_a_footer_that_sums_up_is_no_data_and_what_only_looks_like_one_is_rejected) {
    const std::string text =
        "time,glucose mg/dL,carbs,note\n2026-03-02 08:00,120,,\n2026-03-02 08:15,121,30,\n"
        "2026-03-02 08:30,122,,\n";
    for (const char* footer : {"Average,120", "Total,,230,", "TOTAL:,480", "Mean glucose,150,,",
                               "Summe,,30,", "Mittelwert,121", "Moyenne,121", "Somme :,,30,",
                               "Promedio,121", "M\xC3\xADnimo,120", "Max,122,,", "Count,3"}) {
        const Intake intake = read(text + footer + "\n");
        EXPECT_EQ(count(intake, Fate::not_data), 2U) << footer;
        EXPECT_EQ(count(intake, Fate::rejected), 0U) << footer;
        EXPECT_EQ(intake.readings.size(), 3U) << footer;
    }
    for (const char* row : {"later,120,,", "Totally,120,,", "Total 2026-03-02,480,,", ",120,,",
                            "Maximilian,120", "2026-03-0x,120,,"}) {
        const Intake intake = read(text + row + "\n");
        EXPECT_EQ(count(intake, Fate::rejected), 1U) << row;
        expect_sums(intake);
    }
    // Only where a time should stand.
    const Intake beside = read(
        "date,time,glucose mg/dL\n2026-03-02,08:00,120\n"
        "2026-03-02,08:15,121\n2026-03-02,Average,121\n");
    EXPECT_EQ(code(beside, "clock_missing"), 1U);
    const Intake before = read(
        "note,time,glucose mg/dL\n,2026-03-02 08:00,120\n"
        ",2026-03-02 08:15,121\nTotal,,121\n");
    EXPECT_EQ(code(before, "time_missing"), 1U);
}
