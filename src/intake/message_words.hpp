#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A word, a number or a sign of a message, in small letters, with its place in the text.
struct MessageWord {
    std::string text;  ///< "8:10", "porridge", "20min"; signs one by one; "\n" at a line end
    std::size_t from = 0;
    std::size_t to = 0;
    std::uint32_t line = 1;

    bool is_sign() const;
};

/// The words in order. Digits keep the point, comma or colon between them ("8.10", "1,5").
std::vector<MessageWord> message_words(std::string_view text);

/// A time of day as written, with what it leaves open.
struct MessageClock {
    std::chrono::minutes clock{0};  ///< after midnight
    bool half_told = false;         ///< am, pm, noon or midnight was written, or an hour above 12
    bool half_written = false;      ///< am or pm was written
    /// "8.10", "8h": could be a number or a duration as well, unless its place says otherwise.
    bool doubtful_form = false;
    bool bare_hour = false;  ///< "at 8": no minutes
    std::size_t words = 1;   ///< how many words it took
};

/// The time that begins at words[0]: 8:10, 08:10, 8.10, 8h10, 8h, 8am, 8:10 pm, 8 p.m., 8 o'clock,
/// noon, midday, midnight. Empty for anything else, 25:00 and 8:75 among it; "8.10" before a unit
/// ("8.10 mmol/L") is a number.
std::optional<MessageClock> message_clock(std::span<const MessageWord> words);

/// A length of time: 20 min, 20min, 6h, 1 h 30, 1h30, 1.5 hours, half an hour, an hour.
struct MessageLength {
    double minutes = 0;
    std::size_t words = 1;
};
std::optional<MessageLength> message_length(std::span<const MessageWord> words);

/// A number: "6.1", "5,6", "112". Empty for anything else.
std::optional<double> message_number(std::string_view word);

}  // namespace tracewright
