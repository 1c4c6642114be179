#include "intake/message_words.hpp"

#include "diary/written_words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::minutes;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 128;
}

// The small numbers a text holds, read from left to right.
struct Digits {
    std::string_view rest;

    std::optional<int> number(std::size_t most) {
        std::size_t n = 0;
        int value = 0;
        while (n < rest.size() && n < most && is_digit(rest[n])) {
            value = value * 10 + (rest[n] - '0');
            ++n;
        }
        if (n == 0 || (n < rest.size() && is_digit(rest[n]))) {
            return std::nullopt;
        }
        rest.remove_prefix(n);
        return value;
    }
};

constexpr std::array units{"g",    "kg",      "ml",     "l",      "cl",   "dl",   "mmol", "mmol/l",
                           "mg",   "km",      "miles",  "m",      "kcal", "cups", "cup",  "units",
                           "u",    "%",       "mg/dl",  "hours",  "hour", "h",    "hrs",  "min",
                           "mins", "minutes", "slices", "pieces", "x"};

bool is_unit(std::string_view word) {
    return std::any_of(units.begin(), units.end(), [&](const char* one) { return word == one; });
}

enum class Half : std::uint8_t { none, before_noon, after_noon };

Half half_called(std::string_view word) {
    return word == "am" || word == "a.m"   ? Half::before_noon
           : word == "pm" || word == "p.m" ? Half::after_noon
                                           : Half::none;
}

std::optional<MessageClock> told(int hour, int minute, Half half, std::size_t words) {
    MessageClock clock;
    clock.words = words;
    if (minute > 59 || hour > 24 || (hour == 24 && minute != 0)) {
        return std::nullopt;
    }
    if (half != Half::none) {
        if (hour < 1 || hour > 12) {
            return std::nullopt;
        }
        hour = hour % 12 + (half == Half::after_noon ? 12 : 0);
    }
    clock.half_written = half != Half::none;
    clock.half_told = half != Half::none || hour > 12 || hour == 0;
    clock.clock = minutes{(hour % 24) * 60 + minute};
    return clock;
}

}  // namespace

bool MessageWord::is_sign() const {
    return text.size() == 1 && !is_digit(text[0]) && !is_letter(text[0]);
}

std::vector<MessageWord> message_words(std::string_view text) {
    std::vector<MessageWord> words;
    std::uint32_t line = 1;
    std::size_t i = 0;
    const auto at = [&](std::size_t k) { return k < text.size() ? text[k] : ' '; };
    while (i < text.size()) {
        const char c = text[i];
        if (is_digit(c) || is_letter(c)) {
            const std::size_t from = i;
            for (; i < text.size(); ++i) {
                const bool between = i > from && (is_digit(at(i - 1)) || is_letter(at(i - 1)));
                const bool number_mark = (at(i) == '.' || at(i) == ',' || at(i) == ':') &&
                                         between && is_digit(at(i - 1)) && is_digit(at(i + 1));
                const bool word_mark = (at(i) == '\'' || at(i) == '/' || at(i) == '.') && between &&
                                       is_letter(at(i - 1)) && is_letter(at(i + 1));
                if (!is_digit(at(i)) && !is_letter(at(i)) && !number_mark && !word_mark) {
                    break;
                }
            }
            words.push_back({small_letters(text.substr(from, i - from)), from, i, line});
            continue;
        }
        if (c != ' ' && c != '\t' && c != '\r') {
            words.push_back({std::string(1, c), i, i + 1, line});
        }
        line += c == '\n' ? 1 : 0;
        ++i;
    }
    return words;
}

std::optional<MessageClock> message_clock(std::span<const MessageWord> words) {
    if (words.empty()) {
        return std::nullopt;
    }
    const std::string& word = words[0].text;
    if (word == "noon" || word == "midday" || word == "midnight") {
        MessageClock clock;
        clock.clock = minutes{word == "midnight" ? 0 : 12 * 60};
        clock.half_told = true;
        return clock;
    }
    const std::string_view next = words.size() > 1 ? std::string_view(words[1].text) : "";
    Digits digits{word};
    const auto hour = digits.number(2);
    if (!hour) {
        return std::nullopt;
    }
    Half half = half_called(digits.rest);
    if (half != Half::none) {
        return told(*hour, 0, half, 1);
    }
    if (digits.rest.empty()) {  // "8 am", "8 o'clock"
        half = half_called(next);
        const bool o_clock = next == "o'clock" || next == "oclock";
        return half != Half::none || o_clock ? told(*hour, 0, half, 2) : std::nullopt;
    }
    const char mark = digits.rest.front();
    if (mark != ':' && mark != '.' && mark != 'h') {
        return std::nullopt;
    }
    digits.rest.remove_prefix(1);
    if (digits.rest.empty() && mark == 'h') {
        auto clock = told(*hour, 0, Half::none, 1);
        if (clock) {
            clock->doubtful_form = true;
        }
        return clock;
    }
    const bool two_digits =
        digits.rest.size() >= 2 && is_digit(digits.rest[0]) && is_digit(digits.rest[1]);
    const auto minute = two_digits ? digits.number(2) : std::nullopt;
    if (!minute) {
        return std::nullopt;
    }
    std::size_t taken = 1;
    half = half_called(digits.rest);
    if (half == Half::none && !digits.rest.empty()) {
        return std::nullopt;
    }
    if (half == Half::none && half_called(next) != Half::none) {
        half = half_called(next);
        taken = 2;
    }
    if (mark == '.' && half == Half::none && is_unit(next)) {
        return std::nullopt;
    }
    auto clock = told(*hour, *minute, half, taken);
    if (clock) {
        clock->doubtful_form = mark != ':' && half == Half::none;
    }
    return clock;
}

std::optional<double> message_number(std::string_view word) {
    std::string plain(word);
    std::replace(plain.begin(), plain.end(), ',', '.');
    double value = 0;
    const auto [end, error] =
        std::from_chars(plain.data(), plain.data() + plain.size(), value, std::chars_format::fixed);
    const bool whole = error == std::errc{} && end == plain.data() + plain.size();
    return whole && !plain.empty() && is_digit(plain.front()) && value < 1e6 ? std::optional(value)
                                                                             : std::nullopt;
}

std::optional<MessageLength> message_length(std::span<const MessageWord> words) {
    const auto at = [&](std::size_t i) {
        return i < words.size() ? std::string_view(words[i].text) : std::string_view();
    };
    const auto in_minutes = [](std::string_view unit) {
        constexpr std::array hours{"h", "hr", "hrs", "hour", "hours", "std"};
        constexpr std::array mins{"min", "mins", "minute", "minutes"};
        const auto is = [&](const char* one) { return unit == one; };
        return std::any_of(hours.begin(), hours.end(), is) ? 60
               : std::any_of(mins.begin(), mins.end(), is) ? 1
                                                           : 0;
    };
    if (at(0) == "half" && at(1) == "an" && at(2) == "hour") {
        return MessageLength{30, 3};
    }
    if ((at(0) == "an" || at(0) == "one") && at(1) == "hour") {
        return MessageLength{60, 2};
    }
    if (words.empty()) {
        return std::nullopt;
    }
    // The number and its unit, together or apart.
    const std::string_view first = at(0);
    const std::size_t letters = first.find_first_not_of("0123456789.,");
    const std::string_view tail =
        letters == std::string_view::npos ? std::string_view() : first.substr(letters);
    const auto number = message_number(first.substr(0, letters));
    if (!number) {
        return std::nullopt;
    }
    if (tail.size() == 3 && tail[0] == 'h' && is_digit(tail[1]) && is_digit(tail[2])) {  // "1h30"
        return MessageLength{*number * 60 + (tail[1] - '0') * 10 + (tail[2] - '0'), 1};
    }
    const int each = in_minutes(tail.empty() ? at(1) : tail);
    if (each == 0) {
        return std::nullopt;
    }
    MessageLength length{*number * each, tail.empty() ? 2U : 1U};
    // "1 h 20 min", "1 h 30"
    const auto more = each == 60 ? message_number(at(length.words)) : std::nullopt;
    if (more && *more < 60) {
        const bool unit = in_minutes(at(length.words + 1)) == 1;
        length.minutes += *more;
        length.words += unit ? 2 : 1;
    } else if (each == 60) {
        const std::string_view mins = at(length.words);
        const std::size_t end = mins.find_first_not_of("0123456789");
        const auto with_unit = end == std::string_view::npos || in_minutes(mins.substr(end)) != 1
                                   ? std::nullopt
                                   : message_number(mins.substr(0, end));
        if (with_unit) {
            length.minutes += *with_unit;
            length.words += 1;
        }
    }
    return length;
}

}  // namespace tracewright
