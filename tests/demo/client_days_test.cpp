#include "client_days.hpp"
#include "clients/clients.hpp"
#include "glucose_course.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <vector>

using namespace tracewright;
using namespace std::chrono_literals;

namespace {

double correlation(const std::vector<double>& a, const std::vector<double>& b) {
    const auto n = static_cast<double>(a.size());
    double sa = 0, sb = 0, saa = 0, sbb = 0, sab = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        sa += a[i];
        sb += b[i];
        saa += a[i] * a[i];
        sbb += b[i] * b[i];
        sab += a[i] * b[i];
    }
    return (sab - sa * sb / n) / std::sqrt((saa - sa * sa / n) * (sbb - sb * sb / n));
}

}  // namespace

TEST(ClientDays, cover_the_sixteen_weeks_and_a_day_at_each_end) {
    const auto days = client_days(client_linden(), 1);
    ASSERT_EQ(days.size(), static_cast<std::size_t>(story_days + 1));
    EXPECT_EQ(days.front().date, first_story_day - std::chrono::days{1});
    EXPECT_EQ(days.back().date, std::chrono::floor<std::chrono::days>(story_today));
    EXPECT_EQ(std::chrono::weekday{first_story_day}, std::chrono::Monday);
}

TEST(ClientDays, have_meals_in_order_and_nights_of_a_plausible_length) {
    for (const ClientStory& story : client_stories()) {
        for (const StoryDay& day : client_days(story, 1)) {
            ASSERT_GE(day.meals.size(), 3U) << story.key;
            for (std::size_t i = 1; i < day.meals.size(); ++i) {
                EXPECT_LE(day.meals[i - 1].at, day.meals[i].at) << story.key;
            }
            for (const EatenMeal& meal : day.meals) {
                EXPECT_GT(meal.at, day.wake) << story.key;
                EXPECT_GT(meal.carbohydrate_g, 0) << story.key;
                EXPECT_LT(meal.carbohydrate_g, 160) << story.key;
            }
            EXPECT_GE(day.slept_hours, 3.9) << story.key;
            EXPECT_LE(day.slept_hours, 9) << story.key;
            EXPECT_EQ(day.wake - day.bed, std::chrono::minutes{std::lround(day.slept_hours * 60)});
        }
    }
}

TEST(ClientDays, are_the_same_whatever_follows_from_them) {
    ClientStory without = client_linden();
    without.effects = {};
    without.basal_mg_per_dl = 200;
    const auto a = client_days(client_linden(), 5);
    const auto b = client_days(without, 5);
    ASSERT_EQ(a.size(), b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        EXPECT_EQ(a[i].wake, b[i].wake);
        EXPECT_EQ(a[i].slept_hours, b[i].slept_hours);
        ASSERT_EQ(a[i].meals.size(), b[i].meals.size());
        EXPECT_EQ(a[i].meals.back().carbohydrate_g, b[i].meals.back().carbohydrate_g);
        EXPECT_EQ(a[i].walk, b[i].walk);
    }
}

TEST(ClientDays, have_factors_that_wander_as_told) {
    // Lognormal, SD 12 %, AR(1) 0.3: over many seeds, since one story is only 114 days.
    std::vector<double> here, next;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const auto days = client_days(client_yarrow(), seed);
        for (std::size_t i = 20; i + 1 < days.size(); ++i) {
            here.push_back(std::log(days[i].vmx_factor));
            next.push_back(std::log(days[i + 1].vmx_factor));
        }
    }
    double squares = 0;
    for (const double value : here) {
        squares += value * value;
    }
    EXPECT_NEAR(std::sqrt(squares / static_cast<double>(here.size())), 0.12, 0.006);
    EXPECT_NEAR(correlation(here, next), 0.3, 0.05);
}

TEST(ClientDays, of_rowan_have_late_dinner_and_short_sleep_together) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const auto days = client_days(client_rowan(), seed);
        std::vector<double> dinner, lost;
        for (std::size_t i = 0; i + 1 < days.size(); ++i) {
            dinner.push_back(days[i].dinner_hour);
            lost.push_back(-days[i + 1].slept_hours);
        }
        EXPECT_NEAR(correlation(dinner, lost), 0.8, 0.1) << seed;
    }
}

TEST(ClientDays, of_alder_and_yarrow_have_the_two_apart) {
    for (const ClientStory& story : {client_alder(), client_yarrow()}) {
        std::vector<double> dinner, slept;
        for (std::uint64_t seed = 1; seed <= 5; ++seed) {
            const auto days = client_days(story, seed);
            for (std::size_t i = 0; i + 1 < days.size(); ++i) {
                dinner.push_back(days[i].dinner_hour);
                slept.push_back(days[i + 1].slept_hours);
            }
        }
        EXPECT_NEAR(correlation(dinner, slept), 0, 0.12) << story.key;
    }
}

// The rise of production in the early morning (ours): at 05:00 up by 6 %, at 17:00 down by 6 %. The
// dawn phenomenon it stands for: Monnier et al. 2013, Diabetes Care 36:4057, 10.2337/dc12-2127.
TEST(GlucoseCourse, of_someone_who_does_not_eat_is_higher_in_the_morning) {
    ClientStory story = client_yarrow();
    for (auto* plates : {&story.breakfasts, &story.lunches, &story.snacks, &story.dinners}) {
        *plates = {{"water", 0}};
    }
    const auto days = client_days(story, 1);
    const ZoneHistory zones = zones_of(story);
    const Instant noon = zones.resolve(first_story_day + std::chrono::days{3} + 12h).first;
    const auto course = glucose_course(story, days, zones, {noon, noon + 14 * 24h});
    ASSERT_EQ(course.size(), 14U * 1440U);
    double morning = 0;
    double evening = 0;
    for (std::size_t day = 0; day < 14; ++day) {
        evening += course[day * 1440 + 8 * 60] / 14;   // 20:00
        morning += course[day * 1440 + 20 * 60] / 14;  // 08:00
    }
    EXPECT_GT(morning, evening + 4);
    EXPECT_LT(morning, evening + 40);
}
