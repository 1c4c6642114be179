#include "findings/wording.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::array weekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                            "July",    "August",   "September", "October", "November", "December"};

std::string ago(long long count, const char* unit) {
    return fmt::format("{} {}{} ago", count, unit, count == 1 ? "" : "s");
}

}  // namespace

std::string hours_and_minutes(std::chrono::seconds time) {
    const auto minutes = std::chrono::round<std::chrono::minutes>(time).count();
    const auto hours = minutes / 60;
    if (hours == 0) {
        return fmt::format("{} min", minutes);
    }
    return minutes % 60 == 0 ? fmt::format("{} h", hours)
                             : fmt::format("{} h {} min", hours, minutes % 60);
}

std::string clock_time(WallTime at) {
    const std::chrono::hh_mm_ss time{at - std::chrono::floor<std::chrono::days>(at)};
    return fmt::format("{:02}:{:02}", time.hours().count(), time.minutes().count());
}

std::string day_words(CivilDate date) {
    const std::chrono::year_month_day ymd{date};
    const std::chrono::weekday weekday{date};
    return fmt::format("{} {} {}", weekdays.at(weekday.c_encoding()),
                       static_cast<unsigned>(ymd.day()),
                       months.at(static_cast<unsigned>(ymd.month()) - 1));
}

std::string full_date(CivilDate date) {
    const std::chrono::year_month_day ymd{date};
    return fmt::format("{} {}", day_words(date), static_cast<int>(ymd.year()));
}

std::string date_range(CivilDate from, CivilDate to) {
    const std::chrono::year_month_day a{from};
    const std::chrono::year_month_day b{to};
    const auto month = [](const std::chrono::year_month_day& ymd) {
        return months.at(static_cast<unsigned>(ymd.month()) - 1);
    };
    std::string end = fmt::format("{} {} {}", static_cast<unsigned>(b.day()), month(b),
                                  static_cast<int>(b.year()));
    if (from == to) {
        return end;
    }
    std::string begin = std::to_string(static_cast<unsigned>(a.day()));
    if (a.year() != b.year()) {
        begin += fmt::format(" {} {}", month(a), static_cast<int>(a.year()));
    } else if (a.month() != b.month()) {
        begin += fmt::format(" {}", month(a));
    }
    return begin + " to " + end;
}

std::string day_and_time(WallTime at) {
    return day_words(std::chrono::floor<std::chrono::days>(at)) + " " + clock_time(at);
}

std::string glucose_number(double value, GlucoseUnit unit) {
    return unit == GlucoseUnit::mg_per_dl ? fmt::format("{:.0f}", rounded_for_display(value, unit))
                                          : fmt::format("{:.1f}", rounded_for_display(value, unit));
}

std::string glucose_words(double value, GlucoseUnit unit) {
    return glucose_number(value, unit) + " " + name_of(unit);
}

std::string percent_words(double percent) {
    if (percent > 0 && percent < 0.1) {
        return "under 0.1 %";
    }
    if (percent > 99.9 && percent < 100) {
        return "over 99.9 %";
    }
    const bool fine = (percent > 0 && percent < 9.95) || (percent > 99 && percent < 100);
    return fine ? fmt::format("{:.1f} %", percent) : fmt::format("{:.0f} %", percent);
}

std::string from_to_words(const std::string& from, const std::string& to, const std::string& unit) {
    if (from == to) {
        return "about " + to;
    }
    const bool twice = !unit.empty() && from.ends_with(unit) && to.ends_with(unit);
    return (twice ? from.substr(0, from.size() - unit.size()) : from) + " to " + to;
}

std::string between_words(const std::string& from, const std::string& to) {
    return from == to ? "at about " + to : "between " + from + " and " + to;
}

std::string age_words(std::chrono::seconds age) {
    using namespace std::chrono;
    if (age.count() < 0) {
        return "in the future";
    }
    if (age < minutes{1}) {
        return "just now";
    }
    if (age < hours{1}) {
        return ago(duration_cast<minutes>(age).count(), "minute");
    }
    if (age < hours{48}) {
        return ago(duration_cast<hours>(age).count(), "hour");
    }
    return ago(duration_cast<days>(age).count(), "day");
}

}  // namespace tracewright
