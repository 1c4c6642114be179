#include "intake/message_level.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace tracewright {

namespace {

constexpr std::array<std::string_view, 11> of_glucose{
    "low", "lows", "sugar", "sugars", "level", "blood", "reading", "hypo", "glucose", "bg", "bs"};
constexpr std::array<std::string_view, 2> of_falling{"fell", "dropped"};
constexpr std::array<std::string_view, 29> between{
    "went",   "was",     "is",   "at",   "of",   "to",    "my",   "the",    "a",    "down",
    "fell",   "dropped", "and",  "had",  "very", "about", "now",  "again",  "only", "just",
    "showed", "shows",   "said", "says", "it",   "been",  "mmol", "mmol/l", "mg/dl"};
constexpr std::array<std::string_view, 17> fast_sugar{
    "tab",   "tabs", "tablet", "tablets", "sweet", "sweets", "gel",   "gels",   "cube",
    "cubes", "lump", "lumps",  "drink",   "juice", "powder", "jelly", "jellies"};
constexpr std::array<std::string_view, 4> of_sugar{"glucose", "dextrose", "sugar", "sugars"};
constexpr std::array<std::string_view, 24> measures{
    "g",     "gram",   "grams", "ml",   "kcal",  "min",      "mins",      "minutes",
    "h",     "hour",   "hours", "unit", "units", "teaspoon", "teaspoons", "tsp",
    "spoon", "spoons", "cup",   "cups", "glass", "glasses",  "slice",     "slices"};
constexpr std::array<std::string_view, 7> happened{"went", "had",     "was",    "going",
                                                   "very", "dropped", "another"};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

}  // namespace

bool plausible_level(double value, GlucoseUnit unit) {
    return unit == GlucoseUnit::mmol_per_l ? value >= 1 && value <= 33
                                           : value >= 18 && value <= 600;
}

std::vector<double> numbers_of_levels(const MessagePart& part) {
    std::vector<double> numbers;
    const auto text = [&](std::size_t i) {
        return i < part.words.size() ? std::string_view(part.words[i].text) : std::string_view();
    };
    for (std::size_t i = 0; i < part.words.size(); ++i) {
        const bool counts = among(fast_sugar, text(i + 1)) || among(measures, text(i + 1)) ||
                            (!message_number(text(i + 1)) && among(fast_sugar, text(i + 2)));
        if (const auto number = message_number(text(i)); number && !counts) {
            numbers.push_back(*number);
        }
    }
    return numbers;
}

bool tells_of_fast_sugar(const MessagePart& part) {
    for (std::size_t i = 0; i + 1 < part.words.size(); ++i) {
        if (among(of_sugar, part.words[i].text) && among(fast_sugar, part.words[i + 1].text)) {
            return true;
        }
    }
    return false;
}

bool tells_a_level(const MessagePart& part, GlucoseUnit usual) {
    const MessageWord* number = nullptr;
    bool named = false;
    bool named_low = false;
    bool falls = false;
    for (const MessageWord& word : part.words) {
        if (message_number(word.text)) {
            if (number != nullptr) {
                return false;
            }
            number = &word;
        } else if (among(of_glucose, word.text)) {
            named = true;
            named_low = named_low || word.text == "low" || word.text == "hypo";
        } else if (!among(between, word.text) && !word.is_sign()) {
            return false;
        }
        falls = falls || among(of_falling, word.text);
    }
    if (number == nullptr) {
        return false;
    }
    const double value = *message_number(number->text);
    const bool decimal = number->text.find_first_of(".,") != std::string::npos;
    named = named || (falls && decimal);  // "dropped to 2.5"
    if (!plausible_level(value, usual)) {
        // "sugar 2" may be two spoons.
        return usual == GlucoseUnit::mmol_per_l
                   ? named && plausible_level(value, GlucoseUnit::mg_per_dl)
                   : named && (decimal || named_low) &&
                         plausible_level(value, GlucoseUnit::mmol_per_l);
    }
    return named || (part.clock && part.slot.empty() && part.words.size() == 1 &&
                     (decimal || usual == GlucoseUnit::mg_per_dl));
}

bool tells_of_a_low(const MessagePart& part) {
    for (std::size_t i = 0; i < part.words.size(); ++i) {
        const std::string& word = part.words[i].text;
        const bool last = i + 1 == part.words.size();
        const bool told = std::ranges::any_of(
            part.words, [](const MessageWord& one) { return among(happened, one.text); });
        if (told && (word == "low" || word == "lows") &&
            (last || among(between, part.words[i + 1].text) || part.words[i + 1].is_sign())) {
            return true;
        }
    }
    return false;
}

}  // namespace tracewright
