#include "responses/overlap_model.hpp"

#include "inference/non_negative.hpp"
#include "inference/statistics_row.hpp"
#include "responses/days_for_tests.hpp"
#include "responses/meal_kernel.hpp"
#include "responses/overlap_days.hpp"

#include <gtest/gtest.h>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>

#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;

namespace {
const ZoneHistory zones{Zone::floating()};
}

// ker-01. Source: the method's own closed form, by quadrature (computed).
TEST(MealKernel, ker_01_height_and_areas) {
    const auto row = statistics_row("ker-01");
    EXPECT_EQ(meal_kernel(45, 45), 1);
    EXPECT_EQ(meal_kernel(0, 45), 0);
    EXPECT_EQ(meal_kernel(-5, 45), 0);
    EXPECT_NEAR(meal_kernel_area(1e6, 45), row.after("45e=")[0], 1e-7);
    EXPECT_NEAR(meal_kernel_area(120, 45), row.after("120 min")[0], 1e-8);
    EXPECT_NEAR(meal_kernel_area(180, 45), row.after("180 min")[0], 1e-8);
}

// ker-02. Computed by a general package: noise-free recovery is exact, the naive rise is not.
TEST(OverlapModel, ker_02_two_meals_an_hour_apart_come_apart) {
    const auto row = statistics_row("ker-02");
    std::vector<double> a;
    std::vector<double> y;
    for (int t = 0; t <= 360; t += 5) {
        const double first = meal_kernel(t, 45);
        const double second = meal_kernel(t - 60, 45);
        a.insert(a.end(), {first, second});
        y.push_back(60 * first + 30 * second);
    }
    const auto expected = row.after("trace at 0,45,60,105,180:");
    const int at[] = {0, 45, 60, 105, 180};
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_NEAR(y[static_cast<std::size_t>(at[i] / 5)], expected[i], 1e-8);
    }
    const auto found = non_negative_least_squares(a, 2, y);
    EXPECT_NEAR(found[0], 60, 1e-8);
    EXPECT_NEAR(found[1], 30, 1e-8);
    const double naive = *std::max_element(y.begin() + 13, y.end()) - y[12];
    EXPECT_LT(naive, 16);  // the row's 15.26 is the smooth curve's, not the grid's
}

// ker-03. Computed by a general package: what one amplitude can be known to, serial correlation
// counted in. The whitening of day_normals, its intercept alone kept of the baseline.
TEST(OverlapModel, ker_03_standard_error_of_amplitudes) {
    const auto row = statistics_row("ker-03");
    const double separations[] = {15, 30, 60, 120};
    struct Setting {
        double correlation;
        std::vector<double> errors;
    };
    const Setting settings[] = {{0.95, row.after("phi 0.95: se")},
                                {0.98, row.after("phi 0.98: se")}};
    for (const Setting& setting : settings) {
        for (std::size_t s = 0; s < 4; ++s) {
            OverlapDay day;
            day.eaten = {0, separations[s]};
            day.occasions = {0, 1};
            for (double t = 0; t <= separations[s] + 240; t += 5) {
                day.minutes.push_back(t);
                day.clock.push_back(0);
                day.level.push_back(0);
            }
            const DayNormals n = day_normals(day, 1, 45, setting.correlation);
            Eigen::Matrix3d gram;
            gram(0, 0) = n.bb(0, 0);
            gram.block<2, 1>(1, 0) = n.ab.col(0);
            gram.block<1, 2>(0, 1) = n.ab.col(0).transpose();
            gram.block<2, 2>(1, 1) = n.aa;
            const Eigen::Matrix3d v = 225 * gram.inverse();
            EXPECT_NEAR(std::sqrt(v(1, 1)), setting.errors[s], 0.051) << separations[s];
        }
    }
}

namespace {

struct MadeUp {
    Diary diary;
    CountedTrace trace;
    std::vector<double> truth;
};

// Fourteen days of four meals, porridge 30, rice 70, soup 20, stew 50, each time give or take 10;
// kernel 55 minutes; AR(1) noise of 12, 0.96 from one five minutes to the next.
MadeUp made_up(std::uint64_t seed, double noise = 12, double late_minutes = 0) {
    boost::random::mt19937_64 engine(seed);
    boost::random::normal_distribution<double> normal;
    MadeUp made;
    const char* foods[] = {"porridge", "rice", "soup", "stew"};
    const double sizes[] = {30, 70, 20, 50};
    const Instant at[] = {moment(0, 7, 30), moment(0, 12, 30), moment(0, 14), moment(0, 18, 30)};
    for (int day = 0; day < 14; ++day) {
        for (std::size_t m = 0; m < 4; ++m) {
            made.diary.push_back(meal(at[m] + std::chrono::days{day}, foods[m], sizes[m]));
            made.truth.push_back(sizes[m] + 10 * normal(engine));
        }
    }
    double u = noise * normal(engine);
    made.trace = drawn_trace(moment(0, 0), moment(14, 0), 5min, [&](Instant now) {
        u = 0.96 * u + noise * std::sqrt(1 - 0.96 * 0.96) * normal(engine);
        double level =
            120 + 8 * std::cos(2 * 3.14159265 * (minutes_since(day_zero(), now) / 1440 - 0.25));
        for (std::size_t i = 0; i < made.diary.size(); ++i) {
            const double since = minutes_since(made.diary[i].at, now) - late_minutes;
            level += since < 600 ? made.truth[i] * meal_kernel(since, 55) : 0;
        }
        return level + u;
    });
    return made;
}

}  // namespace

TEST(OverlapModel, finds_kernel_correlation_and_amplitudes_of_its_own_kind) {
    double squares = 0;
    int within = 0;
    int count = 0;
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
        const MadeUp made = made_up(seed);
        const auto occasions = eating_occasions(made.diary, zones);
        const OverlapModel model = overlap_model(occasions, made.trace, zones);
        ASSERT_EQ(model.none_because, "");
        EXPECT_NEAR(model.peak_minutes, 55, 10);
        EXPECT_NEAR(model.correlation_5min, 0.96, 0.025);
        EXPECT_NEAR(model.noise_deviation, 12, 3);
        for (std::size_t m = 0; m < occasions.size(); ++m) {
            ASSERT_TRUE(model.meals[m].readable);
            const double off = model.meals[m].amplitude - made.truth[m];
            squares += off * off;
            within += std::abs(off) < 1.96 * model.meals[m].standard_error ? 1 : 0;
            ++count;
        }
    }
    EXPECT_LT(std::sqrt(squares / count), 10);
    EXPECT_GT(within, 0.88 * count);
}

TEST(OverlapModel, without_noise_the_amplitudes_are_those_put_in) {
    const MadeUp made = made_up(4, 0.3);
    OverlapSettings settings;
    settings.peaks = {55};
    settings.correlations = {0.96};
    const auto occasions = eating_occasions(made.diary, zones);
    const OverlapModel model = overlap_model(occasions, made.trace, zones, settings);
    for (std::size_t m = 0; m < occasions.size(); ++m) {
        EXPECT_NEAR(model.meals[m].amplitude, made.truth[m], 2);
    }
}

TEST(OverlapModel, sees_that_the_rise_comes_later_than_was_written) {
    const MadeUp made = made_up(5, 4, 10);
    OverlapSettings settings;
    settings.peaks = {55};
    const auto occasions = eating_occasions(made.diary, zones);
    const OverlapModel model = overlap_model(occasions, made.trace, zones, settings);
    double shift = 0;
    for (const MealAmplitude& meal : model.meals) {
        shift += meal.shift_minutes / static_cast<double>(model.meals.size());
        EXPECT_GE(meal.shift_deviation, 0);
    }
    EXPECT_GT(shift, 4);
    EXPECT_LT(shift, 12);
}

TEST(OverlapModel, meals_within_ninety_minutes_are_said_to_share) {
    MadeUp made = made_up(6);
    made.diary[3].at = moment(0, 15, 20);
    const auto occasions = eating_occasions(made.diary, zones);
    const OverlapModel model = overlap_model(occasions, made.trace, zones);
    EXPECT_TRUE(model.meals[2].shares_uncertain);
    EXPECT_TRUE(model.meals[3].shares_uncertain);
    EXPECT_FALSE(model.meals[0].shares_uncertain);
    EXPECT_EQ(model.meals[2].correlation_after, model.meals[3].correlation_before);
    EXPECT_EQ(model.meals[0].correlation_before, 0);
}

TEST(OverlapModel, needs_three_days_with_a_meal) {
    const MadeUp made = made_up(7);
    const Diary two(made.diary.begin(), made.diary.begin() + 8);
    const OverlapModel model = overlap_model(eating_occasions(two, zones), made.trace, zones);
    EXPECT_NE(model.none_because, "");
    EXPECT_EQ(model.meals.size(), 8U);
}
