// Rows of a day or a night that tell several things, each at a time of its own. Everybody in here
// is invented; what is taken for a time that is not written is ours, no source. Nothing that stands
// in a row is lost in silence (interchange 4.4).
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"
#include "intake/meal_title.hpp"
#include "intake/sleep_title.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

std::vector<DiaryEntry> of_kind(const Intake& intake, DiaryKind kind) {
    std::vector<DiaryEntry> found;
    std::ranges::copy_if(intake.diary, std::back_inserter(found),
                         [kind](const DiaryEntry& entry) { return entry.kind == kind; });
    return found;
}

double grams(const DiaryEntry& entry) {
    return entry.carbohydrate_g ? entry.carbohydrate_g->value : -1;
}

}  // namespace

TEST(SeveralMeals, of_a_row_are_each_kept_at_their_own_time) {
    for (const char* titles : {"Date,Breakfast time,Breakfast carbs,Dinner time,Dinner carbs",
                               "date,breakfast_time,breakfast_carbs,dinner_time,dinner_carbs",
                               "Datum,Fr\xC3\xBChst\xC3\xBC"
                               "ckszeit,KH Fr\xC3\xBChst\xC3\xBC"
                               "ck,Abendessen Uhrzeit,KH Abendessen"}) {
        const Intake intake = read(std::string(titles) +
                                   "\n2026-03-02,07:10,40,18:20,60\n"
                                   "2026-03-03,07:15,41,,61\n");
        expect_sums(intake);
        EXPECT_EQ(count(intake, Fate::stored), 2U) << titles;
        ASSERT_EQ(intake.diary.size(), 4U) << titles;
        const DiaryEntry& breakfast = intake.diary[0];
        EXPECT_EQ(breakfast.at, march(2, 7h + 10min)) << titles;
        EXPECT_EQ(breakfast.slot, "breakfast") << titles;
        EXPECT_EQ(grams(breakfast), 40) << titles;
        EXPECT_FALSE(breakfast.time_uncertain) << titles;
        EXPECT_EQ(intake.diary[1].at, march(2, 18h + 20min)) << titles;
        EXPECT_EQ(intake.diary[1].slot, "dinner") << titles;
        EXPECT_EQ(grams(intake.diary[1]), 60) << titles;
        EXPECT_EQ(grams(intake.diary[3]), 61) << titles;
        EXPECT_TRUE(intake.diary[3].time_uncertain) << titles;
        EXPECT_EQ(code(intake, "clock_missing"), 1U) << titles;
        EXPECT_EQ(code(intake, "column_not_read"), 0U) << titles;
    }
}

TEST(SeveralMeals, beside_a_night_are_never_at_its_time_and_steps_are_kept) {
    const Intake intake = read(
        "Date,Bedtime,Wake time,Breakfast,Breakfast carbs,Dinner,Dinner carbs,Steps\n"
        "2026-03-02,23:06,06:14,oats,32,\"rice, beans\",52,\"4,154\"\n"
        "2026-03-03,23:09,06:21,oats,33,,,\"4,231\"\n");
    expect_sums(intake);
    const auto slept = of_kind(intake, DiaryKind::sleep);
    ASSERT_EQ(slept.size(), 2U);
    EXPECT_EQ(slept[0].at, march(2, 23h + 6min));
    EXPECT_EQ(slept[0].until, march(3, 6h + 14min));
    EXPECT_FALSE(slept[0].time_uncertain);
    const auto meals = of_kind(intake, DiaryKind::meal);
    ASSERT_EQ(meals.size(), 3U);
    EXPECT_EQ(meals[0].text, "oats");
    EXPECT_EQ(meals[0].slot, "breakfast");
    EXPECT_EQ(meals[0].at, march(2, 8h));
    EXPECT_EQ(grams(meals[0]), 32);
    EXPECT_EQ(meals[1].text, "rice, beans");
    EXPECT_EQ(meals[1].at, march(2, 19h));
    EXPECT_EQ(grams(meals[1]), 52);
    for (const DiaryEntry& meal : meals) {
        EXPECT_TRUE(meal.time_uncertain);
    }
    const auto moved = of_kind(intake, DiaryKind::movement);
    ASSERT_EQ(moved.size(), 2U);
    EXPECT_TRUE(moved[0].time_uncertain);
    EXPECT_FALSE(moved[0].until);
}

TEST(SeveralMeals, of_a_row_at_a_time_of_day_share_it_only_where_one_is_told) {
    const Intake intake = read(
        "Time,Breakfast carbs,Dinner carbs\n2026-03-02 07:10,40,\n2026-03-02 18:20,,60\n"
        "2026-03-03 21:00,41,61\n");
    ASSERT_EQ(intake.diary.size(), 4U);
    EXPECT_EQ(intake.diary[0].at, march(2, 7h + 10min));
    EXPECT_EQ(intake.diary[1].at, march(2, 18h + 20min));
    EXPECT_FALSE(intake.diary[1].time_uncertain);
    EXPECT_EQ(intake.diary[2].at, march(3, 8h));
    EXPECT_TRUE(intake.diary[2].time_uncertain);
    EXPECT_EQ(intake.diary[3].at, march(3, 19h));
}

TEST(SeveralMeals, are_told_apart_by_number_and_kept_where_only_their_time_is_told) {
    const Intake numbered =
        read("Date,Meal 1 time,Meal 1,Meal 2 time,Meal 2\n2026-03-02,07:10,oats,18:20,rice\n");
    ASSERT_EQ(numbered.diary.size(), 2U);
    EXPECT_EQ(numbered.diary[1].at, march(2, 18h + 20min));
    EXPECT_EQ(numbered.diary[1].text, "rice");
    const Intake times = read("Date,Breakfast,Snack 1,Snack 2\n2026-03-02,07:10,10:00,16:00\n");
    ASSERT_EQ(times.diary.size(), 3U);
    EXPECT_EQ(times.diary[2].at, march(2, 16h));
    EXPECT_EQ(times.diary[2].slot, "snack");
    EXPECT_TRUE(times.diary[2].not_described);
}

TEST(SeveralMeals, what_is_left_over_is_told_by_its_column) {
    const Intake twice = read(
        "time,carbs,carbs again\n2026-03-02 08:00,40,50\n"
        "2026-03-02 12:00,,60\n");
    EXPECT_EQ(note(twice, "column_not_read").found,
              "column 3 ('carbs again') in 1 row, the first on line 2");
    EXPECT_EQ(grams(twice.diary.at(1)), 60);
    const Intake numbers =
        read("date,time,note,before breakfast\n2026-03-02,08:00,ok,120\n2026-03-03,08:00,ok,121\n");
    EXPECT_THAT(note(numbers, "column_not_read").found, HasSubstr("column 4 ('before breakfast')"));
    const Intake bed = read(
        "Date,Bedtime,Wake time,Mood\n2026-03-02,23:10,06:40,4\n"
        "2026-03-03,23:10,,3\n");
    EXPECT_THAT(note(bed, "column_not_read").found, HasSubstr("column 2 ('Bedtime') in 1 row"));
}

TEST(Night, is_told_by_the_titles_of_both_its_ends) {
    for (const char* titles :
         {"Sleep start,Sleep end", "sleep_start,sleep_end", "Bedtime,Wake time",
          "Fell asleep,Woke up", "Schlafbeginn,Schlafende", "Sleep onset,Got up",
          "Heure du coucher,R\xC3\xA9veil"}) {
        const Intake intake = read(std::string(titles) +
                                   "\n2026-03-01 22:50,2026-03-02 06:40\n"
                                   "2026-03-02 22:40,2026-03-03 06:30\n");
        ASSERT_EQ(intake.diary.size(), 2U) << titles;
        EXPECT_EQ(intake.diary[0].kind, DiaryKind::sleep) << titles;
        EXPECT_EQ(intake.diary[0].at, march(1, 22h + 50min)) << titles;
        EXPECT_EQ(intake.diary[0].until, march(2, 6h + 40min)) << titles;
        EXPECT_FALSE(intake.diary[0].time_uncertain) << titles;
    }
    for (const char* words : {"sleep", "sleep time", "hours slept", "sleep quality", "weekend"}) {
        EXPECT_EQ(end_of_sleep(words), EndOfSleep::none) << words;
    }
}

TEST(Night, beside_what_else_a_row_tells_has_its_own_time) {
    const Intake dated = read(
        "Time,Meal,Sleep start,Sleep end\n2026-03-02 07:30,oats,2026-03-01 22:50,2026-03-02 06:40\n"
        "2026-03-02 12:30,soup,,\n");
    ASSERT_EQ(dated.diary.size(), 3U);
    EXPECT_EQ(dated.diary[0].at, march(1, 22h + 50min));
    EXPECT_EQ(dated.diary[0].until, march(2, 6h + 40min));
    EXPECT_EQ(dated.diary[1].at, march(2, 7h + 30min));
    EXPECT_EQ(dated.diary[1].text, "oats");
    EXPECT_EQ(dated.sample.at(0),
              (std::vector<std::string>{"line 2", "2026-03-02 07:30", "meal: oats",
                                        "sleep 2026-03-01 22:50"}));
    // Written down in the morning, a night began the evening before.
    const Intake clocks =
        read("Time,Meal,Sleep start,Sleep end\n2026-03-02 07:30,oats,22:50,06:40\n");
    ASSERT_EQ(clocks.diary.size(), 2U);
    EXPECT_EQ(clocks.diary[0].at, march(1, 22h + 50min));
    EXPECT_EQ(clocks.diary[0].until, march(2, 6h + 40min));
    // In the rows' zone, whatever the clock did.
    const Intake spring =
        read("Sleep start,Sleep end,Note\n2026-03-28 22:50,2026-03-29 06:40,ok\n", in_berlin());
    ASSERT_EQ(spring.diary.size(), 2U);
    EXPECT_EQ(*spring.diary[0].until - spring.diary[0].at, 6h + 50min);
    EXPECT_TRUE(spring.diary[1].time_uncertain);
}

TEST(Night, of_one_end_and_hours_has_the_other_and_steps_stay_beside) {
    const Intake intake = read(
        "Date,Bedtime,Hours slept,Steps\n2026-03-02,23:10,7.5,8000\n2026-03-03,23:00,8,9000\n");
    const auto slept = of_kind(intake, DiaryKind::sleep);
    ASSERT_EQ(slept.size(), 2U);
    EXPECT_EQ(slept[0].at, march(2, 23h + 10min));
    EXPECT_EQ(slept[0].until, march(3, 6h + 40min));
    EXPECT_EQ(of_kind(intake, DiaryKind::movement).size(), 2U);
}

TEST(Night, keeps_its_row_where_a_level_beside_has_no_time) {
    const Intake intake =
        read("Date,Bedtime,Wake time,Glucose mg/dL\n2026-03-02,23:10,06:40,120\n");
    EXPECT_EQ(of_kind(intake, DiaryKind::sleep).size(), 1U);
    EXPECT_TRUE(intake.readings.empty());
    EXPECT_EQ(note(intake, "clock_missing").fate, Fate::stored);
}

TEST(Night, in_a_title_of_another_thing_makes_no_time_of_it) {
    for (const char* title : {"Waking glucose mg/dL", "Bedtime glucose mg/dL",
                              "Wake-up glucose (mg/dL)", "Blutzucker nach dem Aufstehen mg/dL"}) {
        const Intake intake = read("time," + std::string(title) +
                                   "\n2026-03-02 07:00,120\n2026-03-03 07:00,121\n"
                                   "2026-03-04 07:00,122\n");
        EXPECT_EQ(intake.readings.size(), 3U) << title;
    }
    const Intake snack = read("time,bedtime snack,bedtime insulin\n2026-03-02 22:00,oats,8\n");
    EXPECT_EQ(of_kind(snack, DiaryKind::meal).size(), 1U);
    EXPECT_EQ(of_kind(snack, DiaryKind::medicine).size(), 1U);
}

TEST(OwnTime, that_the_clock_never_showed_keeps_nothing_but_what_stands_beside) {
    const Intake intake = read(
        "Date,Snack time,Snack carbs,Dinner time,Dinner carbs\n2026-03-29,02:30,20,18:20,60\n"
        "2026-03-29,02:40,20,,\n",
        in_berlin());
    expect_sums(intake);
    ASSERT_EQ(intake.diary.size(), 1U);
    EXPECT_EQ(grams(intake.diary[0]), 60);
    EXPECT_EQ(count(intake, Fate::rejected), 1U);
    EXPECT_EQ(code(intake, "skipped_hour"), 3U);
}

TEST(MealTitle, names_the_meals_of_a_day_and_no_other) {
    EXPECT_EQ(titled_meal("morning snack carbs")->name, "snack morning");
    EXPECT_EQ(titled_meal("petit d\xC3\xA9jeuner")->slot, "breakfast");
    EXPECT_EQ(titled_meal("d\xC3\xA9jeuner")->slot, "lunch");
    EXPECT_TRUE(titled_meal("time of dinner")->of_time);
    EXPECT_FALSE(titled_meal("dinner insulin")->alone);
    for (const char* words : {"meal", "meal time", "mahlzeit", "carbs", "time"}) {
        EXPECT_FALSE(titled_meal(words)) << words;
    }
}
