#include "intake/wall_text.hpp"

#include <fmt/format.h>

#include <chrono>

namespace tracewright {

std::string wall_text(WallTime wall) {
    const auto date = std::chrono::floor<std::chrono::days>(wall);
    const std::chrono::year_month_day ymd{date};
    const std::chrono::hh_mm_ss time{wall - date};
    return fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", static_cast<int>(ymd.year()),
                       static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                       time.hours().count(), time.minutes().count());
}

}  // namespace tracewright
