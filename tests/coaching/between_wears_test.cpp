// What is due between wears, and the words to copy. Everybody in here is invented.
#include "coaching/reminders.hpp"

#include "coaching/care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

using namespace tracewright;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

using std::chrono::days;

KeptTrial trial_from(CivilDate first, int pairs = 6) {
    KeptTrial kept;
    kept.number = 3;
    kept.trial.code = "walk-after-dinner";
    kept.trial.question = "Does a walk change the rise?";
    kept.trial.a = "walk 15 minutes";
    kept.trial.b = "no walk";
    kept.trial.seed = 7;
    kept.trial.blocks = blocks_from(first, pairs, 0);
    draw_arms(kept.trial.blocks, Draw::fair_coins, 7);
    return kept;
}

/// A client of whom nothing is due: the last wear is over and was reviewed.
CaseloadClient quiet() {
    Care care;
    CaseloadClient client;
    client.handle = "c1";
    client.name = "Tansy (invented)";
    client.facts = care.facts;
    client.wears = care.wears;
    client.wears[0].end = WearEnd::removed;
    client.last_review = care_at(0, 11);
    client.last_reading = client.wears[0].readings.back().at;
    return client;
}

std::vector<DueCheck> checks(const CaseloadClient& client, Instant as_of) {
    return due_checks(client, ZoneHistory(Zone::fixed(0s)), as_of);
}

ClientReminders reminded(const CaseloadClient& client, Instant as_of,
                         const ReminderRules& rules = {}) {
    return reminders_for(client, rules, as_of);
}

}  // namespace

TEST(KeptTrial, is_planned_running_ended_or_stopped) {
    KeptTrial kept = trial_from(care_day);
    EXPECT_EQ(state_of(kept, care_day - days{1}), TrialState::planned);
    EXPECT_EQ(state_of(kept, care_day), TrialState::running);
    EXPECT_EQ(state_of(kept, kept.trial.last_day()), TrialState::running);
    EXPECT_EQ(state_of(kept, kept.trial.last_day() + days{1}), TrialState::ended);
    kept.stopped_on = care_day;
    EXPECT_EQ(state_of(kept, care_day + days{40}), TrialState::stopped);
    EXPECT_FALSE(goes_on(kept, care_day));
}

TEST(KeptTrial, days_before_today_that_were_not_told_are_named) {
    KeptTrial kept = trial_from(care_day);
    EXPECT_TRUE(not_told(kept, care_day).empty());
    const CivilDate second = kept.trial.blocks[0].days[1];
    EXPECT_EQ(not_told(kept, second), std::vector{care_day});
    kept.done[care_day] = ArmDone::neither;
    EXPECT_TRUE(not_told(kept, second).empty());
    EXPECT_EQ(allotted_a(kept.trial, care_day), kept.trial.blocks[0].a_first);
    EXPECT_FALSE(allotted_a(kept.trial, care_day - days{1}));
}

TEST(KeptTrial, a_stopped_one_is_told_as_stopped_and_gives_no_answer) {
    KeptTrial kept = trial_from(care_day - days{60});
    kept.stopped_on = care_day - days{50};
    kept.stopped_because = "a cold";
    const TrialReading reading = read_kept(kept, ReviewInput{});
    EXPECT_FALSE(reading.ended);
    EXPECT_EQ(reading.finding.answer, Answer::cannot_tell);
    EXPECT_THAT(reading.finding.sentence, HasSubstr("a cold"));
    EXPECT_FALSE(reading.finding.estimate);
}

TEST(DueChecks, a_day_of_a_trial_says_its_arm_and_asks_for_the_day_before) {
    CaseloadClient client = quiet();
    client.trials = {trial_from(care_day - days{2})};
    const CivilDate day = client.trials[0].trial.blocks[1].days[0];
    const auto found = checks(client, Instant{day.time_since_epoch()} + 9h);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].kind, CheckKind::trial_day);
    const bool a = *allotted_a(client.trials[0].trial, day);
    EXPECT_THAT(found[0].why, HasSubstr(a ? "A (walk 15 minutes)" : "B (no walk)"));
    EXPECT_THAT(found[0].next, HasSubstr("(2 days are not told yet)"));
    EXPECT_THAT(found[0].text, HasSubstr("just tell me what you did"));
}

// Safety rule 11: pregnancy told during a trial or while a change is agreed stops both.
TEST(DueChecks, what_pregnancy_has_closed_is_not_sent_as_a_thing_to_do) {
    CaseloadClient client = quiet();
    client.trials = {trial_from(care_day)};
    client.facts.agreed_change = AgreedChange{"a walk", care_day - days{2}, care_day + days{9}};
    ASSERT_EQ(checks(client, care_at(0, 12)).size(), 1U);
    ASSERT_FALSE(checks(client, care_at(0, 12))[0].text.empty());
    client.facts.cautions.pregnancy = Pregnancy::pregnant;
    const auto found = checks(client, care_at(0, 12));
    ASSERT_EQ(found.size(), 2U);
    for (const DueCheck& check : found) {
        EXPECT_THAT(check.why, HasSubstr("not to be gone on with now"));
        EXPECT_THAT(check.why, HasSubstr("maternity or diabetes clinic leads"));
        EXPECT_TRUE(check.text.empty());
    }
}

TEST(DueChecks, an_ended_trial_is_due_until_it_was_read) {
    CaseloadClient client = quiet();
    client.trials = {trial_from(care_day - days{30})};
    const auto found = checks(client, care_at(0, 12));
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].kind, CheckKind::trial_ended);
    EXPECT_THAT(found[0].why, HasSubstr("was not read"));
    client.last_trial_read = care_at(-29, 12);  // a look before its end is no reading
    EXPECT_EQ(checks(client, care_at(0, 12)).size(), 1U);
    client.last_trial_read = care_at(0, 11);
    EXPECT_TRUE(checks(client, care_at(0, 12)).empty());
    client.last_trial_read.reset();
    client.trials[0].stopped_on = care_day - days{25};
    EXPECT_TRUE(checks(client, care_at(0, 12)).empty());
}

TEST(DueChecks, the_third_day_of_a_wear_from_48_hours_to_96) {
    CaseloadClient client = quiet();
    Care care;
    client.wears = {care.wear(0, 5)};
    client.last_review.reset();
    const Instant start = client.wears[0].start;
    EXPECT_TRUE(checks(client, start + 48h - 1s).empty());
    ASSERT_EQ(checks(client, start + 48h).size(), 1U);
    EXPECT_EQ(checks(client, start + 48h)[0].kind, CheckKind::third_day);
    EXPECT_TRUE(checks(client, start + 96h).empty());
    client.last_review = start + 49h;
    EXPECT_TRUE(checks(client, start + 50h).empty());
}

// 90 days: A1c looks back 8 to 12 weeks (statistics of docs/methods/a1c.md).
TEST(DueChecks, a_laboratory_test_is_due_to_the_day) {
    CaseloadClient client = quiet();
    client.facts.labs = {{care_day - days{90}, "HbA1c", 7.1, "%"}};
    ASSERT_EQ(checks(client, care_at(0, 12)).size(), 1U);
    EXPECT_EQ(checks(client, care_at(0, 12))[0].kind, CheckKind::laboratory);
    client.facts.labs[0].on += days{1};
    EXPECT_TRUE(checks(client, care_at(0, 12)).empty());
    client.facts.labs[0].on -= days{40};
    client.facts.earlier_changes = {AgreedChange{"a walk", care_day - days{89}, {}}};
    EXPECT_TRUE(checks(client, care_at(0, 12)).empty());
}

TEST(DueChecks, the_two_hour_check_is_for_the_coach_and_its_words_spare_who_should_see_no_numbers) {
    CaseloadClient client = quiet();
    Care care;
    care.meal(care_at(0, 9), 50);
    care.entry(DiaryKind::finger_prick, care_at(0, 9) - 10min).glucose =
        Glucose{10'000, GlucoseUnit::mg_per_dl};
    std::ranges::stable_sort(care.diary, {}, &DiaryEntry::at);
    client.diary = care.diary;
    ASSERT_EQ(checks(client, care_at(0, 11, 30)).size(), 1U);
    EXPECT_THAT(checks(client, care_at(0, 11, 30))[0].text, HasSubstr("two hours after breakfast"));
    client.facts.cautions.eating.positive = Answered::yes;
    ASSERT_EQ(checks(client, care_at(0, 11, 30)).size(), 1U);
    EXPECT_TRUE(checks(client, care_at(0, 11, 30))[0].text.empty());
    EXPECT_TRUE(checks(client, care_at(0, 10, 44)).empty());
}

TEST(Reminders, wait_through_the_quiet_hours_by_the_clients_clock) {
    CaseloadClient client = quiet();
    client.facts.agreed_change = AgreedChange{"a walk", care_day - days{20}, care_day};
    EXPECT_EQ(reminded(client, care_at(0, 12)).reminders.at(0).not_before, care_at(0, 12));
    EXPECT_EQ(reminded(client, care_at(0, 21)).reminders.at(0).not_before, care_at(1, 8));
    EXPECT_EQ(reminded(client, care_at(1, 3)).reminders.at(0).not_before, care_at(1, 8));
    EXPECT_EQ(reminded(client, care_at(1, 8)).reminders.at(0).not_before, care_at(1, 8));
    client.facts.zones = {{"Asia/Tokyo", {}}};  // nine hours ahead: noon is 21:00 there
    EXPECT_EQ(reminded(client, care_at(0, 12)).reminders.at(0).not_before, care_at(0, 23));
    ReminderRules none;
    none.quiet_from = none.quiet_to = 0min;
    EXPECT_EQ(reminded(client, care_at(0, 12), none).reminders.at(0).not_before, care_at(0, 12));
}

TEST(Reminders, what_is_switched_off_or_beyond_the_days_most_is_not_copied) {
    CaseloadClient client = quiet();
    client.facts.agreed_change = AgreedChange{"a walk", care_day - days{20}, care_day};
    client.facts.labs = {{care_day - days{200}, "HbA1c", 7.1, "%"}};
    client.facts.agreed_change->agreed_on = care_day - days{120};
    ASSERT_EQ(reminded(client, care_at(0, 12)).reminders.size(), 2U);
    ReminderRules rules;
    rules.most_a_day = 1;
    EXPECT_EQ(reminded(client, care_at(0, 12), rules).reminders.size(), 1U);
    EXPECT_EQ(reminded(client, care_at(0, 12), rules).waiting, 1);
    rules.off = {"agreed_change", "laboratory"};
    EXPECT_TRUE(reminded(client, care_at(0, 12), rules).reminders.empty());
}

// Safety: the first two levels of the ladder can't be turned off.
TEST(Reminders, what_is_unsafe_stands_apart_from_all_rules) {
    CaseloadClient client = quiet();
    StandingEscalation low;
    low.escalation = {Rung::same_day, "very_low@x", care_at(-1, 2), "47 min below 54 mg/dL",
                      "Tell the prescriber."};
    low.first_seen = care_at(0, 8);
    client.escalations = {low};
    ReminderRules strict;
    strict.most_a_day = 0;
    for (const char* kind : reminder_kinds) {
        strict.off.emplace_back(kind);
    }
    const auto told = reminded(client, care_at(1, 2), strict);  // in the night
    ASSERT_EQ(told.first.size(), 1U);
    EXPECT_THAT(told.first[0], HasSubstr("47 min below 54 mg/dL"));
    client.escalations[0].answer = "Sorrel: rang the prescriber";
    EXPECT_TRUE(reminded(client, care_at(1, 2), strict).first.empty());
}

TEST(Reminders, a_wear_that_fell_silent_or_ends_is_asked_about) {
    CaseloadClient client = quiet();
    Care care;
    client.wears = {care.wear(-13, 10)};
    client.last_review = care_at(0, 1);
    const auto told = reminded(client, care_at(0, 12)).reminders;
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told[0].kind, "no_data");
    EXPECT_THAT(told[0].text, HasSubstr("call your clinic"));
    EXPECT_EQ(told[1].kind, "wear_ending");
}

TEST(Reminders, no_word_of_them_bears_a_value_or_a_score) {
    CaseloadClient client = quiet();
    client.trials = {trial_from(care_day)};
    client.facts.agreed_change = AgreedChange{"a walk", care_day - days{20}, care_day};
    ReminderRules all;
    all.most_a_day = 10;
    for (const Reminder& one : reminded(client, care_at(0, 12), all).reminders) {
        for (const char* word : {"mg/dL", "mmol", "%", "well done", "streak", "fail"}) {
            EXPECT_EQ(one.text.find(word), std::string::npos) << one.text;
        }
    }
}
