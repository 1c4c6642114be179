#include "intake/serial_time.hpp"

#include <chrono>
#include <cmath>

namespace tracewright {

std::optional<WrittenTime> serial_time(double serial, bool from_1904) {
    constexpr double seconds_a_day = 86400;
    WrittenTime time;
    if (serial >= 0 && serial < 1) {
        time.has_clock = true;
        time.clock = std::chrono::seconds{std::llround(serial * seconds_a_day)};
        return time;
    }
    const std::chrono::local_days origin =
        from_1904 ? std::chrono::local_days{std::chrono::year{1904} / 1 / 1}
                  : std::chrono::local_days{std::chrono::year{1899} / 12 / 30};
    if (!(serial > 30000 && serial < 75000)) {
        return std::nullopt;
    }
    const auto total = std::llround(serial * seconds_a_day);
    const WallTime wall = origin + std::chrono::seconds{total};
    const std::chrono::local_days date = std::chrono::floor<std::chrono::days>(wall);
    const std::chrono::year_month_day ymd{date};
    const int year = static_cast<int>(ymd.year());
    if (year < 2000 || year > 2100) {
        return std::nullopt;
    }
    time.has_date = true;
    time.has_clock = wall != date;
    time.year_first = true;
    time.year = year;
    time.first = static_cast<int>(static_cast<unsigned>(ymd.month()));
    time.second = static_cast<int>(static_cast<unsigned>(ymd.day()));
    time.clock = wall - date;
    return time;
}

}  // namespace tracewright
