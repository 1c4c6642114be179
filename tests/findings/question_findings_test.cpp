#include "findings/question_findings.hpp"

#include "findings/outcome_values.hpp"
#include "findings/question_sentences.hpp"
#include "responses/days_for_tests.hpp"
#include "responses/meal_kernel.hpp"

#include <gtest/gtest.h>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <regex>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

/// Four weeks: dinner early or late by turns of a seeded coin, fasting `per_hour` higher for each
/// hour later; sleep varies by itself.
ReviewInput four_weeks(double per_hour, std::uint64_t seed = 1, bool together = false) {
    boost::random::mt19937_64 engine(seed);
    boost::random::normal_distribution<double> normal;
    ReviewInput input;
    std::vector<double> level(30, 130);
    for (int day = 0; day < 28; ++day) {
        const double late = normal(engine);
        const double other = normal(engine);
        const double tired = together ? late + 0.1 * other : other;
        const auto minutes = [](double hours) {
            return std::chrono::minutes{std::lround(hours * 60)};
        };
        input.diary.push_back(meal(moment(day, 12, 30), "soup", 40));
        input.diary.push_back(meal(moment(day, 19) + minutes(1.2 * late), "stew", 60));
        input.diary.push_back(slept(moment(day, 23) + minutes(tired), moment(day + 1, 6, 30)));
        input.diary.push_back(meal(moment(day + 1, 7), "porridge", 45));
        level[static_cast<std::size_t>(day) + 1] = 130 + per_hour * 1.2 * late + 8 * normal(engine);
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    input.wears = {drawn_wear(moment(0, 0), moment(29, 0), 5min, [&](Instant at) {
        const auto day = static_cast<std::size_t>((at - day_zero()) / std::chrono::days{1});
        return level[day];
    })};
    input.as_of = moment(29, 12);
    return input;
}

constexpr std::array asked = {Cause::sleep, Cause::dinner_time};

}  // namespace

TEST(QuestionFindings, a_planted_dinner_effect_is_answered_yes_with_all_that_belongs_to_it) {
    const QuestionAnswers answers = answer_questions(four_weeks(6), Outcome::fasting, asked);
    ASSERT_EQ(answers.findings.size(), 2U);
    const Finding& dinner = answers.findings[1].finding;
    EXPECT_EQ(dinner.code, "fasting.dinner-time");
    EXPECT_EQ(dinner.answer, Answer::yes);
    EXPECT_NEAR(dinner.estimate->value, 18, 7);
    EXPECT_EQ(dinner.estimate->unit, "mg/dL");
    EXPECT_GE(dinner.evidence.used, 25);
    EXPECT_EQ(dinner.evidence.used + dinner.evidence.left_out, 29);
    EXPECT_EQ(dinner.evidence.used_what, "nights");
    EXPECT_EQ(dinner.evidence.adjusted_for, (std::vector<std::string>{"wear", "hours slept"}));
    EXPECT_EQ(dinner.next.step, NextStep::run_trial);
    EXPECT_NE(dinner.sentence.find("With dinner three hours later, fasting glucose is"),
              std::string::npos)
        << dinner.sentence;
    EXPECT_NE(answers.findings[0].finding.answer, Answer::yes);
}

TEST(QuestionFindings, travelling_together_is_said_with_the_nights_that_part_them) {
    const QuestionAnswers answers =
        answer_questions(four_weeks(6, 2, true), Outcome::fasting, asked);
    const std::string& sentence = answers.findings[0].finding.sentence;
    EXPECT_EQ(answers.findings[0].finding.answer, Answer::cannot_tell);
    EXPECT_NE(sentence.find("travelled together"), std::string::npos) << sentence;
    EXPECT_NE(sentence.find("which of the two can't be told"), std::string::npos);
    EXPECT_EQ(answers.findings[0].finding.next.step, NextStep::run_trial);
}

namespace {

std::string caveat_of(const Finding& finding, CaveatKind kind) {
    const auto found = std::ranges::find(finding.caveats, kind, &Caveat::kind);
    return found == finding.caveats.end() ? "" : found->sentence;
}

}  // namespace

// What hardly varied is in no model: it was not held equal, and widens no interval.
TEST(QuestionFindings, a_cause_that_hardly_varied_is_neither_accounted_for_nor_travels_along) {
    const ReviewInput input = four_weeks(6);
    auto rows = question_rows(input, trace_of_questions(input), Outcome::fasting, asked);
    for (QuestionRow& row : rows) {
        if (row.causes.contains(Cause::dinner_time) && row.causes.contains(Cause::sleep)) {
            row.causes[Cause::sleep] = 7 - 0.02 * row.causes[Cause::dinner_time];
        }
    }
    const QuestionAnswers answers = answers_from_rows(input, Outcome::fasting, rows, asked);
    const Finding& sleep = answers.findings[0].finding;
    const Finding& dinner = answers.findings[1].finding;
    ASSERT_NE(sleep.sentence.find("Hours slept hardly varied"), std::string::npos)
        << sleep.sentence;
    EXPECT_TRUE(sleep.evidence.adjusted_for.empty());
    ASSERT_EQ(dinner.answer, Answer::yes) << dinner.sentence;
    EXPECT_EQ(dinner.evidence.adjusted_for, (std::vector<std::string>{"wear"}));
    EXPECT_EQ(dinner.sentence.find("accounted for"), std::string::npos) << dinner.sentence;
    EXPECT_EQ(caveat_of(dinner, CaveatKind::travels_together), "");
    EXPECT_EQ(answers.fit->pair_correlation, 0);
    EXPECT_TRUE(answers.fit->parts_them.empty());
}

// At the least correlation that is told the interval is an eighth wider: never '1.0 times'.
TEST(QuestionFindings, what_travelled_together_widens_the_interval_as_told) {
    const ReviewInput input = four_weeks(6);
    auto rows = question_rows(input, trace_of_questions(input), Outcome::fasting, asked);
    int told = 0;
    for (int step = 0; step < 8; ++step) {
        for (QuestionRow& row : rows) {
            if (row.causes.contains(Cause::dinner_time) && row.causes.contains(Cause::sleep)) {
                row.causes[Cause::sleep] -= 0.2 * (row.causes[Cause::dinner_time] - 19);
            }
        }
        const QuestionAnswers answers = answers_from_rows(input, Outcome::fasting, rows, asked);
        for (const QuestionFinding& one : answers.findings) {
            const std::string caveat = caveat_of(one.finding, CaveatKind::travels_together);
            told += caveat.empty() ? 0 : 1;
            EXPECT_EQ(caveat.find("interval 1.0 times"), std::string::npos) << caveat;
        }
    }
    EXPECT_GT(told, 0);
}

TEST(QuestionFindings, every_night_is_used_or_left_out_with_a_reason) {
    ReviewInput input = four_weeks(6);
    std::erase_if(input.diary, [](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::sleep && entry.at < moment(5, 12);
    });
    DiaryEntry fever = entry(DiaryKind::illness, moment(20, 10), "fever");
    input.diary.push_back(fever);
    const QuestionAnswers answers = answer_questions(input, Outcome::fasting, asked);
    EXPECT_EQ(answers.rows + static_cast<int>(answers.left_out.size()), 29);
    int ill = 0;
    for (const LeftOut& one : answers.left_out) {
        EXPECT_FALSE(one.why.empty());
        ill += one.why == "illness or cortisone noted" ? 1 : 0;
    }
    EXPECT_GE(ill, 1);
}

TEST(QuestionFindings, a_diary_with_gaps_cannot_answer_and_says_so) {
    ReviewInput input = four_weeks(6);
    int number = 0;
    std::erase_if(input.diary, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::sleep && number++ % 5 < 2;
    });
    const QuestionAnswers answers = answer_questions(input, Outcome::fasting, asked);
    const Finding& sleep = answers.findings[0].finding;
    EXPECT_EQ(sleep.answer, Answer::cannot_tell);
    EXPECT_TRUE(std::any_of(sleep.caveats.begin(), sleep.caveats.end(), [](const Caveat& caveat) {
        return caveat.kind == CaveatKind::diary_incomplete;
    }));
}

namespace {

/// Four weeks of dinners that raise glucose with their carbohydrate.
ReviewInput dinners() {
    boost::random::mt19937_64 engine(4);
    boost::random::normal_distribution<double> normal;
    ReviewInput input;
    std::vector<double> grams;
    for (int day = 0; day < 28; ++day) {
        grams.push_back(60 + 15 * normal(engine));
        input.diary.push_back(meal(moment(day, 12, 30), "soup", 40));
        input.diary.push_back(meal(moment(day, 19), "stew", grams.back()));
    }
    input.wears = {drawn_wear(moment(0, 0), moment(28, 0) + 7min, 5min, [&](Instant at) {
        double level = 110;
        for (std::size_t day = 0; day < grams.size(); ++day) {
            const double since = minutes_since(moment(static_cast<int>(day), 19), at);
            level += since > 0 && since < 500 ? grams[day] * meal_kernel(since, 50) : 0;
        }
        return level + normal(engine);
    })};
    input.as_of = moment(29, 12);
    return input;
}

constexpr std::array grams_asked = {Cause::meal_carbohydrate};

}  // namespace

// Statistics 2.4, complete diary: an unwritten dinner has no rise, and counts all the same.
TEST(QuestionFindings, dinners_left_unwritten_on_half_the_days_cannot_answer) {
    ReviewInput input = dinners();
    const Finding whole =
        answer_questions(input, Outcome::dinner_rise, grams_asked).findings[0].finding;
    EXPECT_EQ(whole.answer, Answer::yes);
    EXPECT_NE(whole.sentence.find("over 28 dinners."), std::string::npos) << whole.sentence;
    std::erase_if(input.diary, [](const DiaryEntry& one) {
        return (one.at - day_zero()) / std::chrono::days{1} % 2 == 1;  // nothing at all
    });
    const Finding half =
        answer_questions(input, Outcome::dinner_rise, grams_asked).findings[0].finding;
    EXPECT_EQ(half.answer, Answer::cannot_tell);
    EXPECT_NE(half.sentence.find("over 14 dinners of 28 days. The diary holds too few"),
              std::string::npos)
        << half.sentence;
    EXPECT_EQ(caveat_of(half, CaveatKind::diary_incomplete),
              "On 14 of 28 days dinner was noted; on 14 nothing eaten at all. At least 70 % are "
              "needed: what is missing may not be missing at random.");
    // With other food noted a dinner may have been left out: told, and still an answer.
    ReviewInput without = dinners();
    std::erase_if(without.diary, [](const DiaryEntry& one) {
        return one.text == "stew" && (one.at - day_zero()) / std::chrono::days{1} % 2 == 1;
    });
    const Finding seldom =
        answer_questions(without, Outcome::dinner_rise, grams_asked).findings[0].finding;
    EXPECT_EQ(seldom.answer, Answer::yes);
    EXPECT_EQ(caveat_of(seldom, CaveatKind::diary_incomplete),
              "On 14 of 28 days dinner was noted: whether it was left out on the others, or not "
              "written, is not known.");
}

// The last reading's minutes past midnight are no day that could have been used.
TEST(QuestionFindings, minutes_past_the_last_midnight_are_no_day_left_out) {
    const ReviewInput input = dinners();
    for (const Outcome outcome : {Outcome::hours_in_range, Outcome::lunch_rise}) {
        EXPECT_EQ(question_rows(input, trace_of_questions(input), outcome, {}).size(), 28U);
    }
}

// Without the suspect nights too every question of the sitting counts: where Holm leaves the answer
// open with them, it does so without them.
TEST(QuestionFindings, what_is_asked_besides_counts_without_suspect_stretches_too) {
    const ReviewInput input = four_weeks(6);
    auto rows = question_rows(input, trace_of_questions(input), Outcome::fasting, asked);
    for (QuestionRow& row : rows) {
        row.suspect = row.date == rows[9].date;  // one night of a sensor that may have failed
    }
    const auto told = [&](std::size_t besides) {
        QuestionSettings settings;
        settings.asked_besides = besides;
        return answers_from_rows(input, Outcome::fasting, rows, asked, settings)
            .findings[1]
            .finding;
    };
    const auto caveat = [](const Finding& finding) {
        for (const Caveat& one : finding.caveats) {
            if (one.kind == CaveatKind::sensor_suspect) {
                return one.sentence;
            }
        }
        return std::string();
    };
    const Finding alone = told(0);
    const Finding among_many = told(3'000'000);
    ASSERT_EQ(alone.answer, Answer::yes);
    ASSERT_EQ(among_many.answer, Answer::cannot_tell);
    // Its interval leaves 0 out: that others were asked is the reason, and said.
    ASSERT_GT((*among_many.estimate->interval95)[0], 0);
    EXPECT_NE(among_many.sentence.find("of so many questions asked at once some do by chance"),
              std::string::npos)
        << among_many.sentence;
    EXPECT_NE(caveat(alone).find("without them: "), std::string::npos) << caveat(alone);
    EXPECT_EQ(caveat(alone).find("the answer would be"), std::string::npos) << caveat(alone);
    EXPECT_EQ(caveat(among_many).find("the answer would be"), std::string::npos)
        << caveat(among_many);
}

TEST(QuestionFindings, in_pregnancy_no_trial_is_offered_nor_is_one_by_a_scan) {
    ReviewInput input = four_weeks(8);
    input.goals = consensus_goals(GoalKind::pregnancy);
    for (const QuestionAnswers& answers :
         {answer_questions(input, Outcome::fasting, asked), scan_causes(input, Outcome::fasting)}) {
        bool led = false;
        for (const QuestionFinding& told : answers.findings) {
            EXPECT_NE(told.finding.next.step, NextStep::run_trial);
            EXPECT_EQ(told.finding.sentence.find("trial"), std::string::npos);
            led = led || told.finding.next.sentence.find("clinic leads") != std::string::npos;
        }
        EXPECT_TRUE(led);
    }
}

// Drink, tension and the calendar are nobody's to draw by lot.
TEST(QuestionSentences, what_no_lot_may_draw_is_never_offered_as_a_trial) {
    for (const CauseFacts& facts : all_causes()) {
        const bool never = facts.cause == Cause::alcohol || facts.cause == Cause::stress ||
                           facts.cause == Cause::weekend || facts.cause == Cause::travel ||
                           facts.cause == Cause::work_shift || facts.cause == Cause::cycle;
        EXPECT_EQ(can_be_drawn_by_lot(facts.cause), !never) << facts.code;
        DriverResult open;
        DriverResult yes;
        yes.answer = Answer::yes;
        DriverResult alike;
        alike.gate = DriverGate::no_contrast;
        DriverResult together;
        together.gate = DriverGate::inseparable;
        for (const DriverResult& result : {open, yes, alike, together}) {
            const Next next = next_step(Outcome::fasting, facts.cause, result);
            EXPECT_EQ(next.step == NextStep::run_trial, !never) << facts.code;
            EXPECT_FALSE(next.sentence.empty()) << facts.code;
            EXPECT_EQ(next.sentence.find("nothing to draw by lot") != std::string::npos, never)
                << next.sentence;
        }
        EXPECT_EQ(next_of_a_scan(Outcome::fasting, facts.cause).step == NextStep::run_trial, !never)
            << facts.code;
    }
}

TEST(QuestionFindings, nothing_at_all_is_cannot_tell) {
    const QuestionAnswers answers = answer_questions(ReviewInput{}, Outcome::fasting, asked);
    EXPECT_EQ(answers.rows, 0);
    EXPECT_EQ(answers.findings[0].finding.answer, Answer::cannot_tell);
    EXPECT_NE(answers.findings[0].finding.sentence.find("at least 10 are needed"),
              std::string::npos);
}

TEST(QuestionFindings, a_scan_never_answers_and_at_most_offers_a_trial) {
    const QuestionAnswers answers = scan_causes(four_weeks(8), Outcome::fasting);
    ASSERT_FALSE(answers.findings.empty());
    for (const QuestionFinding& told : answers.findings) {
        EXPECT_EQ(told.finding.answer, Answer::cannot_tell);
    }
    EXPECT_EQ(answers.findings[0].cause == Cause::dinner_time ||
                  answers.findings[0].cause == Cause::last_meal_to_bed,
              true);
    EXPECT_NE(answers.findings[0].finding.next.sentence.find("Worth a trial"), std::string::npos);
}

TEST(QuestionSentences, intervals_in_words) {
    struct Row {
        std::array<double, 2> interval;
        Outcome outcome;
        GlucoseUnit unit;
        const char* words;
    };
    const Row rows[] = {
        {{2, 7}, Outcome::fasting, GlucoseUnit::mg_per_dl, "95 % interval 2 to 7 mg/dL higher"},
        {{-20.4, -5.2},
         Outcome::fasting,
         GlucoseUnit::mg_per_dl,
         "95 % interval 5 to 20 mg/dL lower"},
        {{10.8, 30.6},
         Outcome::fasting,
         GlucoseUnit::mmol_per_l,
         "95 % interval 0.6 to 1.7 mmol/L higher"},
        {{-4, 19},
         Outcome::fasting,
         GlucoseUnit::mg_per_dl,
         "95 % interval from 4 mg/dL lower to 19 mg/dL higher"},
        {{0.2, 19},
         Outcome::fasting,
         GlucoseUnit::mg_per_dl,
         "95 % interval from the same to 19 mg/dL higher"},
        {{-2, -0.5},
         Outcome::hours_in_range,
         GlucoseUnit::mg_per_dl,
         "95 % interval 0.5 to 2.0 h less"},
    };
    for (const Row& row : rows) {
        EXPECT_EQ(interval_words(row.interval, row.outcome, row.unit), row.words);
    }
}

// An estimate that rounds to nothing shows no sameness: the interval beside it may be wide.
TEST(QuestionSentences, what_rounds_to_nothing_is_not_said_to_be_no_different) {
    EXPECT_EQ(difference_words(0.02, Outcome::hours_in_range, GlucoseUnit::mg_per_dl),
              "about the same");
    EXPECT_EQ(difference_words(-0.4, Outcome::fasting, GlucoseUnit::mg_per_dl), "about the same");
    EXPECT_EQ(interval_words({-5, 0.04}, Outcome::hours_in_range, GlucoseUnit::mg_per_dl),
              "95 % interval from 5.0 h less to the same");
    EXPECT_EQ(interval_words({-0.3, 0.3}, Outcome::fasting, GlucoseUnit::mmol_per_l),
              "95 % interval the same at either end");
    QuestionAnswers answers;
    answers.outcome = Outcome::hours_in_range;
    answers.rows = 24;
    DriverFit fit;
    fit.drivers.resize(1);
    fit.drivers[0].effect = 0.02;
    fit.drivers[0].interval95 = {-1.9, 2.0};
    constexpr std::array weekend = {Cause::weekend};
    EXPECT_EQ(answer_sentence(answers, fit, 0, weekend, {}, GlucoseUnit::mg_per_dl, {}),
              "With the weekend, hours in range a day are about the same (95 % interval from 1.9 h "
              "less to 2.0 h more), over 24 days. These data can't tell.");
}

// Fasting is the one definition of the project: at its edges.
TEST(QuestionFindings, fasting_needs_six_hours_and_four_readings) {
    const auto fasting_with = [](int last_food_minutes_before_the_hour, std::chrono::minutes step) {
        ReviewInput input;
        input.wears = {
            drawn_wear(moment(0, 0), moment(1, 12), step, [](Instant) { return 117.0; })};
        input.diary = {meal(moment(1, 5) - std::chrono::minutes{last_food_minutes_before_the_hour},
                            "late food", 30),
                       slept(moment(0, 23), moment(1, 6))};
        input.as_of = moment(2, 0);
        const CountedTrace trace = counted_trace(input.wears);
        for (const QuestionRow& row : question_rows(input, trace, Outcome::fasting, {})) {
            if (row.date == CivilDate{(day_zero() + std::chrono::days{1}).time_since_epoch() /
                                      std::chrono::days{1} * std::chrono::days{1}}) {
                return row.outcome;
            }
        }
        return std::optional<double>{};
    };
    EXPECT_EQ(fasting_with(360, 15min), 117);
    EXPECT_FALSE(fasting_with(359, 15min));
    EXPECT_FALSE(fasting_with(360, 20min));
}

// No causal word from observation, no judging word, in any sentence of any kind.
TEST(QuestionFindings, no_sentence_says_because_or_judges) {
    const std::regex forbidden(
        "because|due to|caused|causes|leads to|makes you|good food|bad food|unhealthy|no lows|"
        "\\bsafe\\b|\\bfine\\b|cured",
        std::regex::icase);
    for (const OutcomeFacts& outcome : all_outcomes()) {
        for (const double effect : {0.0, 9.0}) {
            const ReviewInput input = four_weeks(effect, 5, effect > 0);
            std::vector<Cause> causes;
            for (const CauseFacts& cause : all_causes()) {
                if (can_be_asked(outcome.outcome, cause.cause) && causes.size() < 3) {
                    causes.push_back(cause.cause);
                }
            }
            for (const QuestionFinding& told :
                 answer_questions(input, outcome.outcome, causes).findings) {
                std::string all = told.finding.question + told.finding.sentence +
                                  told.finding.client_sentence + told.finding.next.sentence;
                for (const Caveat& caveat : told.finding.caveats) {
                    all += caveat.sentence;
                }
                EXPECT_FALSE(std::regex_search(all, forbidden)) << all;
            }
        }
    }
}

// dawn-1, dawn-2 of the check table. Source: Monnier et al. 2013, 10.2337/dc12-2127.
TEST(OutcomeValues, twenty_or_more_is_a_dawn_rise) {
    EXPECT_TRUE(is_dawn_rise(138 - 110));
    EXPECT_TRUE(is_dawn_rise(130 - 110));
    EXPECT_FALSE(is_dawn_rise(129.9 - 110));
}
