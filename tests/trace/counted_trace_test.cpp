#include "trace/counted_trace.hpp"

#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

Wear wear_from(Instant start, std::chrono::seconds interval, int readings, double value) {
    return wears_of(every(interval, std::vector<double>(static_cast<std::size_t>(readings), value),
                          start),
                    "test")
        .front();
}

}  // namespace

TEST(CountedTrace, wears_that_do_not_meet_are_joined_and_no_choice_is_told) {
    const std::vector<Wear> wears{wear_from(midnight, 5min, 12, 100),
                                  wear_from(midnight + 2h, 15min, 4, 200)};
    const CountedTrace trace = counted_trace(wears);
    EXPECT_EQ(trace.readings.size(), 16U);
    EXPECT_TRUE(trace.choices.empty());
    EXPECT_EQ(sensed(trace.view()), 2h);
    EXPECT_EQ(trace.window, (Interval{midnight, midnight + 3h}));
}

TEST(CountedTrace, of_two_at_once_the_one_that_reports_more_often_is_counted_and_said) {
    const std::vector<Wear> wears{wear_from(midnight, 15min, 96, 200),
                                  wear_from(midnight, 5min, 288, 100)};
    const CountedTrace trace = counted_trace(wears);
    EXPECT_EQ(sensed(trace.view()), 24h);
    EXPECT_EQ(trace.readings.size(), 288U);
    ASSERT_EQ(trace.choices.size(), 1U);
    EXPECT_EQ(trace.choices[0].counted, 1U);
    EXPECT_EQ(trace.choices[0].not_counted, std::vector<std::size_t>{0});
    EXPECT_EQ(trace.choices[0].why, "it reports more often");
}

TEST(CountedTrace, the_one_asked_for_is_counted_wherever_it_has_readings) {
    const std::vector<Wear> wears{wear_from(midnight, 15min, 96, 200),
                                  wear_from(midnight, 5min, 288, 100)};
    const CountedTrace trace = counted_trace(wears, 0);
    EXPECT_EQ(trace.readings.size(), 96U);
    EXPECT_EQ(trace.choices[0].why, "it was asked for");
}

TEST(CountedTrace, the_one_a_coach_chose_is_counted_unless_another_is_asked_for) {
    std::vector<Wear> wears{wear_from(midnight, 15min, 96, 200),
                            wear_from(midnight, 5min, 288, 100)};
    wears[0].chosen = true;
    EXPECT_EQ(counted_trace(wears).readings.size(), 96U);
    EXPECT_EQ(counted_trace(wears).choices[0].why, "a coach chose it");
    EXPECT_EQ(counted_trace(wears, 1).readings.size(), 288U);
    EXPECT_EQ(counted_trace(wears, 1).choices[0].why, "it was asked for");
}

TEST(CountedTrace, no_wears_no_trace) {
    EXPECT_TRUE(counted_trace({}).readings.empty());
    EXPECT_TRUE(counted_trace({}).view().readings.empty());
}

RC_GTEST_PROP(CountedTrace, the_total_never_exceeds_the_clock_and_order_holds, ()) {
    std::vector<Wear> wears;
    for (int i = *rc::gen::inRange(1, 5); i > 0; --i) {
        wears.push_back(wear_from(midnight + std::chrono::minutes{*rc::gen::inRange(0, 600)},
                                  std::chrono::minutes{*rc::gen::inRange(1, 16)},
                                  *rc::gen::inRange(1, 60), 100));
    }
    const CountedTrace trace = counted_trace(wears);
    RC_ASSERT(sensed(trace.view()) <= trace.window.length());
    RC_ASSERT(trace.readings.size() == trace.wear_of.size());
    for (std::size_t i = 1; i < trace.readings.size(); ++i) {
        RC_ASSERT(trace.readings[i - 1].at < trace.readings[i].at);
    }
}
