// Each against a plain second way: put in order, and blanks set around.
#include "intake/levels_apart.hpp"
#include "intake/plain_text.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>

using namespace tracewright;

namespace {

std::optional<std::chrono::seconds> middle_of_sorted(std::vector<std::chrono::seconds> steps) {
    if (steps.empty()) {
        return std::nullopt;
    }
    std::ranges::sort(steps);
    const auto middle = steps[(steps.size() - 1) / 2];
    return middle > std::chrono::hours{2} ? std::optional(middle) : std::nullopt;
}

}  // namespace

RC_GTEST_PROP(LevelsApart, is_the_middle_step_of_those_put_in_order, (unsigned seed)) {
    std::mt19937 draw(seed);
    const auto long_ones = draw() % 101;
    Intake intake;
    std::vector<std::chrono::seconds> steps;
    Instant at{};
    for (std::size_t count = draw() % 30; intake.readings.size() < count;) {
        intake.readings.emplace_back(at, Glucose{10'000, GlucoseUnit::mg_per_dl},
                                     std::chrono::seconds{1});
        steps.emplace_back(draw() % 100 < long_ones ? 7'200 + draw() % 3 : draw() % 7'201);
        at += steps.back();
    }
    if (!steps.empty()) {
        steps.pop_back();
    }
    RC_ASSERT(levels_apart(intake) == middle_of_sorted(steps));
}

RC_GTEST_PROP(HasWholeWord, is_found_between_blanks, (unsigned seed)) {
    std::mt19937 draw(seed);
    const auto letters = [&](std::size_t most) {
        std::string text;
        for (std::size_t i = draw() % (most + 1); i > 0; --i) {
            text += std::string_view("ab ")[draw() % (text.empty() || text.back() == ' ' ? 2 : 3)];
        }
        return text;
    };
    const std::string text = letters(12);
    const std::string word = "a" + letters(2);
    const bool padded = (" " + text + " ").find(" " + word + " ") != std::string::npos;
    RC_ASSERT(has_whole_word(text, word) == padded);
}
