// Rows that tell from when to when. Everybody in here is invented; the roles of such columns are
// those of interchange 4.2, and nothing that stands in a row is lost in silence (4.4).
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

TEST(Span, of_movement_keeps_what_was_done_and_how_long) {
    for (const char* text :
         {"Date,Start,End,Exercise,Minutes\n2026-03-02,17:00,17:30,walk,30\n"
          "2026-03-03,23:10,01:40,walk,150\n",
          "Start time,End time,Activity\n2026-03-02 17:00,2026-03-02 17:30,walk\n"
          "2026-03-03 23:10,2026-03-04 01:40,walk\n",
          "Start,End,Type,Minutes\n2026-03-02 17:00,2026-03-02 17:30,walk,30\n"
          "2026-03-03 23:10,2026-03-04 01:40,walk,150\n2026-03-04 08:00,2026-03-04 "
          "08:10,meal,\n"}) {
        const Intake intake = read(text);
        expect_sums(intake);
        ASSERT_GE(intake.diary.size(), 2U) << text;
        const DiaryEntry& evening = intake.diary[0];
        EXPECT_EQ(evening.kind, DiaryKind::movement) << text;
        EXPECT_EQ(evening.text, "walk") << text;
        EXPECT_EQ(evening.at, march(2, 17h)) << text;
        EXPECT_EQ(evening.until, march(2, 17h + 30min)) << text;
        EXPECT_EQ(intake.diary[1].kind, DiaryKind::movement) << text;
        EXPECT_EQ(intake.diary[1].until, march(4, 1h + 40min)) << text;
    }
}

TEST(Span, whose_length_alone_is_told_is_sleep_by_night_and_movement_by_day) {
    const std::string rows =
        "2026-03-02,2026-03-02 23:40,2026-03-03 07:10,26000\n"
        "2026-03-03,2026-03-03 15:00,2026-03-03 15:40,2400\n";
    const Intake intake = read("written_on,start_local,end_local,duration_s\n" + rows);
    ASSERT_EQ(intake.diary.size(), 2U);
    EXPECT_EQ(intake.diary[0].kind, DiaryKind::sleep);
    EXPECT_EQ(intake.diary[0].until, march(3, 7h + 10min));
    EXPECT_EQ(intake.diary[1].kind, DiaryKind::movement);
    // In a table of nights whoever works by night sleeps by day.
    const Intake nights = read("night_of,start_local,end_local,duration_s\n" + rows);
    ASSERT_EQ(nights.diary.size(), 2U);
    EXPECT_EQ(nights.diary[1].kind, DiaryKind::sleep);
}

TEST(Span, of_movement_keeps_its_minutes_and_steps) {
    const Intake minutes =
        read("Date,Start,End,Exercise,Minutes\n2026-03-02,17:00,17:30,walk,30\n");
    ASSERT_EQ(minutes.diary.size(), 1U);
    EXPECT_EQ(minutes.diary[0].number, 30);
    EXPECT_EQ(minutes.diary[0].number_unit, "min");
    const Intake steps = read("Date,Start,End,Exercise,Steps\n2026-03-02,17:00,17:30,walk,3100\n");
    ASSERT_EQ(steps.diary.size(), 1U);
    EXPECT_EQ(steps.diary[0].text, "walk | 3100 steps");
}

TEST(Span, is_sleep_where_a_title_or_a_cell_says_so) {
    for (const char* text :
         {"Bedtime,Wake time\n2026-03-03 13:00,2026-03-03 13:40\n",
          "Start time,End time,Activity,Minutes\n2026-03-03 13:00,2026-03-03 13:40,sleep,40\n",
          "Date,Start,End,Activity\n2026-03-03,13:00,13:40,Nap\n",
          "Start,End,Type,Minutes\n2026-03-03 13:00,2026-03-03 13:40,sleep,40\n"
          "2026-03-04 08:00,2026-03-04 08:10,walk,10\n"}) {
        const Intake intake = read(text);
        ASSERT_GE(intake.diary.size(), 1U) << text;
        EXPECT_EQ(intake.diary[0].kind, DiaryKind::sleep) << text;
        EXPECT_EQ(intake.diary[0].at, march(3, 13h)) << text;
        EXPECT_EQ(intake.diary[0].until, march(3, 13h + 40min)) << text;
        const auto slept = std::ranges::count(intake.diary, DiaryKind::sleep, &DiaryEntry::kind);
        EXPECT_EQ(slept, 1) << text;
    }
}

TEST(Span, that_nothing_is_said_of_is_sleep_by_night_alone) {
    const struct {
        const char* row;
        bool slept;
    } spans[] = {{"2026-03-02 22:50,2026-03-03 06:40,", true},
                 {"2026-03-03 00:30,2026-03-03 02:30,", true},
                 {"2026-03-02 22:50,2026-03-03 06:40,slept badly", true},
                 {"2026-03-03 00:30,2026-03-03 02:29,", false},
                 {"2026-03-02 17:00,2026-03-02 17:30,", false},
                 {"2026-03-02 08:00,2026-03-02 16:00,", false},
                 {"2026-03-02 20:00,2026-03-03 12:01,", false}};
    for (const auto& [row, slept] : spans) {
        const Intake intake = read("Start,End,Note\n" + std::string(row) + "\n");
        EXPECT_EQ(std::ranges::count(intake.diary, DiaryKind::sleep, &DiaryEntry::kind), slept)
            << row;
        EXPECT_EQ(count(intake, Fate::rejected), slept ? 0U : 1U) << row;
        EXPECT_EQ(code(intake, "no_value"), slept ? 0U : 1U) << row;
    }
}

TEST(Span, of_a_level_or_a_meal_is_no_sleep_and_its_lost_end_is_told) {
    const Intake level = read(
        "Start,End,Glucose mg/dL\n2026-03-03 01:00,2026-03-03 04:00,120\n"
        "2026-03-03 04:00,2026-03-03 07:00,121\n");
    EXPECT_EQ(level.readings.size(), 2U);
    EXPECT_TRUE(level.diary.empty());
    const Intake meal = read("Start,End,Meal\n2026-03-02 12:00,2026-03-02 12:30,soup\n");
    ASSERT_EQ(meal.diary.size(), 1U);
    EXPECT_EQ(meal.diary[0].kind, DiaryKind::meal);
    EXPECT_EQ(note(meal, "column_not_read").line, 0U);
    EXPECT_THAT(note(meal, "column_not_read").found,
                HasSubstr("column 2 ('End') in 1 row, the first on line 2"));
}
