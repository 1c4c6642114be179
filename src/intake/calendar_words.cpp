#include "intake/calendar_words.hpp"

#include <array>

namespace tracewright {

namespace {

// Month names by their first letters, enough to tell them apart, in the order of the year.
struct MonthName {
    std::string_view start;
    int month;
};
constexpr std::array<MonthName, 30> month_names{{
    {"jan", 1},
    {"ene", 1},
    {"j\xC3\xA4n", 1},
    {"feb", 2},
    {"f\xC3\xA9v", 2},
    {"fev", 2},
    {"mar", 3},
    {"m\xC3\xA4r", 3},
    {"mrz", 3},
    {"apr", 4},
    {"avr", 4},
    {"abr", 4},
    {"may", 5},
    {"mai", 5},
    {"juin", 6},
    {"jun", 6},
    {"juil", 7},
    {"jul", 7},
    {"aug", 8},
    {"ao\xC3\xBB", 8},
    {"aou", 8},
    {"ago", 8},
    {"sep", 9},
    {"oct", 10},
    {"okt", 10},
    {"nov", 11},
    {"dez", 12},
    {"dec", 12},
    {"d\xC3\xA9"
     "c",
     12},
    {"dic", 12},
}};
constexpr std::array<std::string_view, 24> weekday_starts{
    "mon", "tue", "wed", "thu", "fri", "sat", "sun", "mo",  "di",  "mi",  "do",  "fr",
    "sa",  "so",  "lun", "mar", "mer", "jeu", "ven", "sam", "dim", "mie", "jue", "vie"};

}  // namespace

int month_of(std::string_view word) {
    for (const MonthName& name : month_names) {
        if (word.starts_with(name.start)) {
            return name.month;
        }
    }
    return 0;
}

bool is_weekday(std::string_view word) {
    for (const std::string_view start : weekday_starts) {
        if (word.starts_with(start)) {
            return true;
        }
    }
    return false;
}

}  // namespace tracewright
