#include "intake/meal_title.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

struct SlotWord {
    std::string_view word;
    std::string_view slot;
};

// Longer ones first where one stands in another.
constexpr std::array slot_words{SlotWord{"breakfast", "breakfast"},
                                SlotWord{"fr\xC3\xBChst\xC3\xBC"
                                         "ck",
                                         "breakfast"},
                                SlotWord{"fruehstueck", "breakfast"},
                                SlotWord{"petit d\xC3\xA9jeuner", "breakfast"},
                                SlotWord{"petit dejeuner", "breakfast"},
                                SlotWord{"desayuno", "breakfast"},
                                SlotWord{"\xE6\x97\xA9\xE9\xA4\x90", "breakfast"},
                                SlotWord{"lunch", "lunch"},
                                SlotWord{"mittagessen", "lunch"},
                                SlotWord{"d\xC3\xA9jeuner", "lunch"},
                                SlotWord{"dejeuner", "lunch"},
                                SlotWord{"almuerzo", "lunch"},
                                SlotWord{"\xE5\x8D\x88\xE9\xA4\x90", "lunch"},
                                SlotWord{"dinner", "dinner"},
                                SlotWord{"supper", "dinner"},
                                SlotWord{"abendessen", "dinner"},
                                SlotWord{"abendbrot", "dinner"},
                                SlotWord{"d\xC3\xAEner", "dinner"},
                                SlotWord{"cena", "dinner"},
                                SlotWord{"\xE6\x99\x9A\xE9\xA4\x90", "dinner"},
                                SlotWord{"snack", "snack"},
                                SlotWord{"zwischenmahlzeit", "snack"},
                                SlotWord{"collation", "snack"},
                                SlotWord{"go\xC3\xBBter", "snack"},
                                SlotWord{"merienda", "snack"},
                                SlotWord{"\xE5\x8A\xA0\xE9\xA4\x90", "snack"}};

constexpr std::array meal_words{"meal", "mahlzeit", "repas", "comida"};
constexpr std::array time_words{"time", "zeit", "szeit", "uhrzeit", "heure", "hora", "clock", "ts"};
constexpr std::array which_words{"bedtime",   "am",         "pm",    "morning", "afternoon",
                                 "evening",   "late",       "first", "second",  "third",
                                 "vormittag", "nachmittag", "abends"};
constexpr std::array small_words{"start", "started", "begin", "beginn", "eaten", "ate", "of",  "at",
                                 "for",   "the",     "de",    "du",     "del",   "la",  "des", "s"};

bool is_one_of(const auto& words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

bool is_number(std::string_view word) {
    return word.find_first_not_of("0123456789") == std::string_view::npos;
}

// Each word between single blanks.
void each_word(std::string_view words, const auto& see) {
    while (!words.empty()) {
        const std::size_t end = words.find(' ');
        if (const auto word = words.substr(0, end); !word.empty()) {
            see(word);
        }
        words.remove_prefix(end == std::string_view::npos ? words.size() : end + 1);
    }
}

// What the words beside the meal's say of it.
TitledMeal described(TitledMeal meal, std::string_view rest) {
    meal.alone = true;
    each_word(rest, [&](std::string_view word) {
        if (is_one_of(time_words, word)) {
            meal.of_time = true;
        } else if (is_number(word) || is_one_of(which_words, word)) {
            meal.name += " " + std::string(word);
        } else if (!is_one_of(small_words, word)) {
            meal.alone = false;
        }
    });
    return meal;
}

}  // namespace

std::optional<TitledMeal> titled_meal(std::string_view words) {
    for (const auto& [word, slot] : slot_words) {
        if (const std::size_t at = words.find(word); at != std::string_view::npos) {
            const std::string rest = std::string(words.substr(0, at)) + " " +
                                     std::string(words.substr(at + word.size()));
            return described({std::string(slot), slot}, rest);
        }
    }
    bool named = false;
    std::string rest;
    each_word(words, [&](std::string_view word) {
        named = named || is_one_of(meal_words, word);
        rest += is_one_of(meal_words, word) ? "" : std::string(word) + " ";
    });
    TitledMeal meal = described({"meal", {}}, rest);
    const bool numbered = meal.name.find_first_of("0123456789") != std::string::npos;
    return named && numbered ? std::optional{meal} : std::nullopt;
}

}  // namespace tracewright
