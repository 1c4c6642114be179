#include "intake/sleep_title.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace tracewright {

namespace {

// Each says sleep and which end of it, wherever it stands in a title.
constexpr std::array start_parts{"bedtime",     "bed time",     "to bed",        "in bed at",
                                 "fell asleep", "light out",    "lights out",    "zu bett",
                                 "ins bett",    "einschlaf",    "eingeschlafen", "coucher",
                                 "acostar",     "schlafbeginn", "schlafanfang",  "sleepstart"};
constexpr std::array end_parts{"wake",     "woke",          "waking",    "got up",
                               "get up",   "aufgestanden",  "aufstehen", "aufgewacht",
                               "aufwach",  "r\xC3\xA9veil", "reveil",    "despert",
                               "levantar", "schlafende",    "sleepend"};

// Beside these a whole word tells the end.
constexpr std::array sleep_parts{"sleep", "slept", "schlaf", "sommeil", "sue\xC3\xB1o"};
constexpr std::array start_words{"start",
                                 "started",
                                 "starts",
                                 "begin",
                                 "begins",
                                 "began",
                                 "beginn",
                                 "anfang",
                                 "onset",
                                 "d\xC3\xA9"
                                 "but",
                                 "debut",
                                 "inicio",
                                 "from"};
constexpr std::array end_words{"end", "ended", "ends", "ende", "stop", "finish", "fin", "until"};

constexpr std::array sleep_words{"sleep",   "sleeping", "asleep",  "slept",         "nap",
                                 "schlaf",  "schlafen", "schlafe", "mittagsschlaf", "nickerchen",
                                 "sommeil", "sieste",   "siesta",  "sue\xC3\xB1o",  "dormir"};

}  // namespace

EndOfSleep end_of_sleep(std::string_view words) {
    const auto part = [&](const char* one) { return words.find(one) != std::string_view::npos; };
    const auto word = [&](const char* one) { return has_whole_word(words, one); };
    if (std::ranges::any_of(start_parts, part)) {
        return EndOfSleep::start;
    }
    if (std::ranges::any_of(end_parts, part)) {
        return EndOfSleep::end;
    }
    if (std::ranges::none_of(sleep_parts, part)) {
        return EndOfSleep::none;
    }
    return std::ranges::any_of(start_words, word) ? EndOfSleep::start
           : std::ranges::any_of(end_words, word) ? EndOfSleep::end
                                                  : EndOfSleep::none;
}

bool names_a_night(std::string_view title) {
    std::string small = lower_case(plain(title));
    std::ranges::replace(small, '_', ' ');
    return std::ranges::any_of(std::array{"night", "nights", "nacht", "nuit", "noche"},
                               [&](const char* one) { return has_whole_word(small, one); });
}

bool says_sleep(std::string_view text) {
    const std::string small = lower_case(text);
    return std::ranges::find(sleep_words, small) != sleep_words.end();
}

}  // namespace tracewright
