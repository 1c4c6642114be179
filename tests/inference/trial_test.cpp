// What a randomised trial within one person rests on: the exact test over the set drawn from, its
// interval, power and length, and the difference of two wears.
#include "inference/block_randomisation.hpp"
#include "inference/trial_power.hpp"
#include "inference/two_wears.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

// The plain way: the list of balanced orders made by the library's permutations, each summed anew.
double plain_balanced_p(const std::vector<double>& d, const std::vector<bool>& a_first) {
    std::vector<int> order(d.size());
    std::fill(order.begin() + static_cast<std::ptrdiff_t>(d.size() / 2), order.end(), 1);
    const double observed = std::abs(std::accumulate(d.begin(), d.end(), 0.0));
    int count = 0;
    int all = 0;
    do {
        double sum = 0;
        for (std::size_t i = 0; i < d.size(); ++i) {
            sum += (order[i] == 1) == a_first[i] ? d[i] : -d[i];
        }
        count += std::abs(sum) >= observed - 1e-9 ? 1 : 0;
        ++all;
    } while (std::next_permutation(order.begin(), order.end()));
    return static_cast<double>(count) / all;
}

std::vector<double> moved(std::vector<double> d, double by) {
    for (double& value : d) {
        value -= by;
    }
    return d;
}

std::vector<SeriesStep> in_a_row(std::size_t n) {
    std::vector<SeriesStep> steps(n);
    steps.front().segment_start = true;
    return steps;
}

}  // namespace

// n1-01, n1-02. Sources: Guyatt et al. 1990, 10.1016/0197-2456(90)90003-K; Senn 2002, Cross-over
// Trials in Clinical Research, p. 229. The weeks' own t of 5.31 is what the pair as unit refutes:
// only eight allotments were possible.
TEST(BlockRandomisation, n1_01_weeks_give_small_errors_and_n1_02_pairs_tell_the_truth) {
    const auto w = statistics_row("n1-01").inputs();
    // Numbers as printed: 3, 4 (periods), then four weeks active and four weeks other for each
    // pair.
    std::vector<double> weeks(w.end() - 24, w.end());
    std::vector<double> d;
    for (std::size_t pair = 0; pair < 3; ++pair) {
        const auto mean = [&](std::size_t from) {
            return std::accumulate(weeks.begin() + static_cast<std::ptrdiff_t>(from),
                                   weeks.begin() + static_cast<std::ptrdiff_t>(from + 4), 0.0) /
                   4;
        };
        const double apart = mean(8 * pair) - mean(8 * pair + 4);
        d.push_back(pair == 2 ? -apart : apart);  // pair 3 had the other first
    }
    EXPECT_NEAR(std::accumulate(d.begin(), d.end(), 0.0) / 3,
                statistics_row("n1-01").after("difference")[0], 0.005);
    const auto found = block_randomisation(d, {true, true, false}, Draw::fair_coins);
    EXPECT_EQ(found.test.p, 0.25);
    EXPECT_FALSE(found.interval95);
}

TEST(BlockRandomisation, a_balanced_draw_is_counted_over_its_own_orders) {
    // Eight blocks all in favour: 2 of 70 orders, not 2 of 256. Arithmetic.
    const std::vector<double> d = {3, 1, 4, 1.5, 5, 9, 2, 6};
    const std::vector<bool> order = {true, false, true, false, true, false, true, false};
    const auto found = block_randomisation(d, order, Draw::balanced);
    EXPECT_EQ(found.test.patterns, 70U);
    EXPECT_EQ(found.test.at_least, 2U);
    EXPECT_EQ(smallest_block_p(6, Draw::balanced), 2.0 / 20);
    EXPECT_NEAR(smallest_block_p(8, Draw::balanced), 2.0 / 70, 1e-15);
    EXPECT_EQ(smallest_block_p(8, Draw::fair_coins), 2.0 / 256);
    EXPECT_FALSE(
        block_randomisation({d.data(), 6}, {true, false, true, false, true, false}, Draw::balanced)
            .interval95);
    EXPECT_THROW(block_randomisation(d, std::vector<bool>(7, true), Draw::balanced),
                 std::invalid_argument);
    // A block lost: of seven, those with four A first, 35, none of them a mirror image.
    const auto lost = block_randomisation(
        {d.data(), 7}, {true, false, true, false, true, false, true}, Draw::balanced);
    EXPECT_EQ(lost.test.patterns, 35U);
    EXPECT_EQ(lost.test.at_least, 1U);
}

RC_GTEST_PROP(BlockRandomisation, a_balanced_draw_agrees_with_the_plain_way, ()) {
    const auto half = *rc::gen::inRange<std::size_t>(1, 5);
    const auto seed = *rc::gen::inRange<std::uint64_t>(1, 1000);
    const auto d = *rc::gen::container<std::vector<double>>(
        2 * half, rc::gen::map(rc::gen::inRange(-50, 51), [](int i) { return i / 4.0; }));
    const auto order = drawn_order(static_cast<int>(2 * half), Draw::balanced, seed);
    RC_ASSERT(std::count(order.begin(), order.end(), true) == static_cast<std::ptrdiff_t>(half));
    const auto found = block_randomisation(d, order, Draw::balanced);
    RC_ASSERT(std::abs(found.test.p - plain_balanced_p(d, order)) < 1e-12);
    RC_ASSERT(found.test.at_least >= 1U);
}

// Inside the interval the test of (differences - d) does not refute, outside it does.
RC_GTEST_PROP(BlockRandomisation, the_interval_holds_what_the_test_does_not_refute, ()) {
    const auto balanced = *rc::gen::arbitrary<bool>();
    const Draw draw = balanced ? Draw::balanced : Draw::fair_coins;
    const auto d = *rc::gen::container<std::vector<double>>(
        8, rc::gen::map(rc::gen::inRange(-5000, 5001), [](int i) { return i / 41.0; }));
    const auto order = drawn_order(8, Draw::balanced, 3);
    const auto interval = block_randomisation(d, order, draw).interval95;
    RC_ASSERT(interval.has_value());
    const double wide = (*interval)[1] - (*interval)[0];
    RC_PRE(wide > 1e-6);
    const auto p_at = [&](double centre) {
        return block_randomisation(moved(d, centre), order, draw).test.p;
    };
    RC_ASSERT(p_at((*interval)[0] + wide * 1e-6) > 0.05);
    RC_ASSERT(p_at((*interval)[1] - wide * 1e-6) > 0.05);
    RC_ASSERT(p_at((*interval)[0] - wide * 1e-6) <= 0.05);
    RC_ASSERT(p_at((*interval)[1] + wide * 1e-6) <= 0.05);
}

TEST(BlockRandomisation, the_order_of_blocks_moves_no_p_and_adding_to_all_moves_no_difference) {
    const std::vector<double> d = {11, 11, -2, 9, 16, 7, 5, 11};
    std::vector<double> turned(d.rbegin(), d.rend());
    const std::vector<bool> order(8, true);
    EXPECT_EQ(block_randomisation(d, order, Draw::fair_coins).test.p,
              block_randomisation(turned, order, Draw::fair_coins).test.p);
}

TEST(BlockRandomisation, orders_come_from_their_seed_and_coins_are_fair) {
    EXPECT_EQ(drawn_order(12, Draw::fair_coins, 9), drawn_order(12, Draw::fair_coins, 9));
    std::set<std::vector<bool>> orders;
    int first = 0;
    for (std::uint64_t seed = 0; seed < 400; ++seed) {
        const auto order = drawn_order(8, Draw::fair_coins, seed);
        orders.insert(order);
        first += order[0] ? 1 : 0;
    }
    EXPECT_GT(orders.size(), 150U);  // of 256
    EXPECT_NEAR(first, 200, 40);
    EXPECT_THROW(drawn_order(7, Draw::balanced, 1), std::invalid_argument);
}

// pow-01, pow-02. Sources in the table: R's manual page of power.t.test; noncentral t.
TEST(TrialPower, pow_01_and_pow_02_by_the_noncentral_t) {
    EXPECT_NEAR(two_sample_t_power(20, 1, 1), statistics_row("pow-01").numbers()[0], 1e-7);
    const int pairs[] = {6, 8, 10, 14, 20};
    const auto expected = statistics_row("pow-02").numbers();
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_NEAR(paired_t_power(pairs[i], 1, 1), expected[i], 1e-7) << pairs[i];
    }
}

// rand-03. Source: Student 1908, 10.1093/biomet/6.1.1. What the closed form's t rests on.
TEST(TrialPower, rand_03_students_pairs_are_seen_by_the_exact_test_as_by_his) {
    const auto in = statistics_row("rand-03").inputs();
    std::vector<double> d;
    for (std::size_t i = 0; i < 10; ++i) {
        d.push_back(in[in.size() - 20 + i] - in[in.size() - 10 + i]);
    }
    const auto found = block_randomisation(d, std::vector<bool>(10, true), Draw::fair_coins);
    EXPECT_NEAR(found.test.mean, statistics_row("rand-03").after("mean")[0], 1e-7);
    EXPECT_LE(found.test.p, 4.0 / 1024);  // all ten but a nought to one side
}

TEST(TrialPower, of_the_exact_test_stays_near_the_closed_form) {
    // Normal noise of block differences, SD 1.41 of an effect of 1: statistics 4.3 names .19 .39
    // .52 .62 for 6, 8, 10, 12 blocks (own simulation, +- 0.02).
    std::vector<double> noise;
    for (int i = 1; i < 400; ++i) {
        noise.push_back(boost::math::quantile(boost::math::normal(0, std::sqrt(2.0)), i / 400.0));
    }
    const double named[] = {0.19, 0.39, 0.52, 0.62};
    for (int i = 0; i < 4; ++i) {
        EXPECT_NEAR(sign_flip_power(noise, 1, 6 + 2 * i, 7, 0.05, 2000), named[i], 0.04);
    }
    EXPECT_EQ(sign_flip_power(noise, 1, 5, 7), 0);  // five can't go below 0.0625
    EXPECT_EQ(sign_flip_power({}, 1, 8, 7), 0);
}

TEST(TrialPower, length_grows_with_noise_and_says_what_was_simulated) {
    const std::vector<double> noise = {1, -2, 0.5, 1.5, -1, 2.5, -0.5, 1};
    const TrialLength large = trial_length(noise, 4, 1);
    ASSERT_TRUE(large.blocks);
    EXPECT_LE(*large.blocks, 8);
    const TrialLength small = trial_length(noise, 0.7, 1);
    ASSERT_TRUE(small.blocks);
    EXPECT_GT(*small.blocks, most_blocks_simulated);
    EXPECT_FALSE(small.rows.back().simulated);
    EXPECT_TRUE(small.rows.front().simulated);
    EXPECT_EQ(small.rows.front().smallest_p, 0.03125);
    EXPECT_FALSE(trial_length(noise, 0.001, 1).blocks);
    EXPECT_TRUE(trial_length({}, 1, 1).rows.empty());
    EXPECT_EQ(trial_length(noise, 1, 5).rows.front().power,
              trial_length(noise, 1, 5).rows.front().power);
}

// wear-01. Source in the table: the method by an independent script; data invented.
TEST(TwoWears, wear_01_by_the_days_alone_and_wider_with_the_sensors) {
    const auto in = statistics_row("wear-01").inputs();
    ASSERT_EQ(in.size(), 28U);
    const std::vector<double> before(in.begin(), in.begin() + 14);
    const std::vector<double> after(in.begin() + 14, in.end());
    const auto steps = in_a_row(14);
    const auto row = statistics_row("wear-01");
    const TwoWears alone = two_wears({before, steps}, {after, steps}, 0);
    EXPECT_NEAR(alone.raw, row.after("raw difference")[0], 1e-8);
    EXPECT_NEAR(alone.difference.mean(), row.after("posterior mean")[0], 6e-6);
    EXPECT_NEAR(alone.difference.probability_above(0), row.after("P(>0)")[0], 1e-6);
    EXPECT_NEAR(alone.correlation, row.after("E rho")[0], 1e-6);
    const TwoWears with = two_wears({before, steps}, {after, steps}, 5);
    EXPECT_NEAR(with.difference.mean(), alone.difference.mean(), 1e-12);
    const auto narrow = alone.difference.interval();
    const auto wide = with.difference.interval();
    EXPECT_GT(wide[1] - wide[0], std::hypot(narrow[1] - narrow[0], 2 * 1.96 * 5) - 1e-9);
    EXPECT_NEAR(with.days.interval()[0], narrow[0], 1e-9);
}

TEST(TwoWears, identical_days_give_nought_exactly_and_days_that_never_vary_have_an_interval) {
    const std::vector<double> days = {61, 58, 70, 66, 55, 63, 72};
    const auto steps = in_a_row(7);
    const TwoWears same = two_wears({days, steps}, {days, steps}, 3);
    EXPECT_EQ(same.raw, 0);
    EXPECT_NEAR(same.difference.mean(), 0, 1e-12);
    EXPECT_NEAR(same.difference.cdf(0), 0.5, 1e-12);
    const std::vector<double> flat(7, 100);
    const TwoWears still = two_wears({flat, steps}, {flat, steps}, 2);
    EXPECT_EQ(still.raw, 0);
    EXPECT_LT(still.difference.interval()[0], -3.9);
    EXPECT_THROW(two_wears({{days.data(), 1}, {steps.data(), 1}}, {days, steps}, 1),
                 std::invalid_argument);
}

RC_GTEST_PROP(TwoWears, another_unit_scales_and_a_constant_moves_nothing, ()) {
    const auto draw = [] {
        return *rc::gen::container<std::vector<double>>(
            9, rc::gen::map(rc::gen::inRange(0, 101), [](int i) { return i * 1.0; }));
    };
    auto a = draw();
    auto b = draw();
    a[0] += 0.5;
    const auto steps = in_a_row(9);
    const TwoWears once = two_wears({a, steps}, {b, steps}, 2);
    std::transform(a.begin(), a.end(), a.begin(), [](double v) { return 10 * v + 700; });
    std::transform(b.begin(), b.end(), b.begin(), [](double v) { return 10 * v + 700; });
    const TwoWears again = two_wears({a, steps}, {b, steps}, 20);
    RC_ASSERT(std::abs(10 * once.difference.mean() - again.difference.mean()) < 1e-7);
    RC_ASSERT(std::abs(once.difference.cdf(0) - again.difference.cdf(0)) < 1e-9);
}
