// The planted truths of demo/README.md, asked of the files a coach would receive: what is planted
// is found, what is not is never blamed, and what these data can't tell is said to be so.
#include "demo/story_input.hpp"
#include "findings/meal_report.hpp"
#include "findings/question_findings.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

QuestionAnswers asked(const std::string& key, std::uint64_t seed, Outcome about,
                      std::vector<Cause> causes) {
    return answer_questions(input_of(story(key), seed), about, causes);
}

Answer answer(const QuestionAnswers& answers, std::size_t i) {
    return answers.findings.at(i).finding.answer;
}

constexpr std::uint64_t seeds[] = {1, 2, 3, 4, 5};

}  // namespace

TEST(AskedTruths, alder_fasting_goes_with_a_late_dinner_and_not_with_sleep) {
    int found = 0;
    for (const std::uint64_t seed : seeds) {
        const auto answers =
            asked("alder", seed, Outcome::fasting, {Cause::sleep, Cause::dinner_time});
        found += answer(answers, 1) == Answer::yes ? 1 : 0;
        EXPECT_NE(answer(answers, 0), Answer::yes) << seed;
        EXPECT_GT(answers.findings[1].result.effect, 0) << seed;
    }
    EXPECT_GE(found, 4);
}

TEST(AskedTruths, linden_fasting_goes_with_short_sleep) {
    int found = 0;
    for (const std::uint64_t seed : seeds) {
        const auto answers =
            asked("linden", seed, Outcome::fasting, {Cause::sleep, Cause::dinner_time});
        found += answer(answers, 0) == Answer::yes ? 1 : 0;
        EXPECT_NE(answer(answers, 1), Answer::yes) << seed;
        EXPECT_GT(answers.findings[0].result.effect, 0) << seed;
    }
    EXPECT_GE(found, 4);
}

TEST(AskedTruths, rowan_sleep_travels_with_dinner_and_is_not_blamed) {
    for (const std::uint64_t seed : seeds) {
        const auto answers =
            asked("rowan", seed, Outcome::fasting, {Cause::sleep, Cause::dinner_time});
        EXPECT_NE(answer(answers, 0), Answer::yes) << seed;
        const auto& caveats = answers.findings[0].finding.caveats;
        const bool said = answers.findings[0].result.gate == DriverGate::inseparable ||
                          std::any_of(caveats.begin(), caveats.end(), [](const Caveat& caveat) {
                              return caveat.kind == CaveatKind::travels_together;
                          });
        EXPECT_TRUE(said) << seed;
    }
}

TEST(AskedTruths, hazel_a_walk_after_dinner_goes_with_a_smaller_rise) {
    int found = 0;
    for (const std::uint64_t seed : seeds) {
        const auto answers = asked("hazel", seed, Outcome::dinner_rise,
                                   {Cause::walk_after, Cause::meal_carbohydrate});
        found += answer(answers, 0) == Answer::yes ? 1 : 0;
        EXPECT_LT(answers.findings[0].result.effect, 0) << seed;
    }
    EXPECT_GE(found, 3);
}

TEST(AskedTruths, birch_the_rice_lunch_rises_most_and_the_mango_is_cannot_tell) {
    int told_apart = 0;
    for (const std::uint64_t seed : seeds) {
        const FoodComparison foods = meal_report(input_of(story("birch"), seed)).foods;
        const auto rice = [](const std::string& food) {
            return food.find("white rice") != std::string::npos;
        };
        told_apart += std::ranges::any_of(foods.different,
                                          [&](const FoodPair& pair) { return rice(pair.larger); });
        EXPECT_TRUE(std::ranges::none_of(foods.different, [&](const FoodPair& pair) {
            return rice(pair.smaller);
        })) << seed;
        EXPECT_TRUE(std::ranges::none_of(foods.foods, [](const FoodStanding& food) {
            return food.food.find("mango") != std::string::npos;
        })) << seed;
    }
    EXPECT_GE(told_apart, 4);
}

TEST(AskedTruths, yarrow_has_nothing_to_find) {
    for (const std::uint64_t seed : seeds) {
        const auto answers =
            asked("yarrow", seed, Outcome::fasting, {Cause::sleep, Cause::dinner_time});
        EXPECT_NE(answer(answers, 0), Answer::yes) << seed;
        EXPECT_NE(answer(answers, 1), Answer::yes) << seed;
    }
}

TEST(AskedTruths, alder_without_the_planted_effect_is_not_answered_yes) {
    ClientStory without = story("alder");
    without.effects = PlantedEffects{};
    for (const std::uint64_t seed : seeds) {
        constexpr std::array causes = {Cause::sleep, Cause::dinner_time};
        const auto answers = answer_questions(input_of(without, seed), Outcome::fasting, causes);
        // The model's own curve dips after a late dinner: higher is never found, lower may be.
        EXPECT_FALSE(answer(answers, 1) == Answer::yes && answers.findings[1].result.effect > 0)
            << seed;
    }
}
