#include "coaching/proposed_in_words.hpp"

#include "diary/written_words.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <string>

namespace tracewright {

namespace {

bool is_letter_or_digit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

// The phrase begins a word there; "*" at its end lets the word go on.
bool says(std::string_view text, std::string_view phrase) {
    const bool goes_on = phrase.ends_with('*');
    phrase.remove_suffix(goes_on ? 1 : 0);
    for (auto at = text.find(phrase); at != std::string_view::npos;
         at = text.find(phrase, at + 1)) {
        const auto end = at + phrase.size();
        const bool begins = at == 0 || !is_letter_or_digit(text[at - 1]);
        const bool ends = goes_on || end == text.size() || !is_letter_or_digit(text[end]);
        if (begins && ends) {
            return true;
        }
    }
    return false;
}

bool says_any(std::string_view text, std::span<const std::string_view> phrases) {
    return std::ranges::any_of(phrases,
                               [&](std::string_view phrase) { return says(text, phrase); });
}

constexpr std::array<std::string_view, 14> fasting{
    "fasting",      "fast until", "fast for",       "fast on",        "fast from",
    "fast till",    "fast after", "eat nothing",    "nothing to eat", "no food",
    "without food", "16:8",       "time-restrict*", "eating window"};
constexpr std::array<std::string_view, 4> leaves{"skip", "miss", "leave out", "drop"};
constexpr std::array<std::string_view, 7> meals{"breakfast", "lunch", "dinner",  "supper",
                                                "a meal",    "meals", "one meal"};
constexpr std::array<std::string_view, 4> other_skipping{
    "one meal a day", "two meals a day", "instead of dinner", "instead of breakfast"};
constexpr std::array<std::string_view, 14> low_carbohydrate{
    "low carb*",   "low-carb*",     "lower carb*",    "no carb*",        "less carb*",
    "fewer carb*", "cut carb*",     "without carb*",  "carb-free",       "keto*",
    "zero carb*",  "cut out carb*", "very few carb*", "g of carbs a day"};
constexpr std::array<std::string_view, 9> weight_loss{
    "weight loss", "lose weight", "losing weight",   "diet", "dieting", "calorie*",
    "kcal",        "slim*",       "lose some weight"};
constexpr std::array<std::string_view, 6> weights{"kg",     "kilo*", "pound*",
                                                  "stone*", "lb*",   "pounds"};
constexpr std::array<std::string_view, 20> moving{
    "walk*",   "run",  "running", "jog*",   "stairs",   "exercis*", "cycle",
    "cycling", "bike", "biking",  "swim*",  "gym",      "squat*",   "dance",
    "dancing", "hike", "hiking",  "sport*", "workout*", "work out"};
constexpr std::array<std::string_view, 19> taking{
    "inject*", "unit",          "units",  "pill*", "tablet*",   "mg",       "mcg",
    "shot",    "shots",         "jab*",   "puff*", "berberine", "chromium", "magnesium",
    "herbal*", "prescription*", "dosage", "bolus", "st john*"};

bool skips_a_meal(std::string_view text) {
    for (const std::string_view meal : meals) {
        for (const std::string_view leave : leaves) {
            for (const char* between : {" ", " my ", " the ", " your "}) {
                if (says(text, std::string(leave) + between + std::string(meal))) {
                    return true;
                }
            }
        }
        // "no dinner after 19:30" is an hour, not a meal left out.
        for (const char* denial : {"no ", "without "}) {
            const std::string phrase = denial + std::string(meal);
            const auto at = text.find(phrase);
            if (says(text, phrase) && !text.substr(at + phrase.size()).starts_with(" after") &&
                !text.substr(at + phrase.size()).starts_with(" later")) {
                return true;
            }
        }
    }
    return says_any(text, other_skipping);
}

}  // namespace

std::vector<Proposed> proposed_in(std::string_view words) {
    const std::string text = small_letters(words);
    std::vector<Proposed> found;
    const auto add = [&](bool met, Proposed proposed) {
        if (met) {
            found.push_back(proposed);
        }
    };
    add(says_any(text, low_carbohydrate), Proposed::low_carbohydrate);
    add(says_any(text, fasting) || text == "fast", Proposed::fasting);
    add(skips_a_meal(text), Proposed::meal_skipping);
    add(says_any(text, weight_loss) || (says(text, "lose") && says_any(text, weights)),
        Proposed::weight_loss);
    add(says_any(text, moving), Proposed::walking);
    return found;
}

bool speaks_of_taking(std::string_view words) {
    std::string text = small_letters(words);
    for (auto at = text.find("mg/dl"); at != std::string::npos; at = text.find("mg/dl")) {
        text.erase(at, 5);  // a level of glucose, no dose
    }
    return says_any(text, taking);
}

}  // namespace tracewright
