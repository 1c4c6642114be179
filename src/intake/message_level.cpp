#include "intake/message_level.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
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

std::optional<ToldNumber> told_number(std::string_view word) {
    const auto value = message_number(word);
    return value ? std::optional(
                       ToldNumber{*value, word.find_first_of(".,") != std::string_view::npos})
                 : std::nullopt;
}

GlucoseUnit other_than(GlucoseUnit unit) {
    return unit == GlucoseUnit::mmol_per_l ? GlucoseUnit::mg_per_dl : GlucoseUnit::mmol_per_l;
}

}  // namespace

// 33.3 mmol/L is 600 mg/dL, where meters end.
bool plausible_level(double value, GlucoseUnit unit) {
    return unit == GlucoseUnit::mmol_per_l ? value >= 1 && value <= 33.3
                                           : value >= 18 && value <= 600;
}

GlucoseUnit likely_unit(const ToldNumber& number, GlucoseUnit usual) {
    if (number.decimal && plausible_level(number.value, GlucoseUnit::mmol_per_l)) {
        return GlucoseUnit::mmol_per_l;
    }
    const GlucoseUnit other = other_than(usual);
    return !plausible_level(number.value, usual) && plausible_level(number.value, other) ? other
                                                                                         : usual;
}

std::string doubt_about_unit(const ToldNumber& number, GlucoseUnit taken) {
    const std::string is_taken =
        fmt::format("the unit is not written: {} is taken", name_of(taken));
    if (number.decimal && taken == GlucoseUnit::mg_per_dl) {
        return is_taken + ", which no meter shows with a decimal: please ask what was shown";
    }
    const GlucoseUnit other = other_than(taken);
    return number.decimal || !plausible_level(number.value, other)
               ? is_taken
               : fmt::format("{}, though {:g} may be {} as well: please ask", is_taken,
                             number.value, name_of(other));
}

std::vector<ToldNumber> numbers_of_levels(const MessagePart& part) {
    std::vector<ToldNumber> numbers;
    const auto text = [&](std::size_t i) {
        return i < part.words.size() ? std::string_view(part.words[i].text) : std::string_view();
    };
    for (std::size_t i = 0; i < part.words.size(); ++i) {
        const bool counts = among(fast_sugar, text(i + 1)) || among(measures, text(i + 1)) ||
                            (!message_number(text(i + 1)) && among(fast_sugar, text(i + 2)));
        if (const auto number = told_number(text(i)); number && !counts) {
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
    const ToldNumber level = *told_number(number->text);
    const GlucoseUnit unit = likely_unit(level, usual);
    named = named || (falls && level.decimal);  // "dropped to 2.5"
    if (!plausible_level(level.value, unit)) {
        return false;
    }
    if (unit != usual && !level.decimal) {
        // "sugar 2" may be two spoons.
        return named && (named_low || unit == GlucoseUnit::mg_per_dl);
    }
    return named || (part.clock && part.slot.empty() && part.words.size() == 1 &&
                     (level.decimal || usual == GlucoseUnit::mg_per_dl));
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
