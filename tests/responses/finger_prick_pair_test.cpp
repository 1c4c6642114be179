#include "responses/finger_prick_pair.hpp"

#include "responses/days_for_tests.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

std::vector<FingerPrickPair> pairs_of(Diary diary) {
    std::stable_sort(diary.begin(), diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    const auto occasions = eating_occasions(diary, ZoneHistory{Zone::floating()});
    return finger_prick_pairs(diary, occasions);
}

}  // namespace

TEST(FingerPrickPair, two_hours_give_or_take_fifteen_minutes) {
    struct Row {
        int minutes;
        bool used;
    };
    for (const Row& row : {Row{104, false}, Row{105, true}, Row{120, true}, Row{135, true},
                           Row{136, false}, Row{180, false}}) {
        const auto pairs =
            pairs_of({prick(moment(0, 12), 110), meal(moment(0, 12), "rice", 50),
                      prick(moment(0, 12) + std::chrono::minutes{row.minutes}, 160)});
        ASSERT_EQ(pairs.size(), 1U);
        EXPECT_EQ(pairs[0].used(), row.used) << row.minutes;
        if (row.used) {
            EXPECT_EQ(pairs[0].rise(), 50);
        } else {
            EXPECT_NE(pairs[0].left_out_because.find("not at 2 h"), std::string::npos);
        }
    }
}

TEST(FingerPrickPair, without_the_one_before_is_listed_with_the_reason) {
    const auto pairs = pairs_of({meal(moment(0, 12), "rice", 50), prick(moment(0, 14), 160)});
    ASSERT_EQ(pairs.size(), 1U);
    EXPECT_EQ(pairs[0].left_out_because, "no finger-prick before");
}

TEST(FingerPrickPair, a_meal_without_finger_pricks_is_not_listed) {
    EXPECT_TRUE(pairs_of({meal(moment(0, 12), "rice", 50)}).empty());
    EXPECT_TRUE(pairs_of({}).empty());
}

TEST(FingerPrickPair, of_several_after_the_nearest_to_two_hours_counts) {
    const auto pairs = pairs_of({prick(moment(0, 11, 50), 110), meal(moment(0, 12), "rice", 50),
                                 prick(moment(0, 13), 190), prick(moment(0, 13, 55), 150),
                                 prick(moment(0, 15), 120)});
    ASSERT_EQ(pairs.size(), 1U);
    EXPECT_EQ(pairs[0].rise(), 40);
}
