#include "coaching/phrases.hpp"
#include "coaching/proposed_in_words.hpp"
#include "diary/medicine_table.hpp"
#include "diary/medicine_words.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string>

namespace tracewright {

namespace {

constexpr std::string_view taking =
    "inject*|unit|units|pill*|tablet*|mg|mcg|shot|shots|jab*|puff*|berberine|chromium|"
    "magnesium|herbal*|prescription*|prescribed|dosage|dose*|dosing|bolus|basal|st john*|med|"
    "meds|insulin*|capsule*|supplement*|vitamin*|psyllium|fenugreek|turmeric|ginseng|"
    "probiotic*|remedy|remedies|drug|drugs|pump|syringe*|inhaler*|the pen|my pen|your pen|"
    "needle|needles|medicat*|medicin*|cider vinegar|vinegar before|take cinnamon|"
    "cinnamon each|cinnamon every|cinnamon before|cinnamon daily|cinnamon a day|"
    "spoon of cinnamon|take one less|take one fewer|take one more|take one extra|take half|"
    "evening one|morning one|night one|bedtime one|noon one|second one|evening ones|"
    "morning ones|water tab*|my tabs|your tabs|the tabs|diabetes tab*|sugar tab*";

// "two instead of four"
bool swaps_counts(std::string_view text) {
    constexpr std::array<std::string_view, 9> counts{"half", "one", "two", "three", "four",
                                                     "1",    "2",   "3",   "4"};
    return std::ranges::any_of(counts, [&](std::string_view before) {
        return std::ranges::any_of(counts, [&](std::string_view after) {
            return says(text, std::string(before) + " instead of " + std::string(after));
        });
    });
}

// As it sounds, so that letters that are mistaken for each other count as the same.
std::string as_it_sounds(std::string_view word) {
    std::string sound;
    for (std::size_t i = 0; i < word.size(); ++i) {
        char c = word[i];
        if (c == 'p' && word.substr(i, 2) == "ph") {
            c = 'f';
            ++i;
        } else if (c == 'y') {
            c = 'i';
        } else if (c == 'k') {
            c = 'c';
        } else if (c == 'z') {
            c = 's';
        }
        if (sound.empty() || sound.back() != c) {
            sound += c;
        }
    }
    return sound;
}

// Whether one becomes the other by so many letters put in, left out or changed.
bool within(std::string_view one, std::string_view other, std::size_t most) {
    if (one.size() > other.size() + most || other.size() > one.size() + most) {
        return false;
    }
    std::vector<std::size_t> row(other.size() + 1);
    for (std::size_t j = 0; j < row.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 0; i < one.size(); ++i) {
        std::size_t corner = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < other.size(); ++j) {
            const std::size_t same = corner + (one[i] == other[j] ? 0 : 1);
            corner = row[j + 1];
            row[j + 1] = std::min({same, row[j] + 1, corner + 1});
        }
    }
    return row.back() <= most;
}

constexpr std::size_t shortest = 6;  // shorter names are too near to plain words
constexpr std::size_t long_name = 9;

const std::map<char, std::vector<std::string>>& sounds_of_names() {
    static const std::map<char, std::vector<std::string>> all = [] {
        std::map<char, std::vector<std::string>> made;
        for (const MedicineSpelling& one : medicine_spellings()) {
            const auto words = medicine_words(one.spelling);  // "prolonged release" names none
            if (words.size() == 1 && words[0].size() >= shortest && !is_plain_word(words[0]) &&
                !stands_for_medicine(words[0])) {
                std::string sound = as_it_sounds(words[0]);
                made[sound.front()].push_back(std::move(sound));
            }
        }
        return made;
    }();
    return all;
}

}  // namespace

bool speaks_of_taking(std::string_view words) {
    std::string text = for_phrases(words);
    for (auto at = text.find("mg/dl"); at != std::string::npos; at = text.find("mg/dl")) {
        text.erase(at, 5);  // a level of glucose, no dose
    }
    return says_any(text, taking) || swaps_counts(text);
}

bool nearly_names_a_medicine(std::string_view words) {
    for (const std::string& word : medicine_words(words)) {
        if (word.size() < shortest || is_plain_word(word)) {
            continue;
        }
        const std::string sound = as_it_sounds(word);
        const auto names = sounds_of_names().find(sound.front());
        if (names == sounds_of_names().end()) {
            continue;
        }
        for (const std::string& name : names->second) {
            if (within(sound, name, std::min(sound.size(), name.size()) >= long_name ? 2 : 1)) {
                return true;
            }
        }
    }
    return false;
}

}  // namespace tracewright
