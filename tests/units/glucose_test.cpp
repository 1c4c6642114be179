#include "units/glucose.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

// Source: LOINC molar mass of glucose 180.156 g/mol; arithmetic.
TEST(Glucose, mg_per_dl_become_mmol_per_l_by_the_molar_mass) {
    EXPECT_NEAR((Glucose{18000, GlucoseUnit::mg_per_dl}.in(GlucoseUnit::mmol_per_l)), 9.9911, 1e-4);
    EXPECT_NEAR((Glucose{1000, GlucoseUnit::mmol_per_l}.in(GlucoseUnit::mg_per_dl)), 180.16, 1e-9);
}

TEST(Glucose, a_level_in_its_own_unit_is_untouched) {
    EXPECT_EQ((Glucose{550, GlucoseUnit::mmol_per_l}.in(GlucoseUnit::mmol_per_l)), 5.5);
}

TEST(Glucose, hundredths_round_halves_away_from_zero) {
    EXPECT_EQ(rounded_hundredths(5.505), 551);
    EXPECT_EQ(rounded_hundredths(-5.505), -551);
    EXPECT_EQ(rounded_hundredths(102.60000000000001), 10260);
    EXPECT_EQ(rounded_hundredths(5.504999), 550);
}

TEST(Glucose, display_rounds_the_decimal_number_that_was_meant) {
    EXPECT_EQ(rounded_for_display(125.5, GlucoseUnit::mg_per_dl), 126);
    EXPECT_NEAR(rounded_for_display(13.35, GlucoseUnit::mmol_per_l), 13.4, 1e-12);
}
