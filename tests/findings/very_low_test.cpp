#include "findings/first_review.hpp"

#include "findings/review_input_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;

// T9 of the coach's tasks: 47 minutes below 54 mg/dL at 02:40.
TEST(VeryLow, leads_the_review_with_its_own_date_and_age_first) {
    auto readings = waves(14, 1min);
    dip(readings, midnight + 24h + 2h + 40min, 47min, 50);
    const FirstReview review = first_review(input_of(readings));
    const Finding& first = review.findings.front();
    EXPECT_EQ(first.code, "very_low");
    EXPECT_THAT(first.sentence, ::testing::StartsWith("Tue 3 March 02:40, 13 days ago"));
    EXPECT_THAT(first.sentence, HasSubstr("47 min below 54 mg/dL, lowest 50 mg/dL"));
    EXPECT_EQ(first.next.step, NextStep::contact_prescriber);
    EXPECT_THAT(first.next.sentence, HasSubstr("prescriber"));
    EXPECT_THAT(first.next.sentence, HasSubstr("finger-prick"));
    EXPECT_THAT(first.next.sentence, Not(HasSubstr("dose")));
}

TEST(VeryLow, fourteen_minutes_are_none_and_fifteen_are_one) {
    for (const auto& [length, expected] : {std::pair{14min, false}, std::pair{15min, true}}) {
        auto readings = waves(3, 1min);
        dip(readings, midnight + 26h, length, 53);
        const FirstReview review = first_review(input_of(readings));
        EXPECT_EQ(finding_of(review, "very_low") != nullptr, expected) << length.count();
    }
}

TEST(VeryLow, a_run_cut_short_by_the_end_of_data_leads_whatever_its_length) {
    auto readings = waves(3, 5min);
    dip(readings, readings.back().at, 5min, 50);
    const FirstReview review = first_review(input_of(readings));
    ASSERT_NE(finding_of(review, "very_low"), nullptr);
    EXPECT_THAT(review.findings.front().sentence, HasSubstr("end not seen"));
}

TEST(VeryLow, one_finger_prick_is_enough) {
    ReviewInput input = input_of(waves(3));
    DiaryEntry prick;
    prick.kind = DiaryKind::finger_prick;
    prick.at = midnight + 30h;
    prick.glucose = mmol(2.9);
    input.diary.push_back(prick);
    const FirstReview review = first_review(std::move(input));
    ASSERT_NE(finding_of(review, "very_low"), nullptr);
    EXPECT_THAT(review.findings.front().sentence, HasSubstr("a finger-prick of 52 mg/dL"));
}

TEST(VeryLow, a_reading_beyond_the_limit_prints_as_below_it) {
    auto readings = waves(3, 5min);
    for (Reading& reading : readings) {
        if (reading.at >= midnight + 26h && reading.at < midnight + 27h) {
            reading = Reading{reading.at, mg(40), 5min, Limit::below};
        }
    }
    const FirstReview review = first_review(input_of(readings));
    EXPECT_THAT(review.findings.front().sentence, HasSubstr("lowest below 40 mg/dL"));
}

TEST(VeryLow, a_value_too_low_to_be_believed_is_still_told) {
    auto readings = waves(3, 5min);
    readings[100] = Reading{readings[100].at, mg(12), 5min, Limit::none, true};
    const FirstReview review = first_review(input_of(readings));
    ASSERT_NE(finding_of(review, "very_low"), nullptr);
    EXPECT_THAT(review.findings.front().sentence, HasSubstr("12 mg/dL"));
}

TEST(VeryLow, is_counted_inside_a_suspect_stretch_too) {
    auto readings = waves(3, 5min);
    dip(readings, midnight + 10min, 20min, 50);  // within warm-up
    const FirstReview review = first_review(input_of(readings));
    EXPECT_EQ(review.findings.front().code, "very_low");
}

namespace {

// Three days of one sensor, and a second one beside it from 12:00 of the first.
ReviewInput two_sensors(std::vector<Reading> first, std::vector<Reading> second) {
    ReviewInput input = input_of(std::move(first));
    for (Wear& wear : wears_of(std::move(second), "second.csv")) {
        input.wears.push_back(std::move(wear));
    }
    input.wears[0].label = "wear 1";
    input.wears[1].label = "wear 2";
    return input;
}

}  // namespace

// Safety rule 3: the sensor that is not counted is read too, and named.
TEST(VeryLow, on_the_sensor_that_is_not_counted_it_leads_all_the_same) {
    auto second = waves(2, 15min, midnight + 12h);
    dip(second, midnight + 26h, 45min, 48);
    for (const bool chosen : {false, true}) {
        ReviewInput input = two_sensors(waves(3, 5min), second);
        input.wears[0].chosen = chosen;
        const FirstReview review = first_review(std::move(input));
        ASSERT_EQ(review.findings.front().code, "very_low");
        EXPECT_THAT(review.findings.front().sentence, HasSubstr("(wear 2)"));
    }
}

TEST(VeryLow, that_two_sensors_saw_is_told_once) {
    auto first = waves(3, 5min);
    auto second = waves(2, 15min, midnight + 12h);
    dip(first, midnight + 26h, 40min, 50);
    dip(second, midnight + 26h, 45min, 48);
    const FirstReview review = first_review(two_sensors(first, second));
    EXPECT_EQ(finding_of(review, "very_low")->evidence.used, 1);
}

TEST(VeryLow, is_told_in_the_unit_shown) {
    auto readings = waves(3, 5min);
    dip(readings, midnight + 26h, 40min, 50);
    ReviewInput input = input_of(readings);
    input.unit = GlucoseUnit::mmol_per_l;
    const FirstReview review = first_review(std::move(input));
    const std::string& sentence = finding_of(review, "very_low")->sentence;
    EXPECT_THAT(sentence, HasSubstr("lowest 2.8 mmol/L"));
    EXPECT_EQ(sentence.find("mg/dL"), std::string::npos) << sentence;
}

// Safety rules 2 and 3: what becomes of a row decides nothing about whom to call.
TEST(VeryLow, levels_held_because_they_differ_lead_and_are_told_as_not_counted) {
    ReviewInput input = input_of(waves(14));
    Wear& wear = input.wears.front();
    const Instant night = midnight + 50h;
    for (int i = 0; i < 12; ++i) {
        for (const int level : {45, 48}) {
            wear.held.emplace_back(night + i * 5min, Glucose{level * 100, GlucoseUnit::mg_per_dl},
                                   std::chrono::seconds{1});
        }
        std::erase_if(wear.readings, [&](const Reading& r) { return r.at == night + i * 5min; });
    }
    const FirstReview review = first_review(std::move(input));
    const Finding& first = review.findings.front();
    EXPECT_EQ(first.code, "very_low");
    EXPECT_THAT(first.sentence,
                HasSubstr("12 times several levels for one moment, all below 54 mg/dL"));
    const Finding* trust = finding_of(review, "trust");
    ASSERT_NE(trust, nullptr);
    EXPECT_TRUE(std::ranges::any_of(trust->caveats, [](const Caveat& caveat) {
        return caveat.kind == CaveatKind::levels_held &&
               caveat.sentence.find("12 moments") != std::string::npos;
    }));
}

TEST(VeryLow, a_held_level_that_an_episode_tells_already_is_told_once) {
    auto readings = waves(3, 5min);
    dip(readings, midnight + 26h, 30min, 50);
    ReviewInput input = input_of(readings);
    input.wears.front().held = {
        Reading{midnight + 26h, Glucose{4'000, GlucoseUnit::mg_per_dl}, std::chrono::seconds{1}}};
    const FirstReview review = first_review(std::move(input));
    EXPECT_THAT(review.findings.front().sentence, Not(HasSubstr("2 very low stretches")));
}
