#include "draws.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace tracewright;

TEST(Draws, rest_on_the_engine_of_the_standard) {
    // ISO/IEC 14882:2020 [rand.predef]: the 10000th value of a default-made mt19937_64.
    boost::random::mt19937_64 engine;
    engine.discard(9999);
    EXPECT_EQ(engine(), 9981545732273789042ULL);
}

TEST(Draws, are_the_same_for_a_seed_and_purpose_and_others_for_another) {
    Draws a(1, "meals");
    Draws again(1, "meals");
    Draws other_seed(2, "meals");
    Draws other_purpose(1, "sleep");
    const double first = a.normal();
    EXPECT_EQ(first, again.normal());
    EXPECT_NE(first, other_seed.normal());
    EXPECT_NE(first, other_purpose.normal());
}

TEST(Draws, have_the_mean_and_spread_asked_for) {
    Draws draws(7, "spread");
    const int n = 20'000;
    double sum = 0;
    double squares = 0;
    int heads = 0;
    for (int i = 0; i < n; ++i) {
        const double value = draws.normal(10, 3);
        sum += value;
        squares += (value - 10) * (value - 10);
        heads += draws.chance(0.3) ? 1 : 0;
        const int die = draws.whole(1, 6);
        ASSERT_GE(die, 1);
        ASSERT_LE(die, 6);
        const double part = draws.uniform(-1, 2);
        ASSERT_GE(part, -1);
        ASSERT_LT(part, 2);
    }
    EXPECT_NEAR(sum / n, 10, 4 * 3 / std::sqrt(n));
    EXPECT_NEAR(std::sqrt(squares / n), 3, 0.08);
    EXPECT_NEAR(heads / static_cast<double>(n), 0.3, 0.015);
}
