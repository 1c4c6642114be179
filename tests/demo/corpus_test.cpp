#include "corpus.hpp"
#include "intake/bring_in.hpp"

#include <gtest/gtest.h>

#include <algorithm>

using namespace tracewright;

TEST(Corpus, has_a_row_for_each_interval_of_each_day) {
    for (const auto& [days, interval] : {std::pair{14, 5}, {10, 15}, {2, 1}}) {
        const std::string text =
            corpus_wear({.files = 1, .days = days, .interval_minutes = interval}, 0);
        EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 1 + days * 1440 / interval);
        EXPECT_TRUE(text.starts_with("time,glucose mg/dL\n2025-01-01 00:00,"));
    }
}

TEST(Corpus, is_the_same_for_a_plan_and_number_and_another_for_another) {
    const CorpusPlan plan;
    EXPECT_EQ(corpus_wear(plan, 3), corpus_wear(plan, 3));
    EXPECT_NE(corpus_wear(plan, 3), corpus_wear(plan, 4));
    EXPECT_NE(corpus_wear(plan, 3), corpus_wear({.seed = 2}, 3));
}

TEST(Corpus, comes_in_whole_and_has_the_spread_of_a_wear) {
    const Intake intake = bring_in_bytes(corpus_wear({}, 7), "0007.csv");
    ASSERT_FALSE(intake.error);
    EXPECT_EQ(intake.readings.size(), 4032U);
    EXPECT_EQ(intake.ledger.with(Fate::stored), 4032U);
    double sum = 0;
    for (const Reading& reading : intake.readings) {
        sum += reading.value().value();
    }
    EXPECT_NEAR(sum / 4032, 148, 12);
}
