#include "diary/medicine_words.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

bool is_letter_byte(unsigned char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || c >= 0x80;
}

// Small letters of ASCII and of the Latin letters with accents that UTF-8 starts with C3.
std::string in_small_letters(std::string_view text) {
    std::string result(text);
    for (std::size_t i = 0; i < result.size(); ++i) {
        const auto c = static_cast<unsigned char>(result[i]);
        if (c >= 'A' && c <= 'Z') {
            result[i] = static_cast<char>(c + 32);
        } else if (c == 0xC3 && i + 1 < result.size()) {
            const auto next = static_cast<unsigned char>(result[i + 1]);
            if (next >= 0x80 && next <= 0x9E && next != 0x97) {
                result[i + 1] = static_cast<char>(next + 0x20);
            }
            ++i;
        }
    }
    return result;
}

// None of these is, or may stand for, a medicine. Ours, no source.
constexpr std::array plain_words{"a",         "after",     "afternoon",  "ago",
                                 "all",       "am",        "and",        "as",
                                 "at",        "back",      "be",         "because",
                                 "bd",        "bed",       "bedtime",    "been",
                                 "before",    "bid",       "both",       "breakfast",
                                 "but",       "by",        "came",       "chest",
                                 "come",      "course",    "daily",      "day",
                                 "days",      "decreased", "dinner",     "discontinued",
                                 "doctor",    "don't",     "dont",       "dose",
                                 "doses",     "doubled",   "down",       "dr",
                                 "during",    "each",      "eat",        "eating",
                                 "er",        "evening",   "every",      "food",
                                 "for",       "forgot",    "fridge",     "from",
                                 "g",         "half",      "halved",     "have",
                                 "headache",  "her",       "high",       "his",
                                 "i",         "if",        "ill",        "in",
                                 "increased", "instead",   "into",       "ir",
                                 "is",        "it",        "iu",         "january",
                                 "february",  "march",     "april",      "may",
                                 "june",      "july",      "august",     "september",
                                 "october",   "november",  "december",   "knee",
                                 "know",      "last",      "less",       "longer",
                                 "low",       "lowered",   "lunch",      "maybe",
                                 "mcg",       "me",        "meal",       "meals",
                                 "mg",        "might",     "ml",         "mod",
                                 "month",     "months",    "more",       "morning",
                                 "mr",        "my",        "name",       "needed",
                                 "new",       "next",      "night",      "no",
                                 "nocte",     "not",       "now",        "od",
                                 "of",        "off",       "old",        "om",
                                 "on",        "on",        "once",       "only",
                                 "or",        "out",       "paused",     "per",
                                 "pm",        "prn",       "quit",       "raised",
                                 "ran",       "reduced",   "restarted",  "same",
                                 "shakes",    "since",     "sr",         "start",
                                 "started",   "still",     "stop",       "stopped",
                                 "sugar",     "supper",    "sure",       "swapped",
                                 "switched",  "take",      "taken",      "takes",
                                 "taking",    "tds",       "than",       "the",
                                 "then",      "this",      "three",      "tid",
                                 "time",      "times",     "to",         "today",
                                 "twice",     "two",       "u",          "units",
                                 "unit",      "up",        "use",        "used",
                                 "uses",      "using",     "w",          "wants",
                                 "was",       "week",      "weekly",     "weeks",
                                 "weight",    "went",      "when",       "which",
                                 "while",     "wife's",    "with",       "without",
                                 "xr",        "year",      "years",      "yesterday",
                                 "missed",    "monday",    "tuesday",    "wednesday",
                                 "thursday",  "friday",    "saturday",   "sunday",
                                 "mon",       "tue",       "tues",       "wed",
                                 "thu",       "thurs",     "fri",        "sat",
                                 "sun",       "husband's", "wife",       "husband",
                                 "will",      "would",     "qds",        "qid",
                                 "mane",      "one",       "four",       "five",
                                 "µg",        "microgram", "micrograms", "gram",
                                 "grams",     "milligram", "milligrams", "hours",
                                 "hour",      "h",         "noon",       "mother's",
                                 "father's",  "planned",   "thinking",   "about",
                                 "never",     "had",       "x"};

// The same in German, whose tablets are written 1-0-1.
constexpr std::array plain_german_words{
    "abend",   "abends",    "am",         "auf",        "bei",         "beim",    "bis",
    "das",     "dem",       "den",        "der",        "die",         "dosis",   "dreimal",
    "ein",     "eine",      "einheit",    "einheiten",  "einmal",      "erhöht",  "essen",
    "früh",    "frühstück", "halbe",      "ie",         "immer",       "jeden",   "jede",
    "mal",     "mahlzeit",  "mahlzeiten", "mit",        "mittag",      "mittags", "morgen",
    "morgens", "nach",      "nachts",     "nacht",      "nur",         "pro",     "schlafen",
    "seit",    "stück",     "tag",        "tage",       "täglich",     "und",     "viermal",
    "vom",     "von",       "vor",        "woche",      "wöchentlich", "zu",      "zum",
    "zur",     "zweimal",   "abendessen", "mittagessen"};

constexpr std::array standing_words{
    "capsule",    "capsules", "cream",      "drops",       "drug", "drugs",     "injection",
    "injections", "infusion", "inhaler",    "jab",         "jabs", "medicine",  "medicines",
    "med",        "meds",     "medication", "patch",       "pen",  "pill",      "pills",
    "powder",     "remedy",   "shot",       "shots",       "some", "something", "spray",
    "stuff",      "syrup",    "supplement", "supplements", "tab",  "tablet",    "tablets",
    "tabs",       "thing",    "treatment",  "what"};

template <std::size_t N>
bool holds(const std::array<const char*, N>& words, std::string_view word) {
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

}  // namespace

std::vector<std::string> medicine_words(std::string_view text) {
    const std::string small = in_small_letters(text);
    std::vector<std::string> words;
    std::string word;
    const auto close = [&] {
        if (!word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    };
    for (std::size_t i = 0; i < small.size(); ++i) {
        const char c = small[i];
        const bool more =
            i + 1 < small.size() && is_letter_byte(static_cast<unsigned char>(small[i + 1]));
        const bool digits = !word.empty() && word.back() >= '0' && word.back() <= '9' && more &&
                            small[i + 1] <= '9';
        if (is_letter_byte(static_cast<unsigned char>(c))) {
            word += c;
        } else if (!word.empty() && more &&
                   (c == '-' || c == '\'' || ((c == '.' || c == ',') && digits))) {
            word += c;
        } else {
            close();
            if (c == '/' || c == '+') {
                words.emplace_back(1, c);
            } else if (c == ',' || c == ';' || c == '\n' || c == '.') {
                words.emplace_back(",");
            }
        }
    }
    close();
    return words;
}

bool is_amount(std::string_view word) {
    if (word.starts_with('x')) {
        word.remove_prefix(1);
    }
    std::size_t i = 0;
    while (i < word.size() && ((word[i] >= '0' && word[i] <= '9') || word[i] == '.' ||
                               word[i] == ',' || word[i] == '-')) {
        ++i;
    }
    if (word.substr(0, i).find_first_of("0123456789") == std::string_view::npos) {
        return false;
    }
    const std::string_view rest = word.substr(i);
    constexpr std::array units{"",   "mg", "g", "u",  "mcg", "ug", "ml", "iu",    "x", "am",
                               "pm", "h",  "d", "st", "nd",  "rd", "th", "units", "%"};
    return holds(units, rest);
}

bool is_plain_word(std::string_view word) {
    return holds(plain_words, word) || holds(plain_german_words, word);
}

bool stands_for_medicine(std::string_view word) {
    return holds(standing_words, word);
}

}  // namespace tracewright
