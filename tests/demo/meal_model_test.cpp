// Parameters and equations: Dalla Man, Rizza & Cobelli 2007, IEEE Trans Biomed Eng 54(10):1740,
// 10.1109/TBME.2007.893506, table I. The paper prints no trace; the numbers below are rows sim-01
// to sim-03 of tests/data/statistics-checks.csv: the resting state by SciPy's root finder, the
// traces by LSODA at a relative tolerance of 1e-9.
#include "meal_model.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace tracewright;

namespace {

struct Point {
    double minute;
    double glucose;
};

struct Peak {
    double height = 0;
    int minute = 0;
};

}  // namespace

TEST(MealModel, rests_where_the_published_parameters_put_it) {  // sim-01
    const BasalState rest = basal_state(type_two_parameters());
    EXPECT_NEAR(rest.insulin, 59.8486, 1e-3);
    EXPECT_NEAR(rest.glucose, 159.2314, 1e-3);
    EXPECT_NEAR(rest.production, 1.9917, 1e-3);
    EXPECT_NEAR(rest.gp, 237.2547, 1e-3);
    EXPECT_NEAR(rest.gt, 126.3803, 1e-3);
    EXPECT_NEAR(rest.ipo, 8.0532, 1e-3);
}

TEST(MealModel, answers_75_g_as_another_solver_finds_for_type_2) {  // sim-02
    const Point points[] = {{0, 159.23},   {30, 191.52},  {60, 238.56},  {90, 264.59},
                            {120, 273.85}, {180, 253.84}, {240, 210.04}, {300, 184.44},
                            {360, 159.20}, {480, 132.74}};
    MealModel body(type_two_parameters(), 91);
    body.eat(75);
    Peak glucose;
    Peak insulin;
    std::size_t next = 0;
    for (int minute = 0; minute <= 480; ++minute) {
        if (next < std::size(points) && points[next].minute == minute) {
            EXPECT_NEAR(body.glucose(), points[next].glucose, 0.1) << minute;
            ++next;
        }
        if (body.glucose() > glucose.height) {
            glucose = {body.glucose(), minute};
        }
        if (body.insulin() > insulin.height) {
            insulin = {body.insulin(), minute};
        }
        body.pass(1);
    }
    EXPECT_EQ(next, std::size(points));
    EXPECT_NEAR(glucose.height, 274.00, 0.1);
    EXPECT_EQ(glucose.minute, 125);
    EXPECT_NEAR(insulin.height, 259.7, 0.1);
    EXPECT_EQ(insulin.minute, 195);
}

TEST(MealModel, answers_75_g_as_another_solver_finds_without_diabetes) {  // sim-03
    const Point points[] = {{0, 91.80},   {30, 136.48}, {60, 154.72}, {90, 149.75}, {120, 132.23},
                            {180, 98.54}, {240, 89.33}, {300, 89.75}, {360, 90.22}, {480, 89.66}};
    const BasalState rest = basal_state(parameters_without_diabetes());
    EXPECT_NEAR(rest.glucose, 91.80, 0.01);
    EXPECT_NEAR(rest.insulin, 25.59, 0.01);
    // The paper's own resting values, from memory.
    EXPECT_NEAR(rest.glucose, 91.76, 0.1);
    EXPECT_NEAR(rest.insulin, 25.49, 0.15);

    MealModel body(parameters_without_diabetes(), 78);
    body.eat(75);
    Peak glucose;
    std::size_t next = 0;
    for (int minute = 0; minute <= 480; ++minute) {
        if (next < std::size(points) && points[next].minute == minute) {
            EXPECT_NEAR(body.glucose(), points[next].glucose, 0.1) << minute;
            ++next;
        }
        if (body.glucose() > glucose.height) {
            glucose = {body.glucose(), minute};
        }
        body.pass(1);
    }
    EXPECT_EQ(next, std::size(points));
    EXPECT_NEAR(glucose.height, 155.11, 0.1);
    EXPECT_EQ(glucose.minute, 66);
}

TEST(MealModel, stays_at_rest_when_nothing_is_eaten) {
    for (const auto& parameters : {type_two_parameters(), parameters_without_diabetes(),
                                   with_basal_glucose(type_two_parameters(), 118)}) {
        MealModel body(parameters, 80);
        body.pass(1440);
        EXPECT_NEAR(body.glucose(), body.basal().glucose, 1e-4);
        EXPECT_NEAR(body.insulin(), body.basal().insulin, 1e-4);
    }
}

TEST(MealModel, may_be_given_another_resting_level) {
    for (const double level : {90.0, 118.0, 159.2314, 210.0}) {
        const auto parameters = with_basal_glucose(type_two_parameters(), level);
        EXPECT_NEAR(basal_state(parameters).glucose, level, 1e-6);
    }
    EXPECT_NEAR(with_basal_glucose(type_two_parameters(), 159.2314).kp1, 3.09, 1e-4);
    EXPECT_THROW(with_basal_glucose(type_two_parameters(), 100'000), std::invalid_argument);
}

TEST(MealModel, a_meal_cut_in_two_at_one_moment_is_the_same_meal) {
    MealModel whole(type_two_parameters(), 91);
    MealModel halves(type_two_parameters(), 91);
    whole.eat(60);
    halves.eat(25);
    halves.eat(35);
    whole.pass(200);
    halves.pass(200);
    EXPECT_NEAR(whole.glucose(), halves.glucose(), 1e-9);
}

TEST(MealModel, a_second_meal_adds_to_what_is_still_in_the_stomach) {
    MealModel body(type_two_parameters(), 91);
    body.eat(60);
    EXPECT_NEAR(body.in_stomach_g(), 60, 1e-12);
    body.pass(60);
    const double left = body.in_stomach_g();
    EXPECT_GT(left, 5);
    EXPECT_LT(left, 60);
    body.eat(40);
    EXPECT_NEAR(body.in_stomach_g(), left + 40, 1e-9);
    body.pass(1440);
    EXPECT_LT(body.in_stomach_g(), 1e-3);
}

TEST(MealModel, what_raises_production_raises_and_what_raises_uptake_lowers) {
    const auto two_hours_after = [](const MealModelFactors& factors) {
        MealModel body(type_two_parameters(), 91);
        body.eat(60);
        body.pass(120, factors);
        return body.glucose();
    };
    const double plain = two_hours_after({});
    EXPECT_GT(two_hours_after({.kp1 = 1.05}), plain + 1);
    EXPECT_LT(two_hours_after({.kp3 = 1.3}), plain - 1);
    EXPECT_LT(two_hours_after({.vmx = 1.3}), plain - 1);
}

TEST(MealModel, a_very_large_meal_leaves_it_in_one_piece) {
    MealModel body(type_two_parameters(), 60);
    body.eat(300);
    double highest = 0;
    for (int minute = 0; minute < 1440; ++minute) {
        body.pass(1);
        ASSERT_TRUE(std::isfinite(body.glucose())) << minute;
        ASSERT_GT(body.glucose(), 0) << minute;
        highest = std::max(highest, body.glucose());
    }
    EXPECT_GT(highest, 350);
}
