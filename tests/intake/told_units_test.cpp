// Units that rows or cells name (interchange 4.4 rows 13, 14 and 39), limits that say little, and
// options that name no column. Invented levels.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

std::string unit_guess(const Intake& intake) {
    const auto told = std::ranges::find(intake.guesses, std::string("unit"), &Guess::what);
    return told == intake.guesses.end() ? "" : told->found + ", " + told->why;
}

}  // namespace

TEST(ToldUnits, rows_that_name_a_unit_against_their_numbers_are_asked_about) {
    struct Against {
        const char* title;
        std::vector<std::string> rows;
        GlucoseUnit right;
        std::int32_t first;
    };
    const std::vector<Against> all = {
        {"glucose mmol/L,unit", {"5.6,mg/dL", "5.8,mg/dL"}, GlucoseUnit::mmol_per_l, 560},
        {"glucose,unit", {"112,mmol/L", "120,mmol/L"}, GlucoseUnit::mg_per_dl, 11200},
        {"glucose,unit", {"112,mmol/L", "120,mg/dL"}, GlucoseUnit::mg_per_dl, 11200},
        {"glucose", {"5.6 mg/dL", "5.8 mg/dL"}, GlucoseUnit::mmol_per_l, 560},
    };
    for (const Against& one : all) {
        const std::string text = table(one.rows, one.title);
        const Intake intake = read(text);
        ASSERT_TRUE(asks(intake, "unit")) << text;
        EXPECT_THAT(intake.questions[0].sentence, HasSubstr("Which is right?"));
        ASSERT_TRUE(intake.error);
        EXPECT_THAT(intake.error->sentence(),
                    HasSubstr("Nothing is stored before it is answered, with --unit."));
        EXPECT_TRUE(intake.readings.empty());
        IntakeOptions answered;
        answered.unit = one.right;
        const Intake settled = read(text, answered);
        ASSERT_EQ(settled.readings.size(), one.rows.size()) << text;
        EXPECT_EQ(settled.readings[0].hundredths(), one.first) << text;
        EXPECT_EQ(settled.readings[0].unit(), one.right) << text;
        EXPECT_EQ(settled.columns[1].unit, name_of(one.right)) << text;
    }
}

TEST(ToldUnits, a_unit_asked_for_leaves_rows_their_own_that_fits_their_numbers) {
    IntakeOptions options;
    options.unit = GlucoseUnit::mg_per_dl;
    const Intake intake = read(table({"5.6,mmol/L", "112,mg/dL", "113,"}, "glucose,unit"), options);
    ASSERT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(intake.readings[0].unit(), GlucoseUnit::mmol_per_l);
    EXPECT_EQ(intake.readings[1].unit(), GlucoseUnit::mg_per_dl);
    EXPECT_EQ(intake.readings[2].unit(), GlucoseUnit::mg_per_dl);
}

TEST(ToldUnits, cells_that_bear_their_unit_are_the_files) {
    const Intake intake = read(table({"5.6 mmol/L", "5.8 mmol/L", "LOW"}, "glucose"));
    EXPECT_EQ(intake.unit, GlucoseUnit::mmol_per_l);
    EXPECT_EQ(intake.columns.at(1).unit, "mmol/L");
    EXPECT_EQ(unit_guess(intake), "mmol/L, each level bears it");
    ASSERT_EQ(intake.readings.size(), 3U);
    const Intake by_rows = read(table({"5.6,mmol/L", "5.8,mmol/L"}, "glucose,unit"));
    EXPECT_EQ(by_rows.unit, GlucoseUnit::mmol_per_l);
}

TEST(Limits, within_the_range_say_nothing_of_the_band) {
    const Intake intake = read(table(plenty({"<120", ">110", "<70", ">180", "<40", "> 400"})));
    EXPECT_EQ(code(intake, "limit_within_range"), 2U);
    EXPECT_THAT(note(intake, "limit_within_range").found, HasSubstr("<120"));
    EXPECT_EQ(note(intake, "limit_within_range").column, 18U);
    EXPECT_EQ(std::ranges::count_if(intake.readings, &Reading::censored), 4);
    const Intake mmol =
        read(table(plenty({"<6.7", "<3.9", ">10.0", ">9.9"}, "6.5"), "glucose mmol/L"));
    EXPECT_EQ(code(mmol, "limit_within_range"), 2U);
}

TEST(Options, that_name_no_column_of_a_file_with_glucose_are_refused_with_those_it_has) {
    IntakeOptions options;
    options.time_column = "Foo";
    const Intake no_time = read(table(plenty({})), options);
    ASSERT_TRUE(no_time.error);
    EXPECT_EQ(no_time.error->sentence(),
              "test.csv: found no column 'Foo', expected one of this file's: 1 ('time'), 2 "
              "('glucose mg/dL'); --time-column");
    options = {};
    options.glucose_column = "7";
    const Intake no_glucose = read(table(plenty({})), options);
    ASSERT_TRUE(no_glucose.error);
    EXPECT_EQ(no_glucose.error->kind, FileErrorKind::no_value_column);
    // Given for several files, it is not the diary's.
    const Intake diary = read("time,meal,carbs\n2026-03-02 08:00,bread,30\n", options);
    EXPECT_FALSE(diary.error);
    EXPECT_EQ(diary.diary.size(), 1U);
    options.glucose_column = "2";
    EXPECT_FALSE(read(table(plenty({})), options).error);
}
