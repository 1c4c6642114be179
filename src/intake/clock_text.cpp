#include "intake/clock_text.hpp"

#include "intake/text_cursor.hpp"
#include "intake/time_reader.hpp"

#include <chrono>
#include <utility>

namespace tracewright {

namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

// Digits alone, too few for a date: most cells of a table of values.
bool is_short_number(std::string_view text) {
    return text.size() < 8 && text.find_first_not_of("0123456789") == std::string_view::npos;
}

// "2026-03-02 08:15" and "2026-03-02T08:15:00", the forms that most files keep to. Empty for
// anything else, an hour of 24 and a leap second among it: the reader of all forms knows those.
std::optional<WrittenTime> plain_time(std::string_view text) {
    constexpr std::string_view form = "0000-00-00 00:00:00";
    if (text.size() != 16 && text.size() != form.size()) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool fits =
            form[i] == '0' ? is_digit(text[i]) : text[i] == form[i] || (i == 10 && text[i] == 'T');
        if (!fits) {
            return std::nullopt;
        }
    }
    const auto two = [&](std::size_t at) { return (text[at] - '0') * 10 + (text[at + 1] - '0'); };
    const int second = text.size() == form.size() ? two(17) : 0;
    if (two(11) > 23 || two(14) > 59 || second > 59) {
        return std::nullopt;
    }
    WrittenTime time;
    time.has_date = time.has_clock = time.year_first = true;
    time.year = two(0) * 100 + two(2);
    time.first = two(5);
    time.second = two(8);
    time.clock = hours{two(11)} + minutes{two(14)} + seconds{second};
    return time;
}

}  // namespace

std::optional<WrittenTime> time_with_abbreviation(std::string_view text) {
    // The longest form anyone writes, with room: a long text is no time.
    constexpr std::size_t longest = 64;
    if (text.empty() || text.size() > longest || is_short_number(text)) {
        return std::nullopt;
    }
    if (auto time = plain_time(text)) {
        return time;
    }
    return time_read_from(text);
}

std::optional<WrittenTime> written_time(std::string_view text) {
    auto time = time_with_abbreviation(text);
    return time && time->abbreviation.empty() ? std::move(time) : std::nullopt;
}

}  // namespace tracewright
