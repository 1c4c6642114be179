#include "coaching/eating_care.hpp"

#include "coaching/prescriber_answer.hpp"
#include "coaching/restricted_eating.hpp"
#include "coaching/weight.hpp"
#include "diary/says_something.hpp"
#include "diary/written_words.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <map>
#include <optional>

namespace tracewright {

namespace {

constexpr double least_grams = 50;
constexpr int most_finger_pricks = 20;
constexpr int days_with_one_meal = 2;

using Seen = std::optional<EatingSignSeen>;

std::map<CivilDate, int> count_by_day(const CareInput& input, DiaryKind kind) {
    std::map<CivilDate, int> counts;
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == kind) {
            ++counts[input.clock.date_at(entry.at)];
        }
    }
    return counts;
}

Seen skipped_meals(const CareInput& input) {
    const auto weights = weights_of(input.facts.labs);
    const auto fall = weight_fall(weights, input.clock.date_at(input.as_of));
    int single = 0;
    for (const auto& [day, meals] : count_by_day(input, DiaryKind::meal)) {
        single += meals == 1 ? 1 : 0;
    }
    if (!fall || single < days_with_one_meal) {
        return {};
    }
    return EatingSignSeen{
        EatingSign::skipped_meals_and_falling_weight,
        fmt::format("one meal a day written on {} days, and weight down by {} since {}", single,
                    percent_words(fall->percent), full_date(fall->from.on, input.clock.writing()))};
}

Seen little_carbohydrate(const CareInput& input) {
    const auto seen = restricted_eating(input).little_carbohydrate;
    if (!seen || seen->grams_a_day >= least_grams ||
        answer_that_holds(input.facts.prescriber_answers, AskedAbout::low_carbohydrate, input.as_of,
                          input.medicines, input.clock) != nullptr) {
        return {};
    }
    return EatingSignSeen{EatingSign::little_carbohydrate,
                          "very little carbohydrate over three days from " +
                              full_date(seen->from, input.clock.writing())};
}

Seen many_finger_pricks(const CareInput& input) {
    for (const auto& [day, count] : count_by_day(input, DiaryKind::finger_prick)) {
        if (count > most_finger_pricks) {
            return EatingSignSeen{EatingSign::many_finger_pricks,
                                  fmt::format("{} finger-pricks on {}", count,
                                              full_date(day, input.clock.writing()))};
        }
    }
    return {};
}

Seen words_of_shame(const CareInput& input) {
    for (const DiaryEntry& entry : input.diary) {
        if ((tells_how_they_are(entry) || entry.kind == DiaryKind::meal) &&
            speaks_of(entry, {"ashamed", "shame", "disgust", "guilty", "hate myself",
                              "hate my body", "i was bad", "i've been bad", "lost control", "binge",
                              "purge", "made myself sick", "don't deserve"})) {
            return EatingSignSeen{
                EatingSign::words_of_shame,
                fmt::format("words of shame in the diary of {}",
                            full_date(input.clock.date_at(entry.at), input.clock.writing()))};
        }
    }
    return {};
}

}  // namespace

bool numbers_turned_down(const EatingScreen& screen) {
    return screen.positive != Answered::no || !screen.asked_on || !says_something(screen.by);
}

std::vector<EatingSignSeen> eating_signs(const CareInput& input) {
    std::vector<EatingSignSeen> signs;
    for (auto* look : {skipped_meals, little_carbohydrate, many_finger_pricks, words_of_shame}) {
        if (Seen seen = look(input)) {
            signs.push_back(std::move(*seen));
        }
    }
    return signs;
}

std::string eating_for_coach(const CareInput& input) {
    const EatingScreen& screen = input.facts.cautions.eating;
    std::string lines;
    if (screen.positive == Answered::yes) {
        lines = "The eating screen was positive.";
    } else if (numbers_turned_down(screen)) {
        lines = "The eating screen is not answered (result, by whom and date).";
    }
    std::string seen;
    for (const EatingSignSeen& sign : eating_signs(input)) {
        seen += (seen.empty() ? "" : "; ") + sign.seen;
    }
    if (!seen.empty()) {
        lines += (lines.empty() ? "Seen: " : " Seen: ") + seen + ".";
    }
    if (lines.empty()) {
        return lines;
    }
    lines += " Talk first. Don't set a food change. Offer a referral.";
    if (numbers_turned_down(screen)) {
        lines +=
            " The client's papers leave out photos, energy, carbohydrate, fasting, portions, "
            "weight, rankings and hours in range.";
    }
    return lines;
}

std::vector<std::string> eating_questions() {
    return {"Our own questions, not a validated screen; a screen is done by someone trained in it.",
            "Do thoughts about food or weight take up much of your day?",
            "Does it happen that you eat in a way that frightens or shames you?",
            "Have you ever been treated for an eating problem, or wished you were?"};
}

}  // namespace tracewright
