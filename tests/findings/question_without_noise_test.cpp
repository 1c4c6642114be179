// Questions of data without noise: no interval is narrower than a sensor can tell. Invented.
#include "findings/question_findings.hpp"

#include "findings/question_sentences.hpp"
#include "responses/days_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

/// Three weeks at 120 mg/dL without any noise: dinner and the night after it rise by `rise` and
/// stay there for three hours and six; by `less` where a walk follows, on the days of a bit of
/// `walked`. Everything else that can be noted differs from day to day as exactly.
ReviewInput weeks_without_noise(double rise, double less, std::uint32_t walked) {
    ReviewInput input;
    std::vector<double> height(22, rise);
    for (int day = 0; day < 21; ++day) {
        const bool walks = (walked >> static_cast<unsigned>(day) & 1U) != 0;
        height[static_cast<std::size_t>(day)] = walks ? less : rise;
        input.diary.push_back(meal(moment(day, 12, 30), "soup", 40));
        input.diary.push_back(meal(moment(day, 19), "stew", day % 3 == 0 ? 60 : 70));
        if (walks) {
            input.diary.push_back(entry(DiaryKind::movement, moment(day, 19, 20), "walk"));
            input.diary.back().until = moment(day, 19, 40);
        }
        input.diary.push_back(slept(moment(day, 23, day % 4 * 10), moment(day + 1, 6, 30)));
        input.diary.push_back(meal(moment(day + 1, 7), "porridge", 45));
    }
    input.wears = {drawn_wear(moment(0, 0), moment(21, 0), 15min, [&](Instant at) {
        const auto day = static_cast<std::size_t>((at - day_zero()) / std::chrono::days{1});
        const auto of_day = (at - day_zero()) % std::chrono::days{1};
        const double after_dinner = of_day > 19h && of_day <= 22h ? height[day] : 0;
        return 120 + after_dinner + (of_day < 7h && day > 0 ? height[day - 1] / 2 : 0);
    })};
    input.as_of = moment(21, 12);
    return input;
}

void expect_numbers(const QuestionAnswers& answers) {
    for (const QuestionFinding& told : answers.findings) {
        const std::string& sentence = told.finding.sentence;
        EXPECT_EQ(sentence.find("nan"), std::string::npos) << sentence;
        EXPECT_EQ(sentence.find("inf "), std::string::npos) << sentence;
        if (told.finding.estimate) {
            ASSERT_TRUE(told.finding.estimate->interval95) << told.finding.code;
            const auto [low, high] = *told.finding.estimate->interval95;
            EXPECT_TRUE(std::isfinite(told.finding.estimate->value)) << told.finding.code;
            EXPECT_TRUE(std::isfinite(low) && std::isfinite(high)) << told.finding.code;
            EXPECT_LT(low, high) << told.finding.code << " " << sentence;
        }
        if (told.both) {
            EXPECT_TRUE(std::isfinite(told.both->mean) && told.both->deviation > 0) << sentence;
        }
    }
    if (answers.fit && answers.fit->joint) {
        EXPECT_TRUE(std::isfinite(*answers.fit->joint));
        EXPECT_LT(answers.fit->joint95[0], answers.fit->joint95[1]);
    }
}

}  // namespace

TEST(QuestionFindings, rises_all_alike_with_and_all_alike_without_a_walk_keep_the_sensors_error) {
    const std::array walk = {Cause::walk_after};
    const QuestionAnswers answers = answer_questions(
        weeks_without_noise(40, 5, 0b010101010101010101010U), Outcome::dinner_rise, walk);
    expect_numbers(answers);
    const Finding& finding = answers.findings.front().finding;
    ASSERT_TRUE(finding.estimate && finding.estimate->interval95);
    const double width = (*finding.estimate->interval95)[1] - (*finding.estimate->interval95)[0];
    EXPECT_GT(width, 4) << finding.sentence;  // 5 % of 35 to each side, twice
    EXPECT_NE(finding.sentence.find("95 % interval 3"), std::string::npos) << finding.sentence;
    EXPECT_EQ(finding.answer, Answer::yes);
}

// Safety rule 5: whatever is asked, of data without noise too.
RC_GTEST_PROP(QuestionFindings, no_question_gives_an_interval_without_width_or_what_is_no_number,
              ()) {
    const double rise = *rc::gen::inRange(0, 80);
    const double less = *rc::gen::inRange(0, 80);
    const auto walked = *rc::gen::inRange<std::uint32_t>(0, 1U << 21U);
    const ReviewInput input = weeks_without_noise(rise, less, walked);
    const auto outcomes = all_outcomes();
    const Outcome outcome = outcomes[*rc::gen::inRange<std::size_t>(0, outcomes.size())].outcome;
    for (const CauseFacts& cause : all_causes()) {
        if (can_be_asked(outcome, cause.cause)) {
            const std::array one = {cause.cause};
            expect_numbers(answer_questions(input, outcome, one));
        }
    }
    const std::array two = {Cause::walk_after, Cause::meal_carbohydrate};
    expect_numbers(answer_questions(input, Outcome::dinner_rise, two));
    RC_ASSERT(!::testing::Test::HasFailure());
}
