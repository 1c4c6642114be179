#include "number_words.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

TEST(NumberWords, keep_what_matters_and_nothing_behind) {
    EXPECT_EQ(number_words(7.5, 2), "7.5");
    EXPECT_EQ(number_words(7, 2), "7");
    EXPECT_EQ(number_words(7.25, 2), "7.25");
    EXPECT_EQ(number_words(7.05, 2), "7.05");
    EXPECT_EQ(number_words(0.999, 2), "1");
    EXPECT_EQ(number_words(-0.5, 1), "-0.5");
    EXPECT_EQ(number_words(-0.01, 1), "0");
    EXPECT_EQ(number_words(12.6, 0), "13");
}

// 18.016 mg/dL for each mmol/L: LOINC's molar mass, rounded as in use.
TEST(NumberWords, tell_glucose_as_sensors_print_it) {
    EXPECT_EQ(pricked_words(97.4, GlucoseUnit::mg_per_dl), "97");
    EXPECT_EQ(pricked_words(180, GlucoseUnit::mmol_per_l), "10.0");
    EXPECT_EQ(pricked_words(70, GlucoseUnit::mmol_per_l), "3.9");
    EXPECT_EQ(pricked_words(54, GlucoseUnit::mmol_per_l), "3.0");
}

TEST(NumberWords, pad_and_turn_the_point) {
    EXPECT_EQ(padded(7, 2), "07");
    EXPECT_EQ(padded(123, 2), "123");
    EXPECT_EQ(padded(-7, 2), "-07");
    EXPECT_EQ(with_comma("5.6"), "5,6");
    EXPECT_EQ(with_comma("LOW"), "LOW");
}
