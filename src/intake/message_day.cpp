#include "intake/message_day.hpp"

#include <algorithm>
#include <array>
#include <chrono>

namespace tracewright {

namespace {

using std::chrono::days;

constexpr std::array weekday_names{"sunday",   "monday", "tuesday", "wednesday",
                                   "thursday", "friday", "saturday"};
constexpr std::array month_names{"january",   "february", "march",    "april",
                                 "may",       "june",     "july",     "august",
                                 "september", "october",  "november", "december"};

// The number of a name by its whole or its first three letters ("tues" and "sept" too).
template <std::size_t N>
std::optional<std::size_t> place_of(const std::array<const char*, N>& names,
                                    std::string_view word) {
    for (std::size_t i = 0; i < N; ++i) {
        const std::string_view name = names[i];
        const bool shortened = word.size() == 3 || word == "tues" || word == "thur" ||
                               word == "thurs" || word == "sept";
        if (word == name || (shortened && name.starts_with(word))) {
            return i;
        }
    }
    return std::nullopt;
}

std::optional<CivilDate> date_of(int year, int month, int day_of_month) {
    const std::chrono::year_month_day date{std::chrono::year{year},
                                           std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day_of_month)}};
    return date.ok() ? std::optional(CivilDate{date}) : std::nullopt;
}

std::string_view word_at(std::span<const MessageWord> words, std::size_t i) {
    return i < words.size() ? std::string_view(words[i].text) : std::string_view();
}

int whole_at(std::span<const MessageWord> words, std::size_t i) {
    const auto number = message_number(word_at(words, i));
    return number && *number == static_cast<int>(*number) ? static_cast<int>(*number) : -1;
}

std::optional<MessageDay> day_of(std::optional<CivilDate> date, std::size_t words, bool sure) {
    return date ? std::optional(MessageDay{*date, words, sure, false}) : std::nullopt;
}

// 2026-03-02, 02.03.2026.
std::optional<MessageDay> in_numbers(std::span<const MessageWord> words) {
    const std::string_view one = word_at(words, 0);
    if (one.size() == 4 && whole_at(words, 0) >= 2000 && word_at(words, 1) == "-" &&
        word_at(words, 3) == "-") {
        return day_of(date_of(whole_at(words, 0), whole_at(words, 2), whole_at(words, 4)), 5, true);
    }
    if (std::count(one.begin(), one.end(), '.') != 2) {
        return std::nullopt;
    }
    const std::size_t a = one.find('.');
    const std::size_t b = one.rfind('.');
    const auto day = message_number(one.substr(0, a));
    const auto month = message_number(one.substr(a + 1, b - a - 1));
    const auto year = message_number(one.substr(b + 1));
    if (!day || !month || !year || *day > 31 || *month > 12 || *year >= 3000) {
        return std::nullopt;
    }
    return day_of(date_of(static_cast<int>(*year) + (*year < 100 ? 2000 : 0),
                          static_cast<int>(*month), static_cast<int>(*day)),
                  1, true);
}

// 2 March, March 2.
std::optional<MessageDay> by_month(std::span<const MessageWord> words, CivilDate today) {
    const auto behind = place_of(month_names, word_at(words, 1));
    const auto here = place_of(month_names, word_at(words, 0));
    const int number = behind ? whole_at(words, 0) : here ? whole_at(words, 1) : -1;
    if (number < 1 || number > 31) {
        return std::nullopt;
    }
    const auto month = static_cast<int>(behind ? *behind : *here) + 1;
    const int told = whole_at(words, 2);
    if (told >= 2000 && told < 2200) {
        return day_of(date_of(told, month, number), 3, true);
    }
    const auto year = static_cast<int>(std::chrono::year_month_day{today}.year());
    const auto date = date_of(year, month, number);
    if (date && *date > today + days{1}) {
        return day_of(date_of(year - 1, month, number), 2, false);
    }
    return day_of(date, 2, true);
}

}  // namespace

std::optional<MessageDay> message_day(std::span<const MessageWord> words, CivilDate today,
                                      bool part_begins) {
    const std::string_view one = word_at(words, 0);
    if (one == "today" || one == "yesterday") {
        return MessageDay{today - days{one == "today" ? 0 : 1}, 1, true, true};
    }
    if (auto date = in_numbers(words)) {
        return date;
    }
    if (!part_begins) {
        return std::nullopt;
    }
    const auto weekday = place_of(weekday_names, one);
    const bool a_word_too = (one == "sun" || one == "sat") && word_at(words, 1) != ":";
    if (weekday && !a_word_too) {
        const auto now = std::chrono::weekday{today}.c_encoding();
        const auto back = (now + 7 - static_cast<unsigned>(*weekday)) % 7;
        return MessageDay{today - days{back}, 1, back == 0, false};
    }
    return by_month(words, today);
}

}  // namespace tracewright
