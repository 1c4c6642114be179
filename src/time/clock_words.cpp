#include "time/clock_words.hpp"

#include <array>

namespace tracewright {

namespace {

constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                            "July",    "August",   "September", "October", "November", "December"};

std::string two_digits(long number) {
    return (number < 10 ? "0" : "") + std::to_string(number);
}

}  // namespace

std::string clock_words(std::chrono::minutes of_day, WayOfWriting way) {
    const long hour = of_day.count() / 60;
    const std::string minutes = ":" + two_digits(of_day.count() % 60);
    if (!way.twelve_hours) {
        return two_digits(hour) + minutes;
    }
    const long on_a_dial = hour % 12 == 0 ? 12 : hour % 12;
    return std::to_string(on_a_dial) + minutes + (hour % 24 < 12 ? " am" : " pm");
}

std::string day_of_month(CivilDate date, WayOfWriting way) {
    const std::chrono::year_month_day ymd{date};
    const std::string day = std::to_string(static_cast<unsigned>(ymd.day()));
    const std::string month = months.at(static_cast<unsigned>(ymd.month()) - 1);
    return way.month_first ? month + " " + day : day + " " + month;
}

}  // namespace tracewright
