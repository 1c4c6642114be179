// Times that are told roughly, by halves or by another clock. Everybody in here is invented; what
// is taken for a time that is not written is ours, no source.
#include "intake/bring_in.hpp"
#include "intake/intake_for_tests.hpp"
#include "intake/loose_clock.hpp"
#include "intake/serial_time.hpp"
#include "intake/table_shape.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

const DiaryEntry& entry_of(const Intake& intake, std::string_view text) {
    for (const DiaryEntry& entry : intake.diary) {
        if (entry.text == text) {
            return entry;
        }
    }
    throw std::runtime_error("no entry " + std::string(text));
}

std::string with_offset(const std::vector<std::string>& times) {
    std::string text = "time,glucose mg/dL\n";
    int level = 100;
    for (const std::string& time : times) {
        text += time + "," + std::to_string(level++) + "\n";
    }
    return text;
}

}  // namespace

TEST(UntoldZone, days_are_cut_by_the_clock_that_the_rows_show) {
    const Intake intake = read(with_offset(
        {"2026-03-03T03:00:00-05:00", "2026-03-03T03:15:00-05:00", "2026-03-03T03:30:00-05:00"}));
    ASSERT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(intake.readings[0].at, march(3) + 3h);
    EXPECT_EQ(intake.stands_at, std::chrono::seconds{-5h});
    const auto zone = std::ranges::find(intake.guesses, std::string("time zone"), &Guess::what);
    ASSERT_NE(zone, intake.guesses.end());
    EXPECT_EQ(zone->found, "UTC-05:00");
}

// Berlin's night of 26 October 2025 by its own clock: 02:30 comes twice, an hour apart.
TEST(UntoldZone, the_repeated_hour_keeps_both_its_halves) {
    const Intake intake =
        read(with_offset({"2025-10-26T02:15:00+02:00", "2025-10-26T02:30:00+02:00",
                          "2025-10-26T02:15:00+01:00", "2025-10-26T02:30:00+01:00"}));
    ASSERT_EQ(intake.readings.size(), 4U);
    EXPECT_EQ(intake.readings[3].at - intake.readings[1].at, 1h);
}

TEST(UntoldZone, a_told_zone_takes_the_moment_as_it_is) {
    const Intake intake = read(with_offset({"2026-03-03T03:00:00-05:00"}), in_berlin());
    ASSERT_EQ(intake.readings.size(), 1U);
    EXPECT_EQ(intake.readings[0].at, march(3) + 8h);
    EXPECT_FALSE(intake.stands_at);
}

TEST(UntoldZone, of_utc_alone_nothing_is_said_of_nights) {
    const Intake intake = read(with_offset({"2026-03-03T03:00:00Z", "2026-03-03T03:15:00Z"}));
    EXPECT_EQ(intake.readings.size(), 2U);
    EXPECT_TRUE(intake.in_utc);
    EXPECT_FALSE(read(table({"120", "121"})).in_utc);
}

TEST(UntoldZone, is_asked_for_where_a_client_is_known) {
    IntakeOptions options;
    options.without_zone = WithoutZone::ask;
    for (const char* time : {"2026-03-03T03:00:00-05:00", "2026-03-03T03:00:00Z"}) {
        const Intake intake = read(with_offset({time}), options);
        EXPECT_TRUE(asks(intake, "zone")) << time;
        EXPECT_TRUE(intake.readings.empty()) << time;
        EXPECT_EQ(count(intake, Fate::question), 1U) << time;
    }
    EXPECT_EQ(read(table({"120", "121"}), options).readings.size(), 2U);
}

TEST(UntoldClock, of_a_diary_is_a_usual_one_and_said_to_be_uncertain) {
    const Intake intake = read(
        "Date;Time;Glucose (mg/dL);Finger-prick;Eaten;Carbohydrate (g);Slept (h);Note\n"
        "13.03.2026;08:00;120;;porridge;50;;\n"
        "13.03.2026;13:00;130;;soup;30;;\n"
        "14.03.2026;08:15;121;;bread;40;;\n"
        "14.03.2026;ca. 20:00;;45;;;;felt shaky\n"
        "14.03.2026;evening;;;pasta;80;;\n"
        "14.03.2026;lunch;;;rice;60;;\n"
        "15.03.2026;;;;banana;20;;\n"
        "15.03.2026;;;;;;6.5;\n");
    expect_sums(intake);
    EXPECT_EQ(count(intake, Fate::rejected), 0U);
    EXPECT_EQ(code(intake, "clock_missing"), 5U);
    const DiaryEntry& shaky = entry_of(intake, "felt shaky");
    EXPECT_EQ(shaky.at, march(14) + 20h);
    EXPECT_TRUE(shaky.time_uncertain);
    const auto prick = std::ranges::find(intake.diary, DiaryKind::finger_prick, &DiaryEntry::kind);
    ASSERT_NE(prick, intake.diary.end());
    EXPECT_EQ(prick->glucose->hundredths, 4500);
    EXPECT_EQ(entry_of(intake, "pasta").at, march(14) + 19h);
    EXPECT_EQ(entry_of(intake, "rice").slot, "lunch");
    EXPECT_EQ(entry_of(intake, "rice").at, march(14) + 13h);
    EXPECT_EQ(entry_of(intake, "banana").at, march(15) + 12h);
    EXPECT_FALSE(entry_of(intake, "bread").time_uncertain);
    const auto night = std::ranges::find(intake.diary, DiaryKind::sleep, &DiaryEntry::kind);
    ASSERT_NE(night, intake.diary.end());
    EXPECT_EQ(night->until, march(15) + 7h);
}

TEST(UntoldClock, of_a_reading_is_no_moment) {
    const Intake intake = read("date,glucose mg/dL\n2026-03-02,130\n2026-03-03,131\n");
    EXPECT_TRUE(intake.readings.empty());
    EXPECT_EQ(code(intake, "clock_missing"), 2U);
    EXPECT_EQ(count(intake, Fate::rejected), 2U);
}

// Some programs leave the time of day out where it is midnight.
TEST(UntoldClock, in_a_column_of_times_is_midnight_and_told) {
    std::string text = "time,glucose mg/dL\n";
    for (int i = 0; i < 20; ++i) {
        text += "2026-03-02 19:" + std::to_string(10 + i) + ":00,120\n";
    }
    const Intake intake = read(text + "2026-03-03,130\n2026-03-03 00:15:00,131\n");
    EXPECT_EQ(intake.readings.size(), 22U);
    EXPECT_EQ(intake.readings[20].at, march(3));
    EXPECT_EQ(code(intake, "clock_missing"), 1U);
}

TEST(UntoldClock, a_row_with_a_diary_item_and_no_time_is_rejected_and_a_footer_is_not_data) {
    const Intake intake = read(
        "date;time;glucose mg/dL;eaten;note\n"
        "2026-03-02;08:00;120;;\n2026-03-02;08:15;121;bread;\n2026-03-02;08:30;122;;\n"
        ";;;cake;\n"
        "made by nobody;;;;\n");
    EXPECT_EQ(code(intake, "time_missing"), 1U);
    EXPECT_EQ(note(intake, "time_missing").line, 5U);
    EXPECT_EQ(count(intake, Fate::rejected), 1U);
}

TEST(LooseClock, reads_what_people_write_for_a_time) {
    const struct {
        const char* text;
        std::chrono::minutes clock;
        const char* slot;
    } rows[] = {{"ca. 20:00", 20h, ""},
                {"~8:30", 8h + 30min, ""},
                {"about 7 pm", 19h, ""},
                {"gegen 18:15", 18h + 15min, ""},
                {"Breakfast", 8h, "breakfast"},
                {"Abendessen", 19h, "dinner"},
                {"night", 22h, ""},
                {"snack", 16h, "snack"}};
    for (const auto& row : rows) {
        const auto read = loose_clock(row.text);
        ASSERT_TRUE(read) << row.text;
        EXPECT_EQ(read->clock, row.clock) << row.text;
        EXPECT_EQ(read->slot, row.slot) << row.text;
    }
    for (const char* text : {"", "later", "ca.", "about a cake", "ca. 2026-03-02 08:00"}) {
        EXPECT_FALSE(loose_clock(text)) << text;
    }
}

// A workbook's dates are days since 30 December 1899 (ECMA-376-1:2016, 18.17.4.1).
TEST(SerialTime, of_a_whole_day_bears_no_time_of_day) {
    const auto day = serial_time(46083, false);
    ASSERT_TRUE(day);
    EXPECT_TRUE(day->has_date);
    EXPECT_FALSE(day->has_clock);
    const auto quarter = serial_time(46083.25, false);
    ASSERT_TRUE(quarter);
    EXPECT_TRUE(quarter->has_clock);
    EXPECT_EQ(quarter->clock, 6h);
}

TEST(SerialTime, in_two_columns_is_a_date_and_a_time_of_day) {
    std::vector<SampleRow> sample;
    sample.push_back({1, {"Date", "Time", "Glucose mg/dL"}, std::vector(3, CellForm::text)});
    for (std::uint32_t i = 0; i < 8; ++i) {
        sample.push_back({i + 2,
                          {"46083", std::to_string(0.25 + i / 96.0), std::to_string(120 + i)},
                          {CellForm::date, CellForm::date, CellForm::number}});
    }
    const TableShape shape = table_shape(sample, {});
    EXPECT_EQ(shape.first(Role::date), 0U);
    EXPECT_EQ(shape.first(Role::clock), 1U);
    EXPECT_EQ(shape.first(Role::glucose), 2U);
    EXPECT_FALSE(shape.first(Role::time));
}

TEST(RowUnit, that_is_not_known_rejects_its_level) {
    const Intake intake = read(
        "time,value,unit\n2026-03-02 08:00,120,mg/dL\n2026-03-02 08:15,121,mg/dL\n"
        "2026-03-02 08:30,6.9,mM\n2026-03-02 08:45,124,stones\n");
    ASSERT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(intake.readings[2].unit(), GlucoseUnit::mmol_per_l);
    EXPECT_EQ(note(intake, "unit_not_read").line, 5U);
    EXPECT_EQ(note(intake, "unit_not_read").column, 22U);
    expect_sums(intake);
}

// A note out of its order within the hour that comes twice puts nothing into its second half.
TEST(RepeatedHour, begins_again_where_the_clock_went_back_by_its_shift) {
    std::string text = "time,glucose mg/dL,note\n";
    for (const char* row :
         {"01:30,120,", "01:45,121,", "02:00,122,", "02:15,123,", "02:30,124,", "02:20,,walked",
          "02:45,125,", "02:00,126,", "02:15,127,", "02:30,128,", "02:45,129,", "03:00,130,"}) {
        text += "2025-10-26 " + std::string(row) + "\n";
    }
    const Intake intake = read(text, in_berlin());
    ASSERT_EQ(intake.readings.size(), 11U);
    EXPECT_EQ(count(intake, Fate::conflict), 0U);
    for (std::size_t i = 1; i < 11; ++i) {
        EXPECT_EQ(intake.readings[i].at - intake.readings[i - 1].at, 15min) << i;
    }
}
