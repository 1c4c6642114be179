#include "time/day_text.hpp"

#include <date/date.h>

#include <locale>
#include <sstream>

namespace tracewright {

std::string day_text(CivilDate day) {
    return date::format(
        "%F", date::local_days{date::days{static_cast<int>(day.time_since_epoch().count())}});
}

std::optional<CivilDate> day_of_text(const std::string& text) {
    std::istringstream stream(text);
    stream.imbue(std::locale::classic());
    date::local_days day;
    stream >> date::parse("%F", day);
    if (stream.fail() || stream.peek() != std::istringstream::traits_type::eof()) {
        return std::nullopt;
    }
    return CivilDate{std::chrono::days{day.time_since_epoch().count()}};
}

}  // namespace tracewright
