// The rows of the project's table of bad inputs (interchange, section 4.4) that are about times.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

TEST(BadInput, row_20_future_and_ancient_times_are_rejected_and_many_are_asked_about) {
    IntakeOptions options;
    options.as_of = std::chrono::sys_days{std::chrono::year{2026} / 3 / 3};
    std::vector<std::string> many(40, "120");
    const std::string text = table(many) + "2027-03-02 08:00,130\n1999-03-02 08:00,130\n";
    const Intake one = read(text, options);
    EXPECT_EQ(code(one, "future_time"), 1U);
    EXPECT_EQ(code(one, "before_2000"), 1U);
    EXPECT_EQ(count(one, Fate::stored), 40U);
    options.as_of = std::chrono::sys_days{std::chrono::year{2026} / 3 / 2} + 9h;
    const Intake clock_wrong = read(text, options);
    EXPECT_TRUE(asks(clock_wrong, "clock"));
    EXPECT_TRUE(clock_wrong.readings.empty());
}

TEST(BadInput, row_29_a_twelve_hour_clock_without_am_and_pm_is_asked_about) {
    std::string text = "time,glucose mg/dL\n";
    for (const char* half : {"", ""}) {
        for (int i = 0; i < 24; ++i) {
            const int hour = i / 2 == 0 ? 12 : i / 2;
            text += "2026-03-02 " + std::string(hour < 10 ? "0" : "") + std::to_string(hour) +
                    (i % 2 == 0 ? ":00" : ":30") + "," + std::to_string(100 + i) + half + "\n";
        }
    }
    EXPECT_TRUE(asks(read(text), "twelve_hour_clock"));
}

TEST(BadInput, row_30_date_and_time_in_two_columns_the_date_only_where_it_changes) {
    const Intake intake = read(
        "date,clock,glucose "
        "mg/dL\n2026-03-02,23:30,120\n,23:45,121\n2026-03-03,00:00,122\n,00:15,123\n");
    ASSERT_EQ(intake.readings.size(), 4U);
    EXPECT_EQ(intake.readings[3].at - intake.readings[0].at, 45min);
}

TEST(BadInput, row_31_dates_that_fit_both_orders_are_asked_about) {
    std::string text = "time,glucose mg/dL\n";
    for (int i = 0; i < 8; ++i) {
        text += "03/04/2026 0" + std::to_string(i) + ":00,120\n";
    }
    const Intake intake = read(text);
    EXPECT_TRUE(asks(intake, "date_order"));
    EXPECT_EQ(count(intake, Fate::question), 8U);
    IntakeOptions day;
    day.date_order = DateOrder::day_first;
    EXPECT_EQ(read(text, day).readings.size(), 8U);
}

TEST(BadInput, row_31_the_question_quotes_the_first_date_that_is_open) {
    const Intake intake = read(
        "time,glucose mg/dL\n2026-03-02 08:00,100\n2 March 2026 08:15,104\n"
        "02.03.2026 08:30,110\n02.03.2026 08:45,111\n");
    ASSERT_TRUE(asks(intake, "date_order"));
    EXPECT_THAT(intake.questions.front().sentence, HasSubstr("'02.03.2026 08:30' (line 4)"));
}

TEST(BadInput, row_31_a_number_above_twelve_decides) {
    const Intake intake = read(
        "time,glucose mg/dL\n12/03/2026 08:00,120\n13/03/2026 08:00,121\n14/03/2026 08:00,122\n");
    EXPECT_TRUE(intake.questions.empty());
    EXPECT_EQ(intake.readings[1].at - intake.readings[0].at, 24h);
}

// European summer time 2025: forward on 30 March at 01:00 UTC, back on 26 October at 01:00 UTC.
TEST(BadInput, row_32_the_repeated_hour_is_told_apart_by_order) {
    std::string text = "time,glucose mg/dL\n";
    for (const char* time : {"01:30", "01:45", "02:00", "02:15", "02:30", "02:45", "02:00", "02:15",
                             "02:30", "02:45", "03:00", "03:15"}) {
        text += "2025-10-26 " + std::string(time) + ",120\n";
    }
    const Intake intake = read(text, in_berlin());
    ASSERT_EQ(intake.readings.size(), 12U);
    for (std::size_t i = 1; i < 12; ++i) {
        EXPECT_EQ(intake.readings[i].at - intake.readings[i - 1].at, 15min) << i;
    }
    EXPECT_EQ(code(intake, "repeated_hour"), 8U);
}

TEST(BadInput, row_32_a_time_in_the_skipped_hour_is_rejected_with_the_reason) {
    const Intake intake = read(
        "time,glucose mg/dL\n2025-03-30 01:30,120\n2025-03-30 01:45,121\n2025-03-30 02:30,122\n"
        "2025-03-30 03:00,123\n2025-03-30 03:15,124\n",
        in_berlin());
    EXPECT_EQ(intake.readings.size(), 4U);
    EXPECT_EQ(note(intake, "skipped_hour").found, "2025-03-30 02:30");
    EXPECT_THAT(note(intake, "skipped_hour").expected, HasSubstr("set forward"));
}

TEST(BadInput, row_32_a_device_that_slept_through_the_change_is_read_at_one_offset) {
    std::string text = "time,glucose mg/dL\n";
    for (int i = 0; i < 24; ++i) {
        char time[32];
        std::snprintf(time, sizeof time, "2025-03-30 %02d:%02d", i / 4, i % 4 * 15);
        text += std::string(time) + ",120\n";
    }
    const Intake intake = read(text, in_berlin());
    EXPECT_TRUE(intake.clock_did_not_change);
    EXPECT_EQ(intake.readings.size(), 24U);
    EXPECT_EQ(code(intake, "clock_did_not_change"), 1U);
    EXPECT_EQ(count(intake, Fate::rejected), 0U);
}

TEST(BadInput, row_33_seconds_are_kept) {
    const Intake intake = read(
        "time,glucose mg/dL\n2026-03-02 08:15:02,120\n2026-03-02 08:30:01,121\n2026-03-02 "
        "08:45:03,122\n");
    EXPECT_EQ(intake.readings[1].at - intake.readings[0].at, 14min + 59s);
    EXPECT_EQ(intake.readings[0].interval(), 15min);
}

TEST(BringIn, hours_slept_written_in_the_morning_are_the_night_before) {
    const Intake intake =
        read("time,glucose mg/dL,slept (h)\n2026-03-02 06:45,120,7.5\n2026-03-02 07:00,121,\n");
    ASSERT_EQ(intake.diary.size(), 1U);
    EXPECT_EQ(*intake.diary[0].until - intake.diary[0].at, 7h + 30min);
    EXPECT_EQ(*intake.diary[0].until, intake.readings[0].at);
    EXPECT_TRUE(intake.diary[0].time_uncertain);
}
