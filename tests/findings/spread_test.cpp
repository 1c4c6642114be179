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
