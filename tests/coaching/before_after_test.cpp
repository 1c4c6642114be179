// Two wears against each other. Everybody in here is invented.
#include "coaching/before_after.hpp"

#include "coaching/care_for_tests.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <regex>

using namespace tracewright;

namespace {

const std::vector<std::size_t> first = {0};
const std::vector<std::size_t> second = {1};

/// A wear whose days have `hours` (and a wave of about an hour) in range at 130 mg/dL, the rest at
/// 230; levels spread by 44 either way so that a sensor's error moves hours across the edge.
void add_wear(Care& care, int from_day, int days, double hours, double wave = 1) {
    Wear& wear = care.wear(from_day, days);
    for (std::size_t i = 0; i < wear.readings.size(); ++i) {
        const auto day = static_cast<int>(i / 288);
        const double in_range = hours + wave * std::sin(day * 2.3);
        const bool inside = static_cast<double>(i % 288) / 12 < in_range;
        const double level =
            (inside ? 130 : 230) + 88 * (std::fmod(static_cast<double>(i) * 0.618034, 1) - 0.5);
        Reading& reading = wear.readings[i];
        reading = Reading(reading.at, Glucose{rounded_hundredths(level), GlucoseUnit::mg_per_dl},
                          reading.interval());
    }
}

Care client() {
    Care care;
    care.wears.clear();
    return care;
}

BeforeAfter compared(const Care& care, const BeforeAfterSettings& settings = {}) {
    ReviewInput input;
    input.wears = care.wears;
    input.diary = care.diary;
    input.zones = care.clock;
    input.as_of = care.as_of;
    return before_after(input, first, second, client_medicines(care.facts, care.clock), settings);
}

bool has(const Finding& finding, CaveatKind kind) {
    return std::ranges::any_of(finding.caveats,
                               [&](const Caveat& caveat) { return caveat.kind == kind; });
}

std::string all_of(const Finding& finding) {
    std::string text = finding.question + " " + finding.sentence + " " + finding.client_sentence +
                       " " + finding.next.sentence;
    for (const Caveat& caveat : finding.caveats) {
        text += " " + caveat.sentence;
    }
    return text;
}

}  // namespace

TEST(BeforeAfter, the_same_readings_give_nought_exactly_and_no_difference_worth_acting_on) {
    Care care = client();
    add_wear(care, -90, 14, 15);
    add_wear(care, -14, 14, 15);
    const BeforeAfter found = compared(care);
    EXPECT_TRUE(found.same_readings);
    EXPECT_EQ(found.difference, 0);
    EXPECT_EQ(found.finding.answer, Answer::no_difference_worth_acting_on);
    EXPECT_NE(found.finding.sentence.find("0 h, no difference worth acting on"), std::string::npos);
}

TEST(BeforeAfter, days_all_alike_have_an_interval_by_sensor_and_by_days) {
    Care care = client();
    add_wear(care, -90, 14, 15, 0);
    add_wear(care, -14, 14, 16, 0);
    const BeforeAfter found = compared(care);
    EXPECT_NEAR(found.difference, 1, 0.2);
    EXPECT_LT(found.interval95[0], found.interval95[1] - 0.2);
    EXPECT_LT(found.interval95_of_days[0], found.interval95_of_days[1] - 0.2);
    Care flat = client();
    flat.wear(-90, 14, 120);
    flat.wear(-14, 14, 121);
    const BeforeAfter all_in_range = compared(flat);
    EXPECT_LT(all_in_range.interval95[0], all_in_range.interval95[1]);
    EXPECT_LT(all_in_range.interval95_of_days[0], all_in_range.interval95_of_days[1]);
}

TEST(BeforeAfter, the_sensors_error_widens_and_another_kind_more) {
    Care care = client();
    add_wear(care, -90, 14, 14);
    add_wear(care, -14, 14, 15.5);
    const BeforeAfter same = compared(care);
    BeforeAfterSettings none;
    none.sensor_sd = 0;
    const BeforeAfter without = compared(care, none);
    BeforeAfterSettings other;
    other.other_kind = true;
    const BeforeAfter widest = compared(care, other);
    const auto width = [](const BeforeAfter& one) { return one.interval95[1] - one.interval95[0]; };
    EXPECT_GT(width(same), 1.05 * width(without));
    EXPECT_GT(width(widest), width(same));
    EXPECT_EQ(without.sensor_sd, 0);
    EXPECT_NEAR(same.difference, without.difference, 1e-9);
    EXPECT_NEAR(same.difference, 1.5, 0.3);
    EXPECT_TRUE(has(widest.finding, CaveatKind::other_kind_of_sensor));
    EXPECT_TRUE(has(same.finding, CaveatKind::several_wears));
    EXPECT_NEAR(same.interval95_of_days[0], without.interval95[0], 1e-9);
}

TEST(BeforeAfter, a_large_difference_is_more_hours_and_a_medicine_takes_the_credit) {
    Care care = client();
    add_wear(care, -90, 14, 12);
    add_wear(care, -14, 14, 18);
    care.facts.medicines_asked_on = care_day - std::chrono::days{10};
    care.facts.medicines = {{"metformin 500", {}, care_day - std::chrono::days{40}},
                            {"metformin 1000", care_day - std::chrono::days{39}, {}}};
    const BeforeAfter found = compared(care);
    EXPECT_EQ(found.finding.answer, Answer::yes);
    EXPECT_NE(found.finding.sentence.find("more hours in range than before, by over 1 h 12 min"),
              std::string::npos)
        << found.finding.sentence;
    EXPECT_TRUE(has(found.finding, CaveatKind::medicine_changed));
    EXPECT_NE(all_of(found.finding).find("Habits can't take the credit"), std::string::npos);
    EXPECT_NE(all_of(found.finding).find("metformin"), std::string::npos);
    EXPECT_TRUE(has(found.finding, CaveatKind::chosen_because_bad));
    EXPECT_TRUE(found.weekdays_matched);
    care.facts.medicines_asked_on.reset();
    care.facts.medicines.clear();
    EXPECT_TRUE(has(compared(care).finding, CaveatKind::medicines_not_known));
}

TEST(BeforeAfter, is_told_at_the_same_share_of_weekends) {
    Care care = client();
    // Weekends have three hours less; the first wear holds 2 weekend days of 7, the second 4 of 8.
    const auto weekly = [&](int from, int days) {
        Wear& wear = care.wear(from, days);
        for (std::size_t i = 0; i < wear.readings.size(); ++i) {
            const int day = static_cast<int>(i / 288);
            const int weekday = (from + 700 + day) % 7;  // care_day is a Monday
            const double hours = (weekday >= 5 ? 12 : 15) + 0.4 * std::sin(day * 2.3);
            Care::set(wear, static_cast<int>(i), 1,
                      static_cast<double>(i % 288) / 12 < hours ? 140 : 230);
        }
    };
    weekly(-91, 7);
    weekly(-16, 9);  // Saturday to Sunday
    const BeforeAfter found = compared(care);
    EXPECT_NEAR(found.difference, 0, 0.35);
    // The hours told are those of the comparison: without the weekends more they differ no more.
    EXPECT_NEAR(*found.hours_after - *found.hours_before, found.difference, 1e-9);
}

namespace {

/// Minutes of each "N h M min" of a text, in order.
std::vector<int> minutes_told(const std::string& text) {
    std::vector<int> found;
    const std::regex told("(?:(\\d+) h)? ?(?:(\\d+) min)?");
    for (std::sregex_iterator at(text.begin(), text.end(), told), end; at != end; ++at) {
        if (at->str().find_first_of("hm") != std::string::npos) {
            found.push_back(60 * std::atoi((*at)[1].str().c_str()) +
                            std::atoi((*at)[2].str().c_str()));
        }
    }
    return found;
}

}  // namespace

// A day has 24 hours: from 16 h a day nothing gains 13.
TEST(BeforeAfter, an_interval_ends_where_the_day_ends_and_the_numbers_of_a_sentence_add_up) {
    Care care = client();
    add_wear(care, -90, 6, 14, 6);
    add_wear(care, -15, 9, 19, 5);
    BeforeAfterSettings settings;
    settings.sensor_sd = 0.3;
    const BeforeAfter found = compared(care, settings);
    EXPECT_LE(*found.hours_before + found.interval95[1], 24 + 1e-9);
    EXPECT_GE(*found.hours_before + found.interval95[0], -1e-9);
    EXPECT_NEAR(*found.hours_after - *found.hours_before, found.difference, 1e-9);
    const std::string& sentence = found.finding.sentence;
    const auto told = minutes_told(sentence.substr(sentence.find("In range")));
    ASSERT_GE(told.size(), 3U) << sentence;
    EXPECT_EQ(told[0] + told[2], told[1]) << sentence;
}

TEST(BeforeAfter, few_days_or_pregnancy_get_no_verdict_and_ill_days_stay_out) {
    Care care = client();
    add_wear(care, -90, 4, 12);
    add_wear(care, -14, 14, 18);
    EXPECT_EQ(compared(care).finding.answer, Answer::cannot_tell);
    EXPECT_FALSE(compared(care).finding.estimate);
    Care ill = client();
    add_wear(ill, -90, 10, 12);
    add_wear(ill, -14, 10, 18);
    ill.entry(DiaryKind::illness, care_at(-88, 9), "fever");
    EXPECT_EQ(compared(ill).days_before, 9);
    ReviewInput input;
    input.wears = ill.wears;
    input.zones = ill.clock;
    input.goals = consensus_goals(GoalKind::pregnancy);
    const Finding pregnant = before_after(input, first, second, MedicineTimeline{}).finding;
    EXPECT_NE(pregnant.sentence.find("clinic leads"), std::string::npos);
    EXPECT_FALSE(pregnant.estimate);
}

TEST(BeforeAfter, wears_worn_at_once_are_no_before_and_after) {
    Care care = client();
    add_wear(care, -14, 14, 14);
    add_wear(care, -12, 10, 18);
    const BeforeAfter found = compared(care);
    EXPECT_TRUE(found.worn_at_once);
    EXPECT_EQ(found.finding.answer, Answer::cannot_tell);
    EXPECT_FALSE(found.finding.estimate);
    EXPECT_NE(found.finding.sentence.find("wear 1 (2 to 15 February 2026) and wear 2 (4 to "
                                          "13 February 2026) are no before and after"),
              std::string::npos)
        << found.finding.sentence;
    // One record brought in twice is told as such.
    Care twice = client();
    add_wear(twice, -14, 14, 15);
    twice.wears.push_back(twice.wears.front());
    EXPECT_NE(compared(twice).finding.sentence.find("the very same readings"), std::string::npos);
    // Neither are they the other way about.
    std::swap(care.wears[0], care.wears[1]);
    EXPECT_TRUE(compared(care).worn_at_once);
}

TEST(BeforeAfter, few_days_have_their_hours_and_none_has_no_nought) {
    Care care = client();
    add_wear(care, -90, 2, 12, 0);
    add_wear(care, -14, 14, 18);
    const BeforeAfter few = compared(care);
    ASSERT_TRUE(few.hours_before && few.hours_after);
    EXPECT_NEAR(*few.hours_before, *few.hours_before_of_all, 1e-9);
    EXPECT_GT(*few.hours_before, 8);
    care.wears[0].readings.resize(100);  // of no day 70 %
    const BeforeAfter none = compared(care);
    EXPECT_FALSE(none.hours_before);
    EXPECT_TRUE(none.hours_before_of_all);
}

TEST(BeforeAfter, days_seen_in_part_are_why_a_review_tells_other_hours) {
    Care care = client();
    add_wear(care, -90, 14, 14, 0);
    add_wear(care, -14, 14, 14, 0);
    EXPECT_FALSE(has(compared(care).finding, CaveatKind::hours_unseen));
    // Half of a day more, all of it in range, is in a review and not among the days.
    Wear& later = care.wears[1];
    for (int i = 0; i < 144; ++i) {
        later.readings.emplace_back(care_at(0) + i * later.interval,
                                    Glucose{12'000, GlucoseUnit::mg_per_dl}, later.interval);
    }
    const BeforeAfter found = compared(care);
    EXPECT_GT(*found.hours_after_of_all, *found.hours_after);
    EXPECT_TRUE(has(found.finding, CaveatKind::hours_unseen));
    EXPECT_NE(all_of(found.finding).find("Of all the time seen, as a review and the story count"),
              std::string::npos);
}

TEST(BeforeAfter, what_would_tell_is_another_sensor_where_the_sensors_are_the_limit) {
    Care care = client();
    add_wear(care, -90, 14, 14, 2);
    add_wear(care, -14, 14, 15, 2);
    BeforeAfterSettings bad;
    bad.sensor_sd = 0.2;
    const BeforeAfter limited = compared(care, bad);
    EXPECT_EQ(limited.finding.answer, Answer::cannot_tell);
    EXPECT_FALSE(limited.days_needed);
    EXPECT_NE(limited.finding.next.sentence.find("Another sensor"), std::string::npos);
    BeforeAfterSettings good;
    good.sensor_sd = 0.001;
    good.worth_hours = 0.5;
    const BeforeAfter open = compared(care, good);
    EXPECT_TRUE(open.days_needed);
    EXPECT_GT(*open.days_needed, 14);
}

TEST(BeforeAfter, no_text_lulls_or_blames) {
    for (const double hours : {12.0, 14.1, 15.0, 18.0}) {
        for (const double sd : {0.001, 0.04}) {
            Care care = client();
            add_wear(care, -90, 14, 14);
            add_wear(care, -14, 14, hours);
            BeforeAfterSettings settings;
            settings.sensor_sd = sd;
            const std::string all = all_of(compared(care, settings).finding);
            for (const char* word : {"because", "caused", "cured", "safe", " fine", "no lows",
                                     "thanks to", "nan", "  ", ".."}) {
                EXPECT_EQ(all.find(word), std::string::npos) << word << " in: " << all;
            }
        }
    }
}
