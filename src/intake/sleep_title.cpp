#include "intake/sleep_title.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace tracewright {

namespace {

constexpr std::array parts{"sleep",     "slept",      "bedtime", "wake",          "woke",
                           "light out", "lights out", "schlaf",  "aufgestanden",  "aufgewacht",
                           "aufwach",   "sommeil",    "coucher", "r\xC3\xA9veil", "sue\xC3\xB1o",
                           "acostar",   "despert"};

constexpr std::array sleep_words{"sleep",   "sleeping", "asleep",  "slept",         "nap",
                                 "schlaf",  "schlafen", "schlafe", "mittagsschlaf", "nickerchen",
                                 "sommeil", "sieste",   "siesta",  "sue\xC3\xB1o",  "dormir"};

}  // namespace

bool names_sleep(std::string_view title) {
    std::string small = lower_case(plain(title));
    std::ranges::replace(small, '_', ' ');
    return has_whole_word(small, "bed") || std::ranges::any_of(parts, [&](const char* part) {
               return small.find(part) != std::string::npos;
           });
}

bool says_sleep(std::string_view text) {
    const std::string small = lower_case(text);
    return std::ranges::find(sleep_words, small) != sleep_words.end();
}

}  // namespace tracewright
