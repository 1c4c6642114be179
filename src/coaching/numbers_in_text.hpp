#pragma once

#include "coaching/paper.hpp"

#include <string>
#include <string_view>

namespace tracewright {

/// A client's paper holds at most this many numbers in its message.
inline constexpr int most_numbers = 3;

/// How many numbers a text tells: in digits or in words from 'two' on. A date ("Tue 3 March",
/// "3 March 2026", "2026-03-03") is none; a time of day is one. Our own rule.
int numbers_in(std::string_view text);

/// Numbers in the message of a paper: title, headings, sentences, lists, boxes. First aid,
/// telephone numbers and tables of dates are no part of it.
int numbers_in_message(const Paper& paper);

/// Whether a text holds a percent sign, the word, or a decimal ("7.9", "7,9").
bool percent_or_decimal(std::string_view text);

}  // namespace tracewright
