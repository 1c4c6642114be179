#include "findings/wording.hpp"

#include "time/clock_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::array weekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};

int year_of(CivilDate date) {
    return static_cast<int>(std::chrono::year_month_day{date}.year());
}

const char* weekday_of(CivilDate date) {
    return weekdays.at(std::chrono::weekday{date}.c_encoding());
}

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

std::string clock_time(WallTime at, WayOfWriting way) {
    const auto of_day = at - std::chrono::floor<std::chrono::days>(at);
    return clock_words(std::chrono::floor<std::chrono::minutes>(of_day), way);
}

std::string full_hour(int hour, WayOfWriting way) {
    return clock_words(std::chrono::hours{hour}, way);
}

std::string hour_on_scale(int hour, WayOfWriting way) {
    std::string words = full_hour(hour, way);
    if (way.twelve_hours) {
        words.erase(words.find(':'), 3);
    }
    return words;
}

std::string day_words(CivilDate date, WayOfWriting way) {
    return fmt::format("{} {}", weekday_of(date), day_of_month(date, way));
}

std::string short_day_words(CivilDate date, WayOfWriting way) {
    constexpr std::size_t letters = 3;
    std::string words = day_of_month(date, way);
    const auto month = words.find_first_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    const auto end = std::min(words.find(' ', month), words.size());
    words.erase(month + letters, end - month - letters);
    return fmt::format("{} {}", weekday_of(date), words);
}

std::string weekday_and_day(CivilDate date) {
    return fmt::format("{} {}", weekday_of(date),
                       static_cast<unsigned>(std::chrono::year_month_day{date}.day()));
}

std::string full_date(CivilDate date, WayOfWriting way) {
    return fmt::format("{}{} {}", day_words(date, way), way.month_first ? "," : "", year_of(date));
}

std::string date_range(CivilDate from, CivilDate to, WayOfWriting way) {
    const std::chrono::year_month_day a{from};
    const std::chrono::year_month_day b{to};
    const char* const comma = way.month_first ? "," : "";
    std::string end = fmt::format("{}{} {}", day_of_month(to, way), comma, year_of(to));
    if (from == to) {
        return end;
    }
    if (a.year() != b.year()) {
        return fmt::format("{}{} {} to {}", day_of_month(from, way), comma, year_of(from), end);
    }
    if (a.month() != b.month()) {
        return day_of_month(from, way) + " to " + end;
    }
    return way.month_first ? fmt::format("{} to {}, {}", day_of_month(from, way),
                                         static_cast<unsigned>(b.day()), year_of(to))
                           : fmt::format("{} to {}", static_cast<unsigned>(a.day()), end);
}

std::string day_and_time(WallTime at, WayOfWriting way) {
    return fmt::format("{}{} {}", day_words(std::chrono::floor<std::chrono::days>(at), way),
                       way.month_first ? "," : "", clock_time(at, way));
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

std::string age_words(Instant at, Instant now, const ZoneHistory& clock) {
    using namespace std::chrono;
    const seconds age = now - at;
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
    return ago((clock.date_at(now) - clock.date_at(at)).count(), "day");
}

}  // namespace tracewright
