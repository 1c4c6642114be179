// Candidate changes, ranked behind their gates. Everybody in here is invented.
#include "coaching/plan.hpp"

#include "coaching/agreeing.hpp"
#include "coaching/before_after.hpp"
#include "coaching/care_for_tests.hpp"
#include "coaching/check_plan.hpp"
#include "coaching/plan_words.hpp"
#include "coaching/trial_templates.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace tracewright;
using ::testing::HasSubstr;

namespace {

ReviewInput input_of(const Care& care) {
    ReviewInput input;
    input.wears = care.wears;
    input.diary = care.diary;
    std::ranges::stable_sort(input.diary, {}, &DiaryEntry::at);
    input.zones = care.clock;
    input.as_of = care.as_of;
    return input;
}

Plan planned(const Care& care) {
    const ReviewInput input = input_of(care);
    return care.ask([&](const CareInput& asked) { return plan_for(input, asked); });
}

/// Dinner at 19:00 from 150 mg/dL; for three hours `rise` higher, above 180 without a walk.
void dinner(Care& care, Wear& wear, int day, double rise, bool walked) {
    care.meal(care_at(day, 19), 60);
    if (walked) {
        care.entry(DiaryKind::movement, care_at(day, 19, 20), "walk");
    }
    for (Reading& reading : wear.readings) {
        if (reading.at > care_at(day, 19) && reading.at <= care_at(day, 22)) {
            reading =
                Reading(reading.at, Glucose{rounded_hundredths(150 + rise), GlucoseUnit::mg_per_dl},
                        reading.interval());
        }
    }
}

/// Twenty-eight dinners, every fourth with a walk, after which glucose stays in range.
Care walker() {
    Care care;
    care.wears.clear();
    Wear& wear = care.wear(-28, 28, 150);
    for (int day = -28; day < 0; ++day) {
        const bool walked = day % 4 == 0;
        dinner(care, wear, day, (walked ? 15 : 65) + 6 * std::sin(day * 2.4), walked);
    }
    return care;
}

/// The same far above the range all day: what a walk takes off brings no reading into it.
Care walker_far_above() {
    Care care;
    care.wears.clear();
    Wear& wear = care.wear(-28, 28, 300);
    for (int day = -28; day < 0; ++day) {
        const bool walked = day % 4 == 0;
        dinner(care, wear, day, 150 + (walked ? 15 : 25) + 6 * std::sin(day * 2.4), walked);
    }
    return care;
}

const RankedCandidate* ranked(const Plan& plan, std::string_view code) {
    const auto found = std::ranges::find_if(
        plan.ranked, [&](const RankedCandidate& one) { return one.change->code == code; });
    return found == plan.ranked.end() ? nullptr : &*found;
}

const ClosedCandidate* closed(const Plan& plan, std::string_view code) {
    const auto found = std::ranges::find_if(
        plan.closed, [&](const ClosedCandidate& one) { return one.change->code == code; });
    return found == plan.closed.end() ? nullptr : &*found;
}

std::string all_of(const Plan& plan) {
    std::string text = plan.sentence;
    for (const RankedCandidate& one : plan.ranked) {
        for (const std::string& sentence : one.sentences) {
            text += " " + sentence;
        }
        for (const std::string& caution : one.cautions) {
            text += " " + caution;
        }
    }
    return text + (plan.check ? " " + plan.check->words : "");
}

}  // namespace

// Protein and vegetables 10 min before starch vs all together: ratio 0.56, log SE 0.22
// (10.1136/bmjdrc-2017-000440). Against starch first is not how people eat: not used.
TEST(OthersOfCandidate, a_ratio_is_taken_of_the_own_mean_rise_halved_and_widened) {
    const auto others = others_of(*candidate_called("vegetables-first-dinner"), {60, 15});
    ASSERT_EQ(others.rows.size(), 1U);
    EXPECT_THAT(others.rows[0].habit, HasSubstr("vs all together"));
    ASSERT_TRUE(others.prior);
    EXPECT_NEAR(others.prior->mean, -0.44 * 60 / 2, 1e-9);
    EXPECT_NEAR(others.prior->deviation, 0.44 * 60, 1e-9);  // 2 SE is 2 * 0.56 * 0.22 * 60 = 14.8
}

// Exercise soon after a meal vs sitting: SMD -0.55 (-0.75 to -0.34), 10.1007/s40279-022-01808-7.
TEST(OthersOfCandidate, a_standardised_difference_is_taken_of_the_own_spread) {
    const auto others = others_of(*candidate_called("walk-after-dinner"), {60, 15});
    ASSERT_TRUE(others.prior);
    EXPECT_NEAR(others.prior->mean, -0.55 * 15 / 2, 1e-9);
    EXPECT_NEAR(others.prior->deviation, 0.55 * 15, 1e-9);
    EXPECT_FALSE(others_of(*candidate_called("walk-after-dinner"), {}).prior);
}

// 3 min each half hour: -2.7 mmol/L walking (10.1007/s00125-016-4169-z), +0.7 with resistance
// (10.2337/dc20-1410): they disagree, so neither is used.
TEST(OthersOfCandidate, rows_that_disagree_give_no_prior) {
    const auto others = others_of(*candidate_called("sitting-broken-up"), {150, 20});
    EXPECT_GE(others.rows.size(), 2U);
    EXPECT_TRUE(others.conflict);
    EXPECT_FALSE(others.prior);
}

// The rule, for every candidate whose row is in the outcome's own unit.
TEST(OthersOfCandidate, every_prior_is_as_wide_as_the_effect_it_is_half_of) {
    int priors = 0;
    for (const CandidateChange& candidate : candidate_changes()) {
        if (const auto prior = others_of(candidate, {60, 15}).prior) {
            EXPECT_GE(prior->deviation, 2 * std::abs(prior->mean) - 1e-9) << candidate.code;
            ++priors;
        }
    }
    EXPECT_GE(priors, 6);
}

TEST(Candidates, none_names_a_medicine_and_each_trial_is_a_template) {
    Care care;
    for (const CandidateChange& candidate : candidate_changes()) {
        const auto gates = care.ask([&](const CareInput& asked) {
            return gates_before_offer(candidate.proposed, candidate.words, asked);
        });
        EXPECT_TRUE(gates.empty()) << candidate.code;
        if (*candidate.trial != '\0') {
            EXPECT_NE(trial_template_called(candidate.trial), nullptr) << candidate.code;
        }
        if (candidate.cause) {
            EXPECT_TRUE(can_be_asked(candidate.outcome, *candidate.cause)) << candidate.code;
        }
    }
}

TEST(Candidates, effort_is_counted_by_its_rule) {
    EXPECT_EQ(effort_of({}), Effort::little);
    EXPECT_EQ(effort_of({true, false, false}), Effort::some);
    EXPECT_EQ(effort_of({false, true, true}), Effort::much);
    EXPECT_EQ(effort_words({true, false, false}), "some: it takes over ten minutes of the day");
}

// 21 of 28 dinners stand three hours above 180 mg/dL and would not with a walk: 3 * 21 / 28 = 2.25
// h a day at the client's own effect; the prior draws it in.
TEST(Plan, a_change_that_the_own_days_show_is_worth_agreeing) {
    const Care care = walker();
    const Plan plan = planned(care);
    const RankedCandidate* walk = ranked(plan, "walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    EXPECT_EQ(plan.ranked.front().change, walk->change);
    EXPECT_EQ(walk->says, CandidateSays::worth_agreeing) << all_of(plan);
    EXPECT_EQ(walk->days_touched, 21);
    EXPECT_GT(walk->hours, 1.5);
    EXPECT_LE(walk->hours, 2.26);
    EXPECT_GT(walk->probability, 0.9);
    ASSERT_TRUE(walk->own && walk->both);
    EXPECT_EQ(plan.says, PlanSays::agree_on_one);
    EXPECT_THAT(plan.sentence, HasSubstr("walk 15 minutes after dinner"));
    ASSERT_TRUE(plan.check);
    EXPECT_TRUE(plan.check->days || plan.check->pairs) << plan.check->words;
    // Read by people: no trial's code name.
    EXPECT_THAT(plan.check->words + plan.check->by, Not(HasSubstr("walk-after-dinner")));
}

TEST(Plan, what_others_found_stands_apart_from_the_own_days) {
    const Plan plan = planned(walker());
    const RankedCandidate* walk = ranked(plan, "walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    EXPECT_THAT(walk->sentences[1], HasSubstr("This client's own days: "));
    EXPECT_THAT(walk->sentences[2], HasSubstr("In other people, apart from that: "));
    EXPECT_THAT(walk->sentences[2], HasSubstr("10.1007/s40279-022-01808-7"));
    EXPECT_EQ(walk->sentences[1].find("SMD"), std::string::npos);
    EXPECT_EQ(walk->own->finding.sentence.find("SMD"), std::string::npos);
}

// Others alone never make a change worth agreeing on: the wear had no evidence for it.
TEST(Plan, without_own_days_it_is_find_out_first_at_most) {
    Care care;
    care.wears.clear();
    Wear& wear = care.wear(-14, 14, 150);
    for (int day = -14; day < 0; ++day) {
        dinner(care, wear, day, 65 + 6 * std::sin(day * 2.4), false);
    }
    const Plan plan = planned(care);
    for (const RankedCandidate& one : plan.ranked) {
        EXPECT_NE(one.says, CandidateSays::worth_agreeing) << one.change->code;
    }
    const RankedCandidate* walk = ranked(plan, "walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    EXPECT_FALSE(walk->own);
    EXPECT_EQ(walk->days_touched, 14);
    EXPECT_THAT(walk->sentences[1], HasSubstr("say nothing of it yet"));
}

// 'Note it on both kinds of day' is no advice where it was noted on all of them.
TEST(Plan, what_is_noted_on_both_kinds_of_day_is_not_asked_to_be_noted) {
    RankedCandidate candidate;
    candidate.change = candidate_called("smaller-lunch-starch");
    const auto advice = [&] { return sentences_of(candidate, 0.5).back(); };
    EXPECT_EQ(advice(), "Find out first: note it on both kinds of day in the next wear.");
    candidate.own.emplace();
    candidate.own->result.gate = DriverGate::no_contrast;
    EXPECT_EQ(advice(), "Find out first: note it on both kinds of day in the next wear.");
    candidate.own->result.gate = DriverGate::open;
    candidate.own->finding.next.sentence = "A trial, carbohydrate varied by lot, would show it.";
    EXPECT_EQ(advice(),
              "Find out first whether it is worth it. A trial, carbohydrate varied by lot, would "
              "show it.");
}

TEST(Plan, where_nothing_can_be_gained_no_change_is_an_answer) {
    Care care;  // 120 mg/dL throughout: every hour is in range
    for (int day = -14; day < 0; ++day) {
        care.meal(care_at(day, 19), 60);
        if (day % 2 == 0) {
            care.entry(DiaryKind::movement, care_at(day, 19, 20), "walk");
        }
    }
    const Plan plan = planned(care);
    EXPECT_NE(plan.says, PlanSays::agree_on_one) << all_of(plan);
    for (const RankedCandidate& one : plan.ranked) {
        EXPECT_LE(one.hours, 1e-9) << one.change->code;
    }
}

TEST(Plan, a_closed_gate_says_nothing_of_what_the_change_would_be_worth) {
    Care care = walker();
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    const Plan plan = planned(care);
    EXPECT_EQ(ranked(plan, "walk-after-dinner"), nullptr);
    const ClosedCandidate* walk = closed(plan, "walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    ASSERT_EQ(walk->gates.size(), 1U);
    EXPECT_EQ(walk->gates[0].kind, GateKind::feet);
    EXPECT_THAT(opens(walk->gates[0]), HasSubstr("letter to the prescriber is the next step"));
    EXPECT_EQ(plan.sentence.find("walk"), std::string::npos);
}

TEST(Plan, what_was_not_asked_is_asked_first_and_pregnancy_closes_all) {
    Care care = walker();
    care.facts.cautions.chest_symptoms = Answered::not_yet;
    Plan plan = planned(care);
    ASSERT_NE(closed(plan, "walk-after-dinner"), nullptr);
    EXPECT_EQ(opens(closed(plan, "walk-after-dinner")->gates[0]), "Ask first.");
    care = walker();
    care.facts.cautions.pregnancy = Pregnancy::planning;
    plan = planned(care);
    EXPECT_EQ(plan.says, PlanSays::nothing_offered);
    EXPECT_TRUE(plan.ranked.empty());
    EXPECT_EQ(plan.closed.size(), candidate_changes().size());
    for (const ClosedCandidate& one : plan.closed) {
        ASSERT_FALSE(one.gates.empty());
        EXPECT_TRUE(calls_for_letter(one.gates[0]));
        EXPECT_THAT(opens(one.gates[0]), HasSubstr("Write to the prescriber now"));
    }
}

// Safety rule 11 (and 7 to 12): what is told after a change was agreed stops it.
TEST(Plan, a_change_agreed_does_not_go_on_once_a_gate_closes_it) {
    Care care = walker();
    care.facts.agreed_change = AgreedChange{"smaller plates", care_day, {}};
    EXPECT_TRUE(planned(care).agreed_closed.empty());
    care.facts.cautions.pregnancy = Pregnancy::not_answered;  // a question, not an answer
    EXPECT_TRUE(planned(care).agreed_closed.empty());
    care.facts.cautions.pregnancy = Pregnancy::pregnant;
    const Plan plan = planned(care);
    ASSERT_EQ(plan.agreed_closed.size(), 1U);
    EXPECT_EQ(plan.agreed_closed[0].kind, GateKind::pregnancy);
    EXPECT_THAT(plan.sentence, HasSubstr("(\"smaller plates\") does not go on"));
}

// A smaller portion is a low-carbohydrate plan where the day already has little.
TEST(Plan, a_smaller_portion_counts_as_low_carbohydrate_under_130_g) {
    Care care = walker();
    care.takes("empagliflozin 10");
    const Plan plan = planned(care);  // 60 g a day are noted
    const ClosedCandidate* portion = closed(plan, "smaller-dinner-starch");
    ASSERT_NE(portion, nullptr);
    EXPECT_TRUE(std::ranges::any_of(portion->gates,
                                    [](const Gate& gate) { return gate.kind == GateKind::sglt2; }));
}

// Safety rule 10: known eye disease or no check in 12 months, and glucose may fall fast.
TEST(Plan, a_large_gain_waits_for_the_eyes) {
    Care care = walker();
    Wear& wear = care.wears[0];
    for (int day = -28; day < 0; ++day) {
        const bool early = day % 2 != 0;
        DiaryEntry sleep;
        sleep.kind = DiaryKind::sleep;
        sleep.at = care_at(day - 1, early ? 23 : 22);
        sleep.until = care_at(day, early ? 5 : 7);
        care.diary.push_back(sleep);
        for (Reading& reading : wear.readings) {
            if (early && reading.at > care_at(day, 2) && reading.at <= care_at(day, 9)) {
                reading = Reading(reading.at,
                                  Glucose{rounded_hundredths(200 + 4 * std::sin(day * 1.7)),
                                          GlucoseUnit::mg_per_dl},
                                  reading.interval());
            }
        }
    }
    care.facts.cautions.last_eye_check = care_day - std::chrono::days{400};
    const Plan plan = planned(care);
    for (const RankedCandidate& one : plan.ranked) {
        EXPECT_LT(one.hours, 2) << one.change->code;
    }
}

TEST(Plan, medicines_that_can_cause_lows_ask_for_a_letter_before_the_change_starts) {
    Care care = walker();
    care.takes("gliclazide 80");
    const Plan plan = planned(care);
    const RankedCandidate* walk = ranked(plan, "walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    ASSERT_FALSE(walk->cautions.empty());
    EXPECT_THAT(walk->cautions[0], HasSubstr("write to the prescriber before the change starts"));
}

AgreedChange told_whole(const char* candidate, Proposed kind) {
    AgreedChange change{"as we said (invented)", {}, {}};
    change.when = "in the evening";
    change.where = "at home";
    change.how_often = "five days a week";
    change.if_not = "the next day";
    change.stop_when = "unwell";
    change.kind = kind;
    change.candidate = candidate;
    return change;
}

TEST(AgreeOn, a_candidate_is_checked_by_its_own_check_and_by_no_other) {
    const Care care = walker();
    const ReviewInput input = input_of(care);
    const auto agreed = [&](const AgreedChange& change) {
        return care.ask([&](const CareInput& asked) {
            return agree_on(change, false, plan_for(input, asked), input, asked, care_day);
        });
    };
    const Plan plan = planned(care);
    ASSERT_GE(plan.ranked.size(), 2U);
    bool another = false;
    for (const RankedCandidate& one : plan.ranked) {
        const auto check = care.ask([&](const CareInput& asked) {
            return check_plan(one, input, asked, plan.worth_hours);
        });
        const auto change = agreed(told_whole(one.change->code, one.change->proposed));
        ASSERT_TRUE(change) << one.change->code << change.error().sentence;
        EXPECT_EQ(change->how_checked, check.by) << one.change->code;
        EXPECT_EQ(change->check_days, check.days) << one.change->code;
        another = another || check.by != plan.check->by || check.days != plan.check->days;
    }
    EXPECT_TRUE(another);
    // Without a check of its own the coach says how.
    AgreedChange own = told_whole("", Proposed::walking);
    ASSERT_FALSE(agreed(own));
    EXPECT_THAT(agreed(own).error().sentence, HasSubstr("how checked"));
    own.how_checked = "we look at it together";
    EXPECT_TRUE(agreed(own));
}

// What the plan closes for this client is not agreed by its name.
TEST(AgreeOn, a_candidate_that_the_plan_closes_is_closed) {
    Care care = walker();
    care.takes("empagliflozin 10");
    const ReviewInput input = input_of(care);  // 60 g of carbohydrate a day are noted
    const auto not_agreed = care.ask([&](const CareInput& asked) {
        return agree_on(told_whole("smaller-dinner-starch", Proposed::food_change), false,
                        plan_for(input, asked), input, asked, care_day);
    });
    ASSERT_FALSE(not_agreed);
    EXPECT_TRUE(std::ranges::any_of(not_agreed.error().gates,
                                    [](const Gate& gate) { return gate.kind == GateKind::sglt2; }));
}

TEST(Plan, with_a_change_agreed_no_second_is) {
    Care care = walker();
    care.facts.agreed_change = AgreedChange{"smaller plates", care_day, {}};
    const Plan plan = planned(care);
    EXPECT_EQ(plan.says, PlanSays::one_is_agreed);
    EXPECT_THAT(plan.sentence, HasSubstr("smaller plates"));
}

TEST(Plan, no_text_bears_a_word_that_lulls_or_blames) {
    const std::string text = all_of(planned(walker()));
    for (const char* word : {"no lows", "safe", " fine", "cured", "bad food", "fail", "dose"}) {
        EXPECT_EQ(text.find(word), std::string::npos) << word << ": " << text;
    }
}

// The half-width of two n-day means falls with the root of n and never below the sensors' own.
TEST(DaysToCheck, fewer_for_a_larger_difference_and_none_below_the_sensors_error) {
    const ReviewInput input = input_of(walker());
    const auto large = days_to_check(input, 3);
    const auto small = days_to_check(input, 1.5);
    ASSERT_TRUE(large);
    EXPECT_TRUE(!small || *small >= *large);
    EXPECT_FALSE(days_to_check(input, 0.01));
    EXPECT_FALSE(days_to_check(ReviewInput{}, 1));
}

TEST(Plan, an_interval_never_has_no_width_in_words) {
    for (const Care& care : {walker(), walker_far_above()}) {
        for (const RankedCandidate& one : planned(care).ranked) {
            if (!one.both) {
                continue;
            }
            const std::string& said = one.sentences.front();
            const auto from = said.find("95 % from ");
            if (from == std::string::npos) {
                EXPECT_THAT(said, HasSubstr("may differ"));
                continue;
            }
            const auto to = said.find(" to ", from);
            const std::string low = said.substr(from + 10, to - from - 10);
            EXPECT_NE(low, said.substr(to + 4, low.size())) << said;
        }
    }
    const Plan far = planned(walker_far_above());
    const RankedCandidate* walk = ranked(far, "walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    EXPECT_THAT(walk->sentences.front(), HasSubstr("under 5 min in range a day either way"));
}

// 88 % sure of 30 min or more beside an interval that seems to end there would be no sense.
TEST(Plan, a_narrow_interval_is_told_to_the_minute) {
    const Plan plan = planned(walker());
    RankedCandidate one = *ranked(plan, "walk-after-dinner");
    one.hours = 0.51;
    one.hours95 = {0.47, 0.54};
    one.probability = 0.88;
    EXPECT_THAT(sentences_of(one, 0.5).front(),
                HasSubstr("31 min more in range a day (95 % from 28 min more to 32 min more); 88 % "
                          "sure of 30 min or more."));
}
