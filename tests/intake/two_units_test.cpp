// Two columns of glucose whose titles name different units. Invented levels.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

const char* const titles = "time,glucose (mg/dL),glucose (mmol/L)";

/// Rows of these pairs, a quarter of an hour apart.
std::string pairs(const std::vector<std::string>& some, const std::string& heading = titles) {
    std::string text = heading + "\n";
    for (std::size_t i = 0; i < 12; ++i) {
        text += "2026-03-02 " + std::to_string(10 + i) + ":00," + some[i % some.size()] + "\n";
    }
    return text;
}

const std::string both = pairs({"136,7.6", "126,7.0", "70,3.9", "181,10.1"});

}  // namespace

TEST(TwoUnits, each_column_is_read_in_the_unit_of_its_own_title_and_one_is_taken) {
    const Intake intake = read(both);
    EXPECT_TRUE(intake.questions.empty());
    ASSERT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(intake.readings[0].hundredths(), 13600);
    EXPECT_EQ(intake.readings[0].unit(), GlucoseUnit::mg_per_dl);
    EXPECT_EQ(code(intake, "second_value"), 0U);
    const auto told = std::ranges::find(intake.guesses, std::string("unit"), &Guess::what);
    ASSERT_NE(told, intake.guesses.end());
    EXPECT_THAT(told->why, HasSubstr("mg/dL in column 2, mmol/L in column 3"));
    EXPECT_THAT(told->why, HasSubstr("that of column 2 is taken"));
}

TEST(TwoUnits, what_only_one_column_tells_is_kept_and_what_they_disagree_on_is_told) {
    const Intake intake = read(pairs({"136,7.6", ",7.0", "126,", "136,9.0"}));
    ASSERT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(intake.readings[1].hundredths(), 700);
    EXPECT_EQ(intake.readings[1].unit(), GlucoseUnit::mmol_per_l);
    EXPECT_EQ(intake.readings[2].unit(), GlucoseUnit::mg_per_dl);
    EXPECT_EQ(code(intake, "second_value"), 3U);
    EXPECT_EQ(note(intake, "second_value").found, "'9.0'");
}

TEST(TwoUnits, the_column_or_the_unit_that_is_asked_for_is_taken_as_its_title_says) {
    for (const char* named : {"3", "glucose (mmol/L)"}) {
        IntakeOptions options;
        options.glucose_column = named;
        const Intake intake = read(both, options);
        ASSERT_EQ(intake.readings.size(), 12U);
        EXPECT_EQ(intake.readings[0].hundredths(), 760);
        EXPECT_EQ(intake.readings[0].unit(), GlucoseUnit::mmol_per_l);
        EXPECT_EQ(intake.columns[1].role, "ignored");
    }
    IntakeOptions second;
    second.glucose_column = "2";
    EXPECT_EQ(read(both, second).readings.at(0).hundredths(), 13600);
    IntakeOptions unit;
    unit.unit = GlucoseUnit::mmol_per_l;
    EXPECT_EQ(read(both, unit).readings.at(0).hundredths(), 760);
    EXPECT_EQ(read(both, unit).readings.at(0).unit(), GlucoseUnit::mmol_per_l);
    EXPECT_EQ(read(both, unit).unit, GlucoseUnit::mmol_per_l);
}

TEST(TwoUnits, a_title_that_its_own_numbers_contradict_is_asked_about) {
    const std::string wrong = pairs({"136,137", "126,128", "70,71"});
    const Intake intake = read(wrong);
    ASSERT_TRUE(asks(intake, "unit"));
    EXPECT_THAT(intake.questions[0].sentence, HasSubstr("column 3 says mmol/L"));
    IntakeOptions answered;
    answered.unit = GlucoseUnit::mg_per_dl;
    EXPECT_EQ(read(wrong, answered).readings.at(0).hundredths(), 13600);
    EXPECT_EQ(code(read(wrong, answered), "second_value"), 0U);
}
