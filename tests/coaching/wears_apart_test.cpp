// Which two wears are before and after. Everybody in here is invented.
#include "coaching/wears_apart.hpp"

#include "coaching/care_for_tests.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

TEST(WearsApart, a_sensor_put_on_before_the_last_comes_off_is_still_after) {
    Care care;
    care.wears.clear();
    care.wear(-28, 14);
    Wear next = care.wear(-14, 14);
    EXPECT_TRUE(is_before(care.wears[0], next));
    EXPECT_FALSE(is_before(next, care.wears[0]));
    for (Reading& reading : next.readings) {
        reading.at -= std::chrono::hours{3};
    }
    EXPECT_TRUE(is_before(care.wears[0], next));
    for (Reading& reading : next.readings) {
        reading.at -= std::chrono::hours{20};
    }
    EXPECT_FALSE(is_before(care.wears[0], next));
    EXPECT_FALSE(is_before(care.wears[0], Wear{}));
}

TEST(WearsApart, the_last_two_are_never_two_sensors_worn_at_once) {
    Care care;
    care.wears.clear();
    care.wear(-90, 14);
    care.wear(-30, 15);
    care.wear(-28, 11);  // beside the second, begun last
    auto two = last_two_apart(care.wears);
    ASSERT_TRUE(two);
    EXPECT_EQ(two->before, 0U);
    EXPECT_EQ(two->after, 1U);
    care.wears[2].chosen = true;
    two = last_two_apart(care.wears);
    ASSERT_TRUE(two);
    EXPECT_EQ(two->after, 2U);
    care.wears.erase(care.wears.begin());
    EXPECT_FALSE(last_two_apart(care.wears));
}
