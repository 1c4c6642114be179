#include "time/day_text.hpp"

#include <date/date.h>

#include <algorithm>
#include <charconv>
#include <string_view>

namespace tracewright {

namespace {

// Beyond them is a slip of the keys, and a client's clock is worked out for each year between.
constexpr std::chrono::year first_year{1900};
constexpr std::chrono::year last_year{2100};

}  // namespace

std::string day_text(CivilDate day) {
    return date::format(
        "%F", date::local_days{date::days{static_cast<int>(day.time_since_epoch().count())}});
}

std::optional<CivilDate> day_of_text(const std::string& text) {
    constexpr std::string_view form = "0000-00-00";
    const auto fits = [](char sign, char of_form) {
        return of_form == '0' ? sign >= '0' && sign <= '9' : sign == of_form;
    };
    if (!std::ranges::equal(text, form, fits)) {
        return std::nullopt;
    }
    const auto number = [&](std::size_t from, std::size_t length) {
        int value = 0;
        std::from_chars(text.data() + from, text.data() + from + length, value);
        return value;
    };
    const std::chrono::year_month_day day{std::chrono::year{number(0, 4)},
                                          std::chrono::month{static_cast<unsigned>(number(5, 2))},
                                          std::chrono::day{static_cast<unsigned>(number(8, 2))}};
    if (!day.ok() || day.year() < first_year || day.year() > last_year) {
        return std::nullopt;
    }
    return CivilDate{std::chrono::sys_days{day}.time_since_epoch()};
}

}  // namespace tracewright
