// A time of day in a column of its own, read by what its title says.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gtest/gtest.h>

#include <fmt/format.h>

using namespace tracewright;
using namespace tracewright::testing;

TEST(ClockColumn, is_read_in_the_forms_that_its_title_allows) {
    const auto times = [](const std::string& titles, const std::vector<std::string>& clocks) {
        std::string text = titles + "\n";
        for (const std::string& clock : clocks) {
            text += "02.03.2026;" + clock + ";142\n";
        }
        return read(text + "13.03.2026;" + clocks.back() + ";142\n");
    };
    const auto at = [](int hour, int minute) {
        return Instant{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2}} +
               std::chrono::minutes{60 * hour + minute};
    };
    struct Written {
        const char* titles;
        std::vector<std::string> clocks;
    };
    for (const auto& [titles, clocks] :
         {Written{"Datum;Uhrzeit;Zucker mg/dl", {"00.07", "00.22", "13.07"}},
          Written{"Datum;Uhrzeit;Glukose mg/dl", {"00.07 Uhr", "0.22 Uhr", "13.07 Uhr"}},
          Written{"Datum;Zeit;Glukose mg/dl", {"00.07", "00.22", "13.07"}},
          Written{"date;heure;glucose mg/dl", {"0h07", "0H22", "13 h 07"}},
          Written{"fecha;hora;glucosa mg/dl", {"12:07 a. m.", "12:22 a. m.", "1:07 p. m."}}}) {
        const Intake intake = times(titles, clocks);
        ASSERT_EQ(intake.readings.size(), 4U) << titles;
        EXPECT_EQ(intake.readings[0].at, at(0, 7)) << titles;
        EXPECT_EQ(intake.readings[1].at, at(0, 22)) << titles;
        EXPECT_EQ(intake.readings[2].at, at(13, 7)) << titles;
        EXPECT_EQ(intake.readings[0].hundredths(), 14200) << titles;
    }
}

TEST(ClockColumn, that_cannot_be_read_is_where_the_rejection_points_and_never_glucose) {
    std::string text = "Datum;Uhrzeit;Zucker mg/dl\n";
    for (int i = 0; i < 12; ++i) {
        text += fmt::format("{}.03.2026;{};{}\n", 13 + i, 61 + i, 142 + 7 * i % 11);
    }
    const Intake intake = read(text);
    EXPECT_EQ(intake.columns.at(1).role, "clock");
    EXPECT_EQ(intake.columns.at(2).role, "glucose");
    EXPECT_EQ(code(intake, "clock_missing"), 12U);
    EXPECT_EQ(note(intake, "clock_missing").column, 12U);
    EXPECT_EQ(note(intake, "clock_missing").found, "'61'");
    EXPECT_EQ(note(intake, "clock_missing").expected, "a time of day, such as 08:15");
    // Without dates beside it there is no time at all, and its numbers are no levels.
    std::string alone = "Zeitpunkt,Uhrzeit,was\n";
    for (int i = 0; i < 12; ++i) {
        alone += fmt::format("{}.03.2026 08:00,{},Brot\n", 13 + i, 61 + 7 * i % 11);
    }
    EXPECT_EQ(read(alone).readings.size(), 0U);
}
