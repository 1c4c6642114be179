// What is known of a client's sensors. Everybody in here is invented.
#include "coaching/sensor_record.hpp"

#include "coaching/care_for_tests.hpp"
#include "coaching/wear_life_split.hpp"

#include <gtest/gtest.h>

#include <array>

using namespace tracewright;

namespace {

ReviewInput input_of(const Care& care) {
    ReviewInput input;
    input.wears = care.wears;
    input.diary = care.diary;
    input.zones = care.clock;
    input.as_of = care.as_of;
    return input;
}

/// A wear of 14 days at 120 mg/dL with `pricks` finger-pricks, two a day, that say `blood` less a
/// `drift` for each day of wear.
Care pricked(int pricks, double blood, double drift = 0) {
    Care care;  // its own wear: 14 days at 120
    for (int i = 0; i < pricks; ++i) {
        const int day = -14 + i / 2;
        care.entry(DiaryKind::finger_prick, care_at(day, i % 2 == 0 ? 8 : 18, 1)).glucose =
            Glucose{rounded_hundredths(blood - drift * (i / 2) + (i % 2 == 0 ? 1 : -1)),
                    GlucoseUnit::mg_per_dl};
    }
    return care;
}

}  // namespace

TEST(SensorRecord, wears_without_a_failure_told_are_ends_of_looking) {
    Care care;
    care.wears.clear();
    for (int i = 0; i < 6; ++i) {
        Wear& wear = care.wear(-100 + 16 * i, i < 5 ? 3 + i : 14);
        wear.end = i < 4 ? WearEnd::fell_off : i < 5 ? WearEnd::sensor_failed : WearEnd::planned;
    }
    const SensorRecord record = sensor_record(input_of(care));
    EXPECT_EQ(record.life.failures, 5);
    EXPECT_EQ(record.life.count, 6);
    ASSERT_TRUE(record.life.median);
    EXPECT_NE(record.life_finding.sentence.find("4 fell off, 1 failed, 1 ended otherwise"),
              std::string::npos)
        << record.life_finding.sentence;
    EXPECT_NE(record.life_finding.caveats.at(0).sentence.find("fewer than 20 wears"),
              std::string::npos);
    care.wears[0].end = WearEnd::removed;
    const SensorRecord four = sensor_record(input_of(care));
    EXPECT_EQ(four.life.failures, 4);
    EXPECT_NE(four.life_finding.sentence.find("can't be told"), std::string::npos);
}

// Data, failures expected and p: the 6-MP trial of Freireich et al. 1963, Blood 21:699,
// 10.1182/blood.V21.6.699.699, as in Gehan 1965, Biometrika 52:203, 10.1093/biomet/52.1-2.203;
// weeks taken as days, 6-MP as the sensors with an overpatch. p recomputed with R 4.2.2 survdiff.
TEST(SensorRecord, an_overpatch_is_compared_from_twenty_wears_on_each_side_on) {
    constexpr std::array with = {
        6,   6,   6,   -6, 7,  -9,  10,  -10, -11, 13, 16,
        -17, -19, -20, 22, 23, -25, -32, -32, -34, -35};  // minus: an end of looking
    constexpr std::array without = {1, 1, 2,  2,  3,  4,  4,  5,  5,  8, 8,
                                    8, 8, 11, 11, 12, 12, 15, 17, 22, 23};
    std::vector<WearLine> wears;
    const auto add = [&](int lasted, bool overpatch) {
        wears.push_back({"wear",
                         {},
                         std::chrono::days{std::abs(lasted)},
                         lasted < 0 ? WearEnd::planned : WearEnd::fell_off,
                         {overpatch, ""}});
    };
    for (const int lasted : with) {
        add(lasted, true);
    }
    for (const int lasted : without) {
        add(lasted, false);
    }
    const auto split = split_by_overpatch(wears);
    ASSERT_TRUE(split && split->test);
    EXPECT_NEAR(split->test->p, 4.16881e-05, 1e-9);
    EXPECT_NEAR(split->test->expected[0], 19.250501, 1e-5);
    EXPECT_NE(split->finding.sentence.find("Sensors with an overpatch lasted longer than those "
                                           "without one"),
              std::string::npos)
        << split->finding.sentence;
    EXPECT_EQ(split->finding.caveats.front().kind, CaveatKind::travels_together);
    // Two of one side fewer: 19 are not compared, however they lasted.
    wears.resize(wears.size() - 2);
    const auto fewer = split_by_overpatch(wears);
    EXPECT_FALSE(fewer->test);
    EXPECT_EQ(fewer->finding.answer, Answer::cannot_tell);
    EXPECT_NE(fewer->finding.sentence.find("They can't be compared yet"), std::string::npos);
    for (WearLine& wear : wears) {
        wear.fixing = {};
    }
    EXPECT_FALSE(split_by_overpatch(wears));
}

TEST(SensorRecord, sites_are_told_the_most_worn_first_and_alike_ones_are_one) {
    Care care;
    care.wears.clear();
    for (int i = 0; i < 4; ++i) {
        care.wear(-100 + 16 * i, 5).end = i == 0 ? WearEnd::fell_off : WearEnd::planned;
    }
    const std::vector<WearFixing> fixings = {
        {{}, "belly"}, {{}, "Left arm "}, {true, "left arm"}, {}};
    const SensorRecord record = sensor_record(input_of(care), fixings);
    ASSERT_TRUE(record.by_site);
    ASSERT_EQ(record.by_site->groups.size(), 2U);
    EXPECT_EQ(record.by_site->groups[0].what, "at the site 'left arm'");
    EXPECT_EQ(record.by_site->groups[0].count, 2);
    EXPECT_EQ(record.by_site->groups[1].fell_off, 1);
    EXPECT_EQ(record.by_site->not_told, 1);
    ASSERT_TRUE(record.by_overpatch);
    EXPECT_EQ(record.by_overpatch->not_told, 3);
    EXPECT_EQ(record.wears[2].fixing, fixings[2]);
    EXPECT_THROW(sensor_record(input_of(care), std::span(fixings).first(3)), std::invalid_argument);
}

TEST(SensorRecord, few_pairs_say_nothing_some_describe_and_twenty_have_an_interval) {
    EXPECT_NE(sensor_record(input_of(pricked(1, 110))).accuracy_finding.sentence.find("1 pair of"),
              std::string::npos);
    EXPECT_NE(
        sensor_record(input_of(pricked(9, 110))).accuracy_finding.sentence.find("too few to say"),
        std::string::npos);
    const SensorRecord some = sensor_record(input_of(pricked(14, 110)));
    EXPECT_FALSE(some.accuracy_finding.estimate->interval95);
    EXPECT_NE(some.accuracy_finding.sentence.find("10 mg/dL higher than finger-pricks"),
              std::string::npos)
        << some.accuracy_finding.sentence;
    const SensorRecord many = sensor_record(input_of(pricked(26, 110)));
    ASSERT_TRUE(many.accuracy_finding.estimate->interval95);
    EXPECT_NEAR(many.accuracy.bias, 10, 1e-9);
    EXPECT_NE(many.accuracy_finding.sentence.find("Error grid: A 26"), std::string::npos)
        << many.accuracy_finding.sentence;
    EXPECT_NEAR(many.drift->a_day, 0, 1e-9);
    // Days all alike: by 1 mg/dL over the twelve between the first and the last, either way.
    EXPECT_NEAR(many.drift->interval95[0], -1.0 / 12, 1e-9);
    EXPECT_NEAR(many.drift->interval95[1], 1.0 / 12, 1e-9);
    EXPECT_NEAR(sensor_record(input_of(pricked(26, 110, 1.5))).drift->a_day, 1.5, 1e-9);
}

// Differences of 6 days of wear: 0, 3, 1, 5, 4, 8. By hand the 15 slopes between two days in order:
// -2, -1, 1/3, 1/2, 1, 1, 5/4, 3/2, 3/2, 8/5, 5/3, 7/3, 3, 4, 4; median 3/2. Kendall's variance
// 6 x 5 x 17 / 18, its root times 1.96: 10.4; so the 2nd from either end. Sen 1968,
// 10.1080/01621459.1968.10480934.
TEST(SensorRecord, drift_is_told_with_its_interval) {
    Care care;
    const std::array<double, 6> apart{0, 3, 1, 5, 4, 8};
    for (int i = 0; i < 24; ++i) {
        const int day = i / 4;
        care.entry(DiaryKind::finger_prick, care_at(-14 + day, 8 + i % 4, 1)).glucose = Glucose{
            rounded_hundredths(120 - apart[static_cast<std::size_t>(day)]), GlucoseUnit::mg_per_dl};
    }
    const SensorRecord record = sensor_record(input_of(care));
    ASSERT_TRUE(record.drift);
    EXPECT_NEAR(record.drift->a_day, 1.5, 1e-9);
    EXPECT_NEAR(record.drift->interval95[0], -1, 1e-9);
    EXPECT_NEAR(record.drift->interval95[1], 4, 1e-9);
    EXPECT_NE(record.accuracy_finding.sentence.find(
                  "With each day of wear it read 1.5 mg/dL higher (95 % interval from 1.0 mg/dL "
                  "lower to 4.0 mg/dL higher): whether it drifts can't be told."),
              std::string::npos)
        << record.accuracy_finding.sentence;
}

TEST(SensorRecord, nothing_there_is_told_and_no_text_lulls) {
    const SensorRecord none = sensor_record(ReviewInput{});
    EXPECT_TRUE(none.wears.empty());
    for (const int pricks : {0, 14, 26}) {
        const SensorRecord record = sensor_record(input_of(pricked(pricks, 110)));
        std::string all = record.life_finding.sentence + record.accuracy_finding.sentence;
        for (const Caveat& caveat : record.accuracy_finding.caveats) {
            all += caveat.sentence;
        }
        for (const char* word : {"because", "safe", " fine", "accurate", "nan", "  ", ".."}) {
            EXPECT_EQ(all.find(word), std::string::npos) << word << " in: " << all;
        }
    }
}
