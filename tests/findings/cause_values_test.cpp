#include "findings/cause_values.hpp"

#include "responses/days_for_tests.hpp"

#include <gtest/gtest.h>

#include <algorithm>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

const ZoneHistory floating{Zone::floating()};

std::optional<double> of_day(Cause cause, int day, Diary diary,
                             Outcome outcome = Outcome::day_mean) {
    std::stable_sort(diary.begin(), diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    const auto occasions = eating_occasions(diary, floating);
    const CivilDay on = floating.day_of(floating.date_at(moment(day, 12)));
    const EatingOccasion* first = occasions.empty() ? nullptr : &occasions.front();
    return cause_value(cause, outcome, diary_of_day(diary, on, floating), first, diary, occasions,
                       floating);
}

}  // namespace

TEST(CauseValues, the_order_within_a_meal_is_read_only_where_it_is_told) {
    struct Row {
        const char* text;
        std::optional<double> value;
    };
    const Row rows[] = {
        {"Salad first, then pasta", 1},     {"chicken with rice, rice last", 1},
        {"bread first, soup after", 0},     {"pasta, vegetables last", 0},
        {"pasta with salad", std::nullopt}, {"salad first, bread first", std::nullopt},
        {"first salad", std::nullopt},
    };
    for (const Row& row : rows) {
        EXPECT_EQ(
            of_day(Cause::meal_order, 1, {meal(moment(1, 12), row.text, 50)}, Outcome::lunch_rise),
            row.value)
            << row.text;
    }
}

TEST(CauseValues, days_of_the_cycle_are_counted_from_the_last_one_told) {
    const Diary diary = {entry(DiaryKind::note, moment(0, 8), "Period began"),
                         entry(DiaryKind::note, moment(20, 8), "cycle day 3")};
    EXPECT_EQ(of_day(Cause::cycle, 0, diary), 0);
    EXPECT_EQ(of_day(Cause::cycle, 13, diary), 0);
    EXPECT_EQ(of_day(Cause::cycle, 14, diary), 1);
    EXPECT_EQ(of_day(Cause::cycle, 20, diary), 0);
    EXPECT_EQ(of_day(Cause::cycle, 32, diary), 1);
    EXPECT_EQ(of_day(Cause::cycle, 56, diary), std::nullopt) << "more than 35 days after";
    EXPECT_EQ(of_day(Cause::cycle, 3, {}), std::nullopt);
    EXPECT_EQ(of_day(Cause::cycle, 21, {entry(DiaryKind::note, moment(20, 8), "cycle day 99")}),
              std::nullopt);
}

TEST(CauseValues, strength_training_is_told_by_its_kind_and_belongs_to_the_day_before_a_night) {
    const Diary diary = {entry(DiaryKind::movement, moment(2, 18), "Weights at the gym"),
                         entry(DiaryKind::movement, moment(3, 18), "walk")};
    EXPECT_EQ(of_day(Cause::strength, 2, diary), 1);
    EXPECT_EQ(of_day(Cause::strength, 3, diary), 0);
    EXPECT_EQ(of_day(Cause::strength, 3, diary, Outcome::fasting), 1);
    EXPECT_EQ(of_day(Cause::strength, 4, diary, Outcome::fasting), 0);
}

TEST(CauseValues, a_shift_outside_the_day_is_told_in_words) {
    const Diary diary = {entry(DiaryKind::note, moment(2, 14), "Late shift today"),
                         meal(moment(3, 12), "soup", 40)};
    EXPECT_EQ(of_day(Cause::work_shift, 2, diary), 1);
    EXPECT_EQ(of_day(Cause::work_shift, 3, diary), 0);
}

TEST(CauseValues, a_day_without_a_word_is_not_a_day_without_a_walk_or_wine) {
    // Of the day after, only what a meter and a chemist write.
    const Diary diary = {meal(moment(2, 12), "soup", 40),
                         entry(DiaryKind::finger_prick, moment(3, 8)),
                         entry(DiaryKind::medicine, moment(3, 8), "metformin 500")};
    for (const Cause cause :
         {Cause::movement, Cause::strength, Cause::alcohol, Cause::work_shift}) {
        EXPECT_EQ(of_day(cause, 2, diary), 0);
        EXPECT_EQ(of_day(cause, 3, diary), std::nullopt);
        EXPECT_EQ(of_day(cause, 3, diary, Outcome::fasting), 0) << "of the day before";
        EXPECT_EQ(of_day(cause, 4, diary, Outcome::fasting), std::nullopt);
    }
    // Wine after midnight is wine of the evening before, whatever else was not written.
    EXPECT_EQ(of_day(Cause::alcohol, 4, {entry(DiaryKind::alcohol, moment(4, 0, 30), "wine")},
                     Outcome::fasting),
              1);
}

TEST(CauseValues, movement_before_and_after_a_meal_are_two_things) {
    const DiaryEntry lunch = meal(moment(1, 12), "soup", 40);
    const auto with = [&](Instant at) { return Diary{lunch, entry(DiaryKind::movement, at)}; };
    struct Row {
        Instant at;
        double before, after;
    };
    for (const Row& row : {Row{moment(1, 11), 1, 0}, Row{moment(1, 12), 0, 1},
                           Row{moment(1, 13, 30), 0, 1}, Row{moment(1, 10, 30), 1, 0},
                           Row{moment(1, 10, 29), 0, 0}, Row{moment(1, 13, 31), 0, 0}}) {
        EXPECT_EQ(of_day(Cause::walk_before, 1, with(row.at), Outcome::lunch_rise), row.before);
        EXPECT_EQ(of_day(Cause::walk_after, 1, with(row.at), Outcome::lunch_rise), row.after);
    }
}

TEST(CauseValues, carbohydrate_of_a_day_is_known_only_where_every_meal_has_its_grams) {
    Diary diary = {meal(moment(1, 8), "bread", 40), meal(moment(2, 2), "late", 10),
                   meal(moment(2, 8), "bread", 30)};
    EXPECT_EQ(of_day(Cause::day_carbohydrate, 1, diary), 50) << "a day ends at 04:00";
    EXPECT_EQ(of_day(Cause::carbohydrate_before, 2, diary), 50);
    EXPECT_EQ(of_day(Cause::carbohydrate_before, 3, diary), 30);
    EXPECT_EQ(of_day(Cause::carbohydrate_before, 1, diary), std::nullopt);
    Diary two_definitions = diary;
    two_definitions.front().carbohydrate_basis = CarbohydrateBasis::total;
    EXPECT_EQ(of_day(Cause::day_carbohydrate, 1, two_definitions), std::nullopt);
    diary.push_back(entry(DiaryKind::meal, moment(1, 19), "soup"));
    EXPECT_EQ(of_day(Cause::carbohydrate_before, 2, diary), std::nullopt);
}

TEST(CauseValues, order_and_energy_of_a_meal_are_asked_of_meals_only) {
    for (const Cause cause : {Cause::meal_order, Cause::meal_energy}) {
        EXPECT_TRUE(can_be_asked(Outcome::lunch_rise, cause));
        EXPECT_FALSE(can_be_asked(Outcome::fasting, cause));
        EXPECT_FALSE(can_be_asked(Outcome::day_mean, cause));
    }
}
