#include "coaching/substances.hpp"

#include "care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using Effect = SubstanceStretch::Effect;

std::vector<SubstanceStretch> stretches_of(const Care& care) {
    return care.ask([](const CareInput& in) {
        return substance_stretches(in, {care_at(-14), care_at(0)});
    });
}

// Safety rule 13; 8 h: our own rule.
TEST(Substances, paracetamol_is_marked_for_eight_hours_after_each_dose) {
    Care care;
    care.entry(DiaryKind::medicine, care_at(-2, 9), "acetaminophen 2 x 500 for headache");
    care.entry(DiaryKind::medicine, care_at(-1, 20), "paracetamol and codeine");
    const auto stretches = stretches_of(care);
    ASSERT_EQ(stretches.size(), 2U);
    EXPECT_EQ(stretches[0].stretch, (Interval{care_at(-2, 9), care_at(-2, 17)}));
    EXPECT_EQ(stretches[1].stretch, (Interval{care_at(-1, 20), care_at(0)}));  // the window ends
    EXPECT_EQ(stretches[1].name, "paracetamol");
    EXPECT_EQ(stretches[0].effect, Effect::may_read_wrong);
    EXPECT_FALSE(not_usable_for_lows(stretches));
    EXPECT_EQ(substances_for_coach(stretches).size(), 1U);
}

TEST(Substances, what_can_hide_lows_makes_the_wear_unusable_for_them) {
    Care care;
    care.takes("hydroxyurea 500");
    const auto stretches = stretches_of(care);
    ASSERT_EQ(stretches.size(), 1U);
    EXPECT_EQ(stretches[0].stretch, (Interval{care_at(-14), care_at(0)}));
    EXPECT_TRUE(not_usable_for_lows(stretches));
    EXPECT_THAT(substances_for_coach(stretches)[0], testing::HasSubstr("not usable for lows"));
}

TEST(Substances, a_dose_of_what_can_hide_lows_is_marked_for_a_day) {
    Care care;
    care.entry(DiaryKind::medicine, care_at(-3, 9), "hydroxycarbamide");
    ASSERT_EQ(stretches_of(care).size(), 1U);
    EXPECT_EQ(stretches_of(care)[0].stretch, (Interval{care_at(-3, 9), care_at(-2, 9)}));
}

TEST(Substances, high_dose_vitamin_c_is_asked_about) {
    Care care;
    care.takes("metformin, vit C 2 g a day");
    const auto stretches = stretches_of(care);
    ASSERT_EQ(stretches.size(), 1U);
    EXPECT_EQ(stretches[0].effect, Effect::ask_the_amount);
    EXPECT_THAT(substances_for_coach(stretches)[0], testing::HasSubstr("ask how much"));
}

TEST(Substances, others_and_what_ended_before_mark_nothing) {
    Care care;
    EXPECT_TRUE(stretches_of(care).empty());
    care.facts.medicines.push_back({"hydroxyurea", {}, care_day - std::chrono::days{20}});
    care.entry(DiaryKind::medicine, care_at(-15, 9), "paracetamol");
    EXPECT_TRUE(stretches_of(care).empty());
    EXPECT_TRUE(substances_for_coach({}).empty());
}

}  // namespace
}  // namespace tracewright
