// Very low and repeated lows on the ladder.
#include "coaching/ladder_for_tests.hpp"
#include "diary/finger_prick.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

namespace tracewright {
namespace {

// Safety rule 2; the length: Battelino et al. 2023, 10.1016/S2213-8587(22)00319-9.
TEST(VeryLowOnTheLadder, fourteen_minutes_are_none_and_fifteen_are_one) {
    for (const int minutes : {14, 15}) {
        Ladder ladder;
        ladder.takes("none");
        Ladder::set(ladder.wear(0, 600, 120, 1), 200, static_cast<std::size_t>(minutes), 50);
        const auto found = ladder.found("very_low");
        ASSERT_EQ(found.size(), minutes == 15 ? 1U : 0U);
        if (!found.empty()) {
            EXPECT_EQ(found[0].rung, Rung::same_day);
            EXPECT_EQ(found[0].at, at_minute(200));
            EXPECT_NE(found[0].what.find("15 min below 54 mg/dL, lowest 50 mg/dL"),
                      std::string::npos)
                << found[0].what;
        }
    }
}

// Safety rule 3: the ladder reads what was told, whatever became of its row.
TEST(VeryLowOnTheLadder, of_levels_that_differ_leads_whichever_is_right) {
    Ladder ladder;
    ladder.takes("none");
    Wear& wear = ladder.wear(0, 600, 120, 1);
    const auto hold = [&](int minute, int level) {
        wear.held.emplace_back(at_minute(minute), Glucose{level * 100, GlucoseUnit::mg_per_dl},
                               std::chrono::seconds{1});
    };
    hold(200, 45);
    hold(400, 110);  // beside the stored 120: no low
    const auto found = ladder.found("very_low_disputed");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].rung, Rung::same_day);
    EXPECT_EQ(found[0].at, at_minute(200));
    EXPECT_NE(found[0].what.find("several levels for one moment, not all below 54 mg/dL"),
              std::string::npos)
        << found[0].what;
}

TEST(VeryLowOnTheLadder, cut_short_by_a_gap_or_the_end_it_leads_whatever_its_length) {
    Ladder by_end;
    Ladder::set(by_end.wear(0, 100), 99, 1, 50);
    ASSERT_EQ(by_end.found("very_low_end_not_seen").size(), 1U);
    EXPECT_NE(by_end.found("very_low_end_not_seen")[0].what.find("end not seen"),
              std::string::npos);
    Ladder by_gap;
    Wear& wear = by_gap.wear(0, 100);
    Ladder::set(wear, 49, 1, 50);
    wear.readings.erase(wear.readings.begin() + 50, wear.readings.begin() + 60);
    EXPECT_EQ(by_gap.found("very_low_end_not_seen").size(), 1U);
}

TEST(VeryLowOnTheLadder, LOW_counts_and_its_lowest_is_below_the_limit) {
    Ladder ladder;
    Ladder::set(ladder.wear(0, 100), 40, 4, 40, Limit::below);
    const auto found = ladder.found("very_low");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_NE(found[0].what.find("lowest below 40 mg/dL"), std::string::npos) << found[0].what;
}

// A meter that shows LO has no number to print.
TEST(VeryLowOnTheLadder, a_meter_that_shows_lo_is_enough_and_prints_no_number) {
    Ladder ladder;
    set_meter_limit(ladder.entry(DiaryKind::finger_prick, 10), MeterLimit::shows_low,
                    GlucoseUnit::mmol_per_l);
    set_meter_limit(ladder.entry(DiaryKind::finger_prick, 20), MeterLimit::shows_high,
                    GlucoseUnit::mmol_per_l);
    const auto low = ladder.found("very_low_finger_prick");
    ASSERT_EQ(low.size(), 1U);
    EXPECT_EQ(low[0].what, "a finger-prick that showed LO, below what the meter can show");
    const auto high = ladder.found("above_300_finger_prick");
    ASSERT_EQ(high.size(), 1U);
    EXPECT_EQ(high[0].what, "a finger-prick that showed HI, above what the meter can show");
}

TEST(VeryLowOnTheLadder, one_finger_prick_is_enough) {
    Ladder ladder;
    ladder.entry(DiaryKind::finger_prick, 10).glucose = Glucose{290, GlucoseUnit::mmol_per_l};
    ladder.entry(DiaryKind::finger_prick, 20).glucose = Glucose{300, GlucoseUnit::mmol_per_l};
    EXPECT_EQ(ladder.found("very_low_finger_prick").size(), 1U);
}

// Safety rule 3: warm-up, stuck values and a second sensor are read like the rest.
TEST(VeryLowOnTheLadder, every_wear_is_read_raw) {
    Ladder ladder;
    Ladder::set(ladder.wear(0, 300), 0, 4, 45);    // in the first minutes of a wear
    Ladder::set(ladder.wear(500, 50), 20, 6, 48);  // a second sensor at the same time
    const auto found = ladder.found("very_low");
    ASSERT_EQ(found.size(), 2U);
    EXPECT_NE(found[0].what.find("(wear 2)"), std::string::npos);
    EXPECT_NE(found[1].what.find("(wear 1)"), std::string::npos);
}

TEST(VeryLowOnTheLadder, names_the_medicine_or_that_the_list_is_open_and_never_a_dose) {
    Ladder asked;
    asked.takes("gliclazide 80 mg");
    Ladder::set(asked.wear(0, 100), 40, 4, 50);
    EXPECT_NE(asked.found()[0].whom.find("gliclazide"), std::string::npos);
    EXPECT_EQ(asked.found()[0].whom.find("80"), std::string::npos);
    Ladder open;
    Ladder::set(open.wear(0, 100), 40, 4, 50);
    EXPECT_NE(open.found()[0].whom.find("counts as able to cause lows"), std::string::npos);
}

TEST(LowsOnTheLadder, two_in_seven_days_on_a_medicine_that_can_cause_them) {
    const auto with = [](const char* medicine, double days_apart) {
        Ladder ladder;
        if (*medicine != '\0') {
            ladder.takes(medicine);
        }
        Wear& wear = ladder.wear(0, 14 * 288);
        Ladder::set(wear, 100, 4, 65);
        Ladder::set(wear, 100 + static_cast<std::size_t>(days_apart * 288), 4, 65);
        return ladder.found("lows_in_7_days").size();
    };
    EXPECT_EQ(with("glibenclamide", 6.9), 1U);
    EXPECT_EQ(with("insulin glargine", 1), 1U);
    EXPECT_EQ(with("repaglinide", 3), 1U);
    EXPECT_EQ(with("", 3), 1U);  // not asked counts as risky
    EXPECT_EQ(with("glibenclamide", 7.1), 0U);
    EXPECT_EQ(with("metformin", 3), 0U);
}

// A naive second way: any low with another in the 7 days before it is told, on its own or by a
// later one of its chain.
TEST(LowsOnTheLadder, every_further_low_of_a_chain_asks_again) {
    const auto latest = [](std::initializer_list<double> days) {
        Ladder ladder;
        ladder.takes("gliclazide");
        Wear& wear = ladder.wear(0, 30 * 288);
        for (const double day : days) {
            Ladder::set(wear, static_cast<std::size_t>(day * 288), 4, 65);
        }
        std::vector<double> at;
        for (const Escalation& one : ladder.found("lows_in_7_days")) {
            at.push_back(static_cast<double>((one.at - at_minute(0)).count()) / 86400);
        }
        std::ranges::sort(at);
        return at;
    };
    EXPECT_EQ(latest({1, 7}), (std::vector{7.0}));
    EXPECT_EQ(latest({1, 7, 8.5}), (std::vector{8.5}));
    EXPECT_EQ(latest({1, 7, 20, 26}), (std::vector{7.0, 26.0}));
    EXPECT_EQ(latest({1, 9, 18}), std::vector<double>{});
}

TEST(LowsOnTheLadder, exactly_seven_days_apart_are_within_seven_days) {
    for (const int apart : {7 * 288, 7 * 288 + 1}) {
        Ladder ladder;
        ladder.takes("gliclazide");
        Wear& wear = ladder.wear(0, 14 * 288);
        Ladder::set(wear, 100, 4, 65);
        Ladder::set(wear, static_cast<std::size_t>(100 + apart), 4, 65);
        EXPECT_EQ(ladder.found("lows_in_7_days").size(), apart == 7 * 288 ? 1U : 0U);
    }
}

// Starts of lows at random: an event is due where one follows another within seven days; of each
// unbroken run of such the latest is told. The second way: from every low back to the one before.
RC_GTEST_PROP(LowsOnTheLadder, are_told_at_the_end_of_each_chain, ()) {
    const auto slots = *rc::gen::unique<std::set<int>>(rc::gen::inRange(1, 240));  // quarter days
    Ladder ladder;
    ladder.takes("insulin glargine");
    Wear& wear = ladder.wear(0, 61 * 288, 120);
    for (const int slot : slots) {
        Ladder::set(wear, static_cast<std::size_t>(slot) * 72, 4, 60);
    }
    std::set<Instant> expected;
    for (const int slot : slots) {
        bool one_before = false;
        bool one_after = false;
        for (const int other : slots) {
            one_before |= other < slot && slot - other <= 28;
            one_after |= other > slot && other - slot <= 28;
        }
        if (one_before && !one_after) {
            expected.insert(at_minute(slot * 360.0));
        }
    }
    std::set<Instant> found;
    for (const Escalation& one : ladder.found("lows_in_7_days")) {
        found.insert(one.at);
    }
    RC_ASSERT(found == expected);
}

TEST(LowsOnTheLadder, a_medicine_stopped_since_still_counts_for_the_lows_on_it) {
    Ladder ladder;
    ladder.medicines = MedicineTimeline(
        {{medicine_text("gliclazide"), {}, at_minute(3 * 1440)}, {medicine_text("none"), {}, {}}},
        at_minute(-1e6));
    Wear& wear = ladder.wear(0, 14 * 288);
    Ladder::set(wear, 2 * 288, 4, 65);
    Ladder::set(wear, 4 * 288, 4, 65);
    EXPECT_EQ(ladder.found("lows_in_7_days").size(), 1U);
}

TEST(LowsOnTheLadder, a_low_finger_prick_counts_and_one_within_a_low_does_not_count_twice) {
    Ladder ladder;
    ladder.takes("gliclazide");
    Ladder::set(ladder.wear(0, 7 * 288), 288, 6, 65);
    ladder.prick(1440 + 10, 66);
    EXPECT_TRUE(ladder.found("lows_in_7_days").empty());
    ladder.prick(3 * 1440, 68);
    EXPECT_EQ(ladder.found("lows_in_7_days").size(), 1U);
}

TEST(LowsOnTheLadder, two_sensors_that_see_one_low_see_one) {
    Ladder ladder;
    ladder.takes("insulin glargine");
    Ladder::set(ladder.wear(0, 300), 100, 5, 65);
    Ladder::set(ladder.wear(2, 300), 100, 5, 65);
    EXPECT_TRUE(ladder.found("lows_in_7_days").empty());
}

TEST(LowsOnTheLadder, another_persons_help_leads) {
    Ladder ladder;
    ladder.entry(DiaryKind::note, 5, "shaky at night, my husband helped me");
    ladder.entry(DiaryKind::note, 9, "Ambulance came");
    ladder.entry(DiaryKind::note, 12, "went low at 3, wife gave me juice");
    EXPECT_EQ(ladder.found("needed_help").size(), 3U);
}

}  // namespace
}  // namespace tracewright
