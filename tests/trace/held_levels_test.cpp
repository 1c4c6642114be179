// Levels told of one moment that differ: kept beside the wear, in no measure.
#include "trace/held_levels.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

using std::chrono::minutes;

const Instant begin{std::chrono::hours{24} * 20'000};

Wear wear_at(Instant start, int readings) {
    Wear wear;
    wear.start = start;
    wear.interval = minutes{5};
    for (int i = 0; i < readings; ++i) {
        wear.readings.emplace_back(start + i * minutes{5}, Glucose{10'000, GlucoseUnit::mg_per_dl},
                                   minutes{5});
    }
    return wear;
}

HeldLevel held_at(Instant at, int mg_per_dl) {
    return {at, Glucose{mg_per_dl * 100, GlucoseUnit::mg_per_dl}};
}

TEST(HeldLevels, go_to_the_wear_they_lie_in_or_to_the_one_before) {
    Wear first = wear_at(begin, 12);
    Wear second = wear_at(begin + std::chrono::hours{48}, 12);
    const std::vector<Wear*> wears = {&second, &first};  // in any order
    const HeldLevel held[] = {
        held_at(begin + minutes{7}, 45), held_at(begin + std::chrono::hours{20}, 46),
        held_at(begin + std::chrono::hours{48} + minutes{5}, 47), held_at(begin - minutes{5}, 48)};
    give_held(wears, held);
    ASSERT_EQ(first.held.size(), 3U);
    EXPECT_EQ(first.held.front().at, begin - minutes{5});
    EXPECT_EQ(second.held.size(), 1U);
    give_held(std::vector<Wear*>{}, held);  // without a wear nothing is given
}

TEST(HeldLevels, of_one_moment_are_one_dispute_with_what_is_stored_there) {
    std::vector<Wear> wears = {wear_at(begin, 12)};
    const HeldLevel held[] = {held_at(begin + minutes{5}, 45), held_at(begin + minutes{7}, 50),
                              held_at(begin + minutes{7}, 52)};
    give_held(wears, held);
    const auto moments = disputed_moments(wears.front());
    ASSERT_EQ(moments.size(), 2U);
    EXPECT_EQ(moments[0].lowest.hundredths, 4'500);
    EXPECT_EQ(moments[0].highest.hundredths, 10'000);
    EXPECT_EQ(moments[1].highest.hundredths, 5'200);
    EXPECT_TRUE(disputed_moments(wear_at(begin, 3)).empty());
}

}  // namespace
}  // namespace tracewright
