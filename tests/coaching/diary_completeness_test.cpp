#include "coaching/diary_completeness.hpp"

#include "care_for_tests.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

DiaryCompleteness of(const Care& care, int from = -7, int days = 7) {
    return diary_completeness(care.diary, care.clock.days({care_at(from), care_at(from + days)}),
                              care.clock);
}

TEST(DiaryCompleteness, counts_each_slot_once_a_day) {
    Care care;
    care.meal(care_at(-7, 7), 30);
    care.meal(care_at(-7, 9), 10);  // the same slot
    care.meal(care_at(-7, 12), 50);
    care.meal(care_at(-6, 19), 60);
    care.entry(DiaryKind::sleep, care_at(-5, 23));
    const DiaryCompleteness found = of(care);
    EXPECT_EQ(found.days, 7);
    EXPECT_EQ(found.breakfasts, 1);
    EXPECT_EQ(found.lunches, 1);
    EXPECT_EQ(found.dinners, 1);
    EXPECT_EQ(found.nights, 1);
    EXPECT_EQ(found.nothing_written.size(), 4U);
    EXPECT_DOUBLE_EQ(found.meals_share(), 3.0 / 21);
}

struct SlotRow {
    int hour;
    int minute;
    const char* slot;
    int breakfasts, lunches, dinners;
};
// The slots' hours: common practice, no source.
TEST(DiaryCompleteness, slots_have_edges_and_a_slot_told_goes_before_the_clock) {
    for (const SlotRow& row :
         {SlotRow{3, 59, "", 0, 0, 0}, SlotRow{4, 0, "", 1, 0, 0}, SlotRow{10, 29, "", 1, 0, 0},
          SlotRow{10, 30, "", 0, 1, 0}, SlotRow{15, 29, "", 0, 1, 0}, SlotRow{15, 30, "", 0, 0, 1},
          SlotRow{21, 59, "", 0, 0, 1}, SlotRow{22, 0, "", 0, 0, 0},
          SlotRow{11, 0, "Breakfast", 1, 0, 0}, SlotRow{8, 0, "snack", 0, 0, 0},
          SlotRow{23, 0, "Late dinner", 0, 0, 1}}) {
        Care care;
        care.entry(DiaryKind::meal, care_at(-3, row.hour, row.minute)).slot = row.slot;
        const DiaryCompleteness found = of(care);
        EXPECT_EQ(found.breakfasts, row.breakfasts) << row.hour << row.slot;
        EXPECT_EQ(found.lunches, row.lunches) << row.hour << row.slot;
        EXPECT_EQ(found.dinners, row.dinners) << row.hour << row.slot;
    }
}

TEST(DiaryCompleteness, what_was_not_described_is_no_meal_and_no_silence) {
    Care care;
    care.entry(DiaryKind::meal, care_at(-3, 8)).not_described = true;
    const DiaryCompleteness found = of(care);
    EXPECT_EQ(found.breakfasts, 0);
    EXPECT_EQ(found.nothing_written.size(), 6U);
}

TEST(DiaryCompleteness, is_said_in_a_sentence) {
    Care care;
    care.meal(care_at(-2, 8), 30);
    EXPECT_EQ(completeness_sentence(of(care, -2, 2), {}),
              "Breakfast was written on 1 of 2 days, lunch on 0, dinner on 0, sleep on 0. Nothing "
              "was written on Sun 15 February.");
    EXPECT_DOUBLE_EQ(DiaryCompleteness{}.meals_share(), 0);
}

}  // namespace
}  // namespace tracewright
