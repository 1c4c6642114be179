#include "findings/review_findings.hpp"

#include "findings/review_input_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

TEST(Spread, above_thirty_six_asks_whether_the_type_has_been_checked) {
    auto readings = waves(14);
    for (std::size_t i = 0; i < readings.size(); i += 2) {
        readings[i] = Reading{readings[i].at, mg(i % 96 < 48 ? 300 : 90), 5min};
    }
    const FirstReview review = first_review(input_of(readings));
    EXPECT_GT(finding_of(review, "spread")->estimate->value, 36);
    EXPECT_THAT(finding_of(review, "spread")->next.sentence,
                ::testing::HasSubstr("Ask the clinic whether the type has been checked"));
    const FirstReview calm = first_review(input_of(waves(14)));
    EXPECT_TRUE(finding_of(calm, "spread")->next.sentence.empty());
}

// All LOW or all HIGH look alike only because the sensor's limit is all that is known of them.
TEST(Spread, what_lies_beyond_the_limit_is_not_called_steady) {
    for (const Limit limit : {Limit::below, Limit::above}) {
        std::vector<Reading> readings = waves(14);
        for (Reading& reading : readings) {
            reading = Reading{reading.at, mg(limit == Limit::below ? 40 : 400), 5min, limit};
        }
        const Finding spread = *finding_of(first_review(input_of(readings)), "spread");
        EXPECT_EQ(spread.sentence,
                  "How much glucose varies can't be given: most of the time seen was LOW or HIGH, "
                  "beyond the sensor's limit.");
        EXPECT_EQ(spread.answer, Answer::cannot_tell);
        EXPECT_FALSE(spread.estimate.has_value());
    }
}
