#include "findings/review_findings.hpp"

#include "findings/review_input_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

TEST(WhenHigh, a_part_of_the_day_that_is_high_day_after_day_is_named) {
    auto readings = waves(14);
    for (Reading& reading : readings) {
        const auto clock = (reading.at - midnight) % 24h;
        if (clock >= 18h && clock < 21h) {
            reading = Reading{reading.at, mg(220), 5min};
        }
    }
    const Finding finding = *finding_of(first_review(input_of(readings)), "when_high");
    EXPECT_EQ(finding.answer, Answer::yes);
    EXPECT_THAT(finding.sentence, ::testing::HasSubstr("mostly in the evening (17:00 to 24:00)"));
}

TEST(WhenHigh, highs_strewn_over_the_day_name_no_part) {
    std::mt19937 random{7};
    std::uniform_int_distribution<int> start{0, 276};
    auto readings = waves(14);
    for (int day = 0; day < 14; ++day) {
        dip(readings, midnight + std::chrono::days{day} + 5min * start(random), 1h, 220);
    }
    EXPECT_NE(finding_of(first_review(input_of(readings)), "when_high")->answer, Answer::yes);
}

// Size: pure noise names a part in at most 5 % of cases, and sampling error.
TEST(WhenHigh, noise_names_a_part_seldom) {
    int named = 0;
    constexpr int rounds = 100;
    for (unsigned seed = 0; seed < rounds; ++seed) {
        std::mt19937 random{seed};
        std::uniform_int_distribution<int> start{0, 92};
        std::vector<Reading> readings;
        for (int i = 0; i < 14 * 96; ++i) {
            readings.emplace_back(midnight + 15min * i, mg(130), 15min);
        }
        for (int day = 0; day < 14; ++day) {
            for (int k = 0; k < 3; ++k) {
                dip(readings, midnight + std::chrono::days{day} + 15min * start(random), 1h, 220);
            }
        }
        named += finding_of(first_review(input_of(readings)), "when_high")->answer == Answer::yes
                     ? 1
                     : 0;
    }
    EXPECT_LE(named, 11) << "of " << rounds;
}

TEST(WhenHigh, too_few_days_are_said) {
    auto readings = waves(3);
    dip(readings, midnight + 18h, 3h, 220);
    EXPECT_THAT(finding_of(first_review(input_of(readings)), "when_high")->sentence,
                ::testing::HasSubstr("fewer than 5 whole days"));
}
