#include "findings/first_review.hpp"

#include "findings/review_findings.hpp"
#include "findings/review_input_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::AllOf;
using ::testing::Contains;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

std::vector<FirstReview> various_reviews() {
    std::vector<FirstReview> reviews;
    reviews.push_back(first_review(input_of(waves(14))));
    reviews.push_back(first_review(input_of(waves(2, 15min))));
    reviews.push_back(first_review(input_of({})));
    auto troubled = waves(14, 5min);
    dip(troubled, midnight + 26h, 1h, 45);
    dip(troubled, midnight + 75h, 40min, 65);
    dip(troubled, midnight + 120h, 5h, 320);
    reviews.push_back(first_review(input_of(troubled)));
    return reviews;
}

}  // namespace

TEST(FirstReview, no_text_bears_a_word_that_lulls_or_blames) {
    for (const FirstReview& review : various_reviews()) {
        for (const std::string& text : all_texts(review)) {
            for (const char* word : {"no lows", "safe", " fine", "cured", "because of", "caused by",
                                     "nan", "inf ", "good food", "bad food"}) {
                EXPECT_EQ(lower(text).find(word), std::string::npos) << word << " in: " << text;
            }
        }
    }
}

TEST(FirstReview, every_sentence_ends_as_a_sentence) {
    for (const FirstReview& review : various_reviews()) {
        for (const std::string& text : all_texts(review)) {
            if (!text.empty()) {
                EXPECT_TRUE(text.ends_with('.') || text.ends_with('?')) << text;
                EXPECT_EQ(text.find("  "), std::string::npos) << text;
                EXPECT_EQ(text.find(".."), std::string::npos) << text;
            }
        }
    }
}

TEST(FirstReview, goes_lows_before_hours_before_average_before_spread_before_time_of_day) {
    const FirstReview review = first_review(input_of(waves(14)));
    std::vector<std::string> order;
    for (const Finding& finding : review.findings) {
        order.push_back(finding.code);
    }
    EXPECT_EQ(order, (std::vector<std::string>{"trust", "lows", "in_range", "average", "spread",
                                               "when_high"}));
}

TEST(FirstReview, what_was_not_seen_is_said_where_no_low_was) {
    auto readings = waves(14);
    std::erase_if(readings, [](const Reading& reading) {
        const auto hour = (reading.at - midnight) % 24h;
        return hour >= 3h && hour < 5h;
    });
    const FirstReview review = first_review(input_of(readings));
    EXPECT_EQ(
        finding_of(review, "lows")->sentence,
        "No low was recorded in the 308 h that the sensor saw, 56 h of them at night; 28 h of "
        "night were not seen. 14 days can't rule out rare lows.");
    EXPECT_THAT(finding_of(review, "trust")->caveats[0].sentence, HasSubstr("03:00 to 05:00"));
}

namespace {

/// The first readings of a wave of which nothing is low or high; five minutes each.
ReviewInput a_little(std::size_t readings) {
    std::vector<Reading> all = waves(1);
    all.resize(readings);
    return input_of(all);
}

}  // namespace

// Of less than 70 % of one day (ours) hours of a day can't be told.
TEST(FirstReview, of_well_under_a_day_it_tells_what_was_seen_and_no_hours_of_a_day) {
    struct Row {
        std::size_t readings;
        const char* seen;
        bool told_of_a_day;
    };
    for (const Row& row : {Row{1, "5 min", false}, Row{7, "35 min", false}, Row{24, "2 h", false},
                           Row{201, "16 h 45 min", false}, Row{202, "16 h 50 min", true}}) {
        SCOPED_TRACE(row.readings);
        const FirstReview review = first_review(a_little(row.readings));
        const std::string in_range = finding_of(review, "in_range")->sentence;
        EXPECT_EQ(in_range.find("of the 24 hours") != std::string::npos, row.told_of_a_day)
            << in_range;
        for (const char* code : {"lows", "in_range", "average", "spread", "when_high"}) {
            EXPECT_EQ(finding_of(review, code)->answer == Answer::cannot_tell,
                      !row.told_of_a_day || std::string_view(code) != "when_high")
                << code;
        }
        if (row.told_of_a_day) {
            continue;
        }
        EXPECT_EQ(in_range, std::string(row.seen) + " of the " + row.seen +
                                " that the sensor saw were in range (70 mg/dL to 180 mg/dL): too "
                                "little was seen to tell hours of a day.");
        for (const std::string& text : all_texts(review)) {
            for (const char* words : {"24 hours in range", "a day of the time", "usually called",
                                      "no hour of night was missed", "management indicator"}) {
                EXPECT_EQ(text.find(words), std::string::npos) << text;
            }
        }
    }
}

TEST(FirstReview, of_a_short_trace_by_day_it_tells_of_no_night) {
    EXPECT_EQ(finding_of(first_review(a_little(7)), "lows")->sentence,
              "No low was recorded in the 35 min that the sensor saw, 35 min of them at night. So "
              "short a time can't rule out lows.");
    std::vector<Reading> by_day = waves(1);
    by_day.erase(by_day.begin(), by_day.begin() + 120);
    by_day.resize(24);
    EXPECT_EQ(finding_of(first_review(input_of(by_day)), "lows")->sentence,
              "No low was recorded in the 2 h that the sensor saw, none of them at night. So short "
              "a time can't rule out lows.");
}

// Below the range for less than the 15 minutes an episode needs: said, where no low is counted.
TEST(FirstReview, a_glitch_that_leads_as_very_low_is_not_followed_by_no_low_recorded) {
    std::vector<Reading> readings = waves(14);
    readings[1000] = Reading{readings[1000].at, mg(12), 5min, Limit::none, true};
    const FirstReview review = first_review(input_of(readings));
    ASSERT_EQ(review.findings.front().code, "very_low");
    EXPECT_EQ(
        finding_of(review, "lows")->sentence,
        "No low was seen to last 15 minutes in the 336 h that the sensor saw, 84 h of them at "
        "night; no hour of night was missed. What was too low to be believed is told first and "
        "counts in no time. 14 days can't rule out rare lows.");
    // One that is believed and too short leads nothing, and is told all the same.
    readings[1000] = Reading{readings[1000].at, mg(60), 5min};
    EXPECT_THAT(finding_of(first_review(input_of(readings)), "lows")->sentence,
                HasSubstr("Shorter stretches below 70 mg/dL: 5 min in all."));
}

TEST(FirstReview, a_very_low_finger_prick_is_told_apart_from_what_the_sensor_saw) {
    ReviewInput input = input_of(waves(3));
    DiaryEntry prick;
    prick.kind = DiaryKind::finger_prick;
    prick.at = midnight + 30h;
    prick.glucose = mg(50);
    input.diary.push_back(prick);
    EXPECT_THAT(
        finding_of(first_review(std::move(input)), "lows")->sentence,
        HasSubstr("The very low value told first was not seen by the sensor counted here."));
}

TEST(FirstReview, one_hour_of_night_was_not_seen) {
    auto readings = waves(14);
    std::erase_if(readings, [](const Reading& reading) {
        return reading.at >= midnight + 27h && reading.at < midnight + 28h;
    });
    EXPECT_THAT(finding_of(first_review(input_of(readings)), "lows")->sentence,
                HasSubstr("1 h of night was not seen."));
}

TEST(FirstReview, lows_are_counted_with_and_without_suspect_stretches) {
    auto readings = waves(14);
    dip(readings, midnight + 10min, 20min, 65);        // warm-up
    dip(readings, midnight + 26h - 10min, 50min, 95);  // no faster than glucose falls
    dip(readings, midnight + 26h - 5min, 40min, 78);
    dip(readings, midnight + 26h, 30min, 64);
    const FirstReview review = first_review(input_of(readings));
    EXPECT_THAT(
        finding_of(review, "lows")->sentence,
        HasSubstr("2 low stretches (below 70 mg/dL) on 2 of 14 days, 2 of them at night; "
                  "lowest 64 mg/dL on Tue 3 March 02:00. Without the suspect stretches: 1."));
    EXPECT_EQ(finding_of(review, "lows")->next.step, NextStep::contact_prescriber);
}

TEST(FirstReview, a_coach_s_word_on_a_stretch_holds_for_its_lows) {
    auto readings = waves(14);
    dip(readings, midnight + 26h - 10min, 50min, 95);
    dip(readings, midnight + 26h - 5min, 40min, 78);
    dip(readings, midnight + 26h, 30min, 64);
    ReviewInput input = input_of(readings);
    const Interval low{midnight + 26h - 10min, midnight + 26h + 50min};
    EXPECT_THAT(finding_of(first_review(input), "lows")->sentence,
                Not(HasSubstr("Without the suspect stretches")));
    input.suspect.told = {{low, true, "slept on the sensor (invented)"}};
    const FirstReview review = first_review(input);
    EXPECT_THAT(
        finding_of(review, "lows")->sentence,
        AllOf(HasSubstr("1 low stretch"),
              HasSubstr("Without the suspect stretches: 0. What the coach marked touches 1 of "
                        "these low stretches.")));
    EXPECT_THAT(finding_of(review, "trust")->caveats,
                Contains(Field(&Caveat::sentence,
                               HasSubstr("marked and still counted: by a coach, 1 stretch, "
                                         "1 h in all"))));
}

TEST(FirstReview, what_a_coach_marked_is_one_stretch_whatever_sensors_were_worn) {
    ReviewInput input = input_of(waves(14));
    const auto second = wears_of(waves(7, 15min, midnight + 50h + 4min), "second.csv");
    input.wears.insert(input.wears.end(), second.begin(), second.end());
    input.suspect.told = {{{midnight + 48h, midnight + 52h}, true, "fell (invented)"}};
    EXPECT_THAT(finding_of(first_review(std::move(input)), "trust")->caveats,
                Contains(Field(&Caveat::sentence, HasSubstr("by a coach, 1 stretch, 4 h in all"))));
}

TEST(FirstReview, lows_of_a_single_reading_are_told_with_their_number) {
    auto readings = waves(14, 15min);
    dip(readings, midnight + 26h, 15min, 66);
    const auto caveats_of_lows = [&] {
        return finding_of(first_review(input_of(readings)), "lows")->caveats;
    };
    EXPECT_THAT(caveats_of_lows(),
                Contains(Field(&Caveat::sentence, "One rests on a single reading.")));
    dip(readings, midnight + 50h, 15min, 66);
    EXPECT_THAT(caveats_of_lows(),
                Contains(Field(&Caveat::sentence, "2 rest on a single reading.")));
}

// Three hours low are no sensor's fault because the step at their end is.
TEST(FirstReview, a_low_that_only_reaches_into_a_suspect_stretch_stays_one_without_it) {
    auto readings = waves(14);
    for (int i = 0; i < 12; ++i) {  // begins and ends faster than glucose moves
        dip(readings, midnight + 26h + i * 15min, 15min, 60 + i % 5);
    }
    const FirstReview review = first_review(input_of(readings));
    EXPECT_THAT(finding_of(review, "lows")->sentence, HasSubstr("1 low stretch"));
    EXPECT_THAT(finding_of(review, "lows")->sentence,
                HasSubstr("Without the suspect stretches: 1."));
}

TEST(FirstReview, old_data_never_read_as_calm) {
    ReviewInput input = input_of(waves(14));
    input.as_of = input.wears[0].readings.back().at + 16 * 24h;
    const FirstReview review = first_review(std::move(input));
    EXPECT_THAT(review.last_reading, HasSubstr("Sun 15 March 23:55, 16 days ago"));
    EXPECT_THAT(review.last_reading, HasSubstr("Nothing can be said since then"));
}

TEST(FirstReview, of_young_data_it_says_what_is_not_known_and_from_a_day_on_that_nothing_can_be) {
    const auto told = [](std::chrono::seconds age) {
        ReviewInput input = input_of(waves(2));
        input.as_of = input.wears[0].readings.back().at + age;
        return first_review(std::move(input)).last_reading;
    };
    EXPECT_THAT(told(35min), HasSubstr("35 minutes ago. What came after it is not known."));
    EXPECT_THAT(told(24h - 1s), HasSubstr("What came after it is not known."));
    EXPECT_THAT(told(24h), HasSubstr("Nothing can be said since then."));
}

TEST(FirstReview, without_readings_says_so_and_claims_nothing) {
    const FirstReview review = first_review(input_of({}));
    EXPECT_EQ(review.last_reading, "There is no reading: nothing can be said.");
    for (const Finding& finding : review.findings) {
        EXPECT_EQ(finding.answer, Answer::cannot_tell) << finding.code;
    }
}

TEST(FirstReview, every_estimate_has_an_interval_and_days_behind_it) {
    const FirstReview review = first_review(input_of(waves(14)));
    for (const char* code : {"in_range", "average", "spread"}) {
        const Finding* finding = finding_of(review, code);
        ASSERT_TRUE(finding->estimate.has_value()) << code;
        ASSERT_TRUE(finding->estimate->interval95.has_value()) << code;
        EXPECT_LT((*finding->estimate->interval95)[0], (*finding->estimate->interval95)[1]) << code;
        EXPECT_EQ(finding->evidence.used, 14) << code;
    }
}

// T8: 8 valid days of 14.
TEST(FirstReview, eight_days_of_fourteen_are_below_the_consensus_and_still_told) {
    ReviewInput input = input_of(waves(8));
    input.window = Interval{midnight, midnight + 14 * 24h};
    const FirstReview review = first_review(std::move(input));
    const Finding* trust = finding_of(review, "trust");
    EXPECT_EQ(trust->answer, Answer::cannot_tell);
    EXPECT_THAT(trust->sentence, HasSubstr("57 %"));
    EXPECT_EQ(trust->caveats[0].kind, CaveatKind::below_consensus_coverage);
    EXPECT_TRUE(finding_of(review, "average")->estimate.has_value());
    EXPECT_THAT(finding_of(review, "spread")->caveats[0].sentence,
                HasSubstr("needs about 21 days"));
}

// Where no number has an interval, none is promised.
TEST(FirstReview, two_days_of_fourteen_have_no_interval_to_read_by) {
    for (const int days : {2, 4}) {
        ReviewInput input = input_of(waves(days));
        input.window = Interval{midnight, midnight + 14 * 24h};
        const FirstReview review = first_review(std::move(input));
        const std::string told = finding_of(review, "trust")->caveats.at(0).sentence;
        const std::string spread = finding_of(review, "spread")->caveats.at(0).sentence;
        const bool some = days > 2;
        EXPECT_EQ(told.find("read every number with its interval") != std::string::npos, some);
        EXPECT_EQ(told.find("can't be told") != std::string::npos, !some);
        EXPECT_EQ(spread.find("shown with its interval") != std::string::npos, some) << spread;
        EXPECT_EQ(spread.find("too few days for an interval") != std::string::npos, !some);
    }
}

// T3: two sensors of different kinds at once.
TEST(FirstReview, two_sensors_at_once_are_counted_once_and_the_choice_is_said) {
    ReviewInput input = input_of(waves(10));
    auto other = wears_of(waves(10, 15min), "other.csv");
    other[0].label = "wear 2";
    input.wears.push_back(other[0]);
    const FirstReview review = first_review(std::move(input));
    EXPECT_EQ(review.fitness.sensed, 240h);
    const auto& caveats = finding_of(review, "trust")->caveats;
    const auto told = std::find_if(caveats.begin(), caveats.end(), [](const Caveat& c) {
        return c.kind == CaveatKind::two_sensors_at_once;
    });
    ASSERT_NE(told, caveats.end());
    EXPECT_THAT(told->sentence, HasSubstr("wear 1 is counted because it reports more often"));
}

TEST(FirstReview, moving_a_review_keeps_its_days_views_alive) {
    FirstReview review = first_review(input_of(waves(3)));
    const FirstReview moved = std::move(review);
    EXPECT_EQ(sensed(moved.days[1].view), 24h);
}

TEST(FirstReview, pregnancy_gets_no_goal_and_the_clinic_leads) {
    ReviewInput input = input_of(waves(14));
    input.goals = consensus_goals(GoalKind::pregnancy);
    const FirstReview review = first_review(std::move(input));
    EXPECT_THAT(finding_of(review, "in_range")->sentence, HasSubstr("clinic leads"));
    EXPECT_THAT(finding_of(review, "in_range")->sentence, ::testing::Not(HasSubstr("70 %")));
    EXPECT_EQ(review.sufficiency.size(), 3U);
    for (const Sufficiency& one : review.sufficiency) {
        EXPECT_THAT(one.sentence, ::testing::Not(HasSubstr("140 mg/dL")));
    }
    EXPECT_EQ(first_review(input_of(waves(14))).sufficiency.size(), 4U);
}

TEST(FirstReview, the_title_does_not_name_a_day_only_the_last_reading_stands_into) {
    auto readings = waves(14, 15min, midnight + 7min);
    std::erase_if(readings, [](const Reading& r) { return r.at >= midnight + 14 * 24h; });
    const FirstReview review = first_review(input_of(std::move(readings)));
    EXPECT_GT(review.trace.window.to, midnight + 14 * 24h);
    EXPECT_EQ(review_title(review), "First review, 2 to 15 March 2026");
}

// Safety rule 11: pregnant, planning or unsure.
TEST(FirstReview, in_pregnancy_shows_63_to_140_and_says_who_leads) {
    for (const GlucoseUnit unit : {GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l}) {
        ReviewInput input = input_of(waves(14));
        input.goals = consensus_goals(GoalKind::pregnancy);
        input.unit = unit;
        const FirstReview review = first_review(std::move(input));
        const Finding* in_range = finding_of(review, "in_range");
        ASSERT_NE(in_range, nullptr);
        EXPECT_THAT(in_range->sentence, HasSubstr(unit == GlucoseUnit::mg_per_dl
                                                      ? "between 63 mg/dL and 140 mg/dL"
                                                      : "between 3.5 mmol/L and 7.8 mmol/L"));
        EXPECT_THAT(in_range->sentence, HasSubstr("the maternity or diabetes clinic leads"));
        for (const std::string& text : all_texts(review)) {
            EXPECT_EQ(text.find("180 mg"), std::string::npos) << text;
            EXPECT_EQ(text.find("10.0 mmol"), std::string::npos) << text;
            EXPECT_EQ(text.find("The goal"), std::string::npos) << text;
        }
    }
}

TEST(FirstReview, days_without_time_in_range_have_none_that_had_the_most) {
    auto readings = waves(14);
    dip(readings, readings.front().at, std::chrono::days{15}, 300);
    EXPECT_EQ(first_review(input_of(std::move(readings))).one_thing_seen,
              "No day had time in range.");
    EXPECT_THAT(first_review(input_of(waves(14))).one_thing_seen,
                ::testing::HasSubstr("24 h in range, the most of any day"));
}

TEST(FirstReview, a_day_alone_is_compared_with_no_other) {
    auto readings = waves(1);
    dip(readings, readings.front().at, std::chrono::hours{2}, 300);
    const FirstReview review = first_review(input_of(std::move(readings)));
    EXPECT_THAT(review.one_thing_seen, ::testing::HasSubstr("in range."));
    EXPECT_THAT(review.one_thing_to_ask, ::testing::HasSubstr("h were above"));
    EXPECT_EQ((review.one_thing_seen + review.one_thing_to_ask).find("any"), std::string::npos);
}
