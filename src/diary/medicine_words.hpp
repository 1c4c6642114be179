#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A text about medicines as words in small letters: letters, digits and inner hyphens, points and
/// apostrophes stay together; '/', '+' and the marks that part clauses (',', ';', line ends, and
/// the full stop after a word) are words of their own, the latter all as ",".
std::vector<std::string> medicine_words(std::string_view text);

/// A number, an amount or a count: "500", "1.2", "12u", "1000mg", "x2", "2x".
bool is_amount(std::string_view word);

/// Words of dose, time, form and occasion that name no medicine by themselves.
bool is_plain_word(std::string_view word);

/// Words that stand for some medicine without naming it: "tablet", "jab", "something".
bool stands_for_medicine(std::string_view word);

}  // namespace tracewright
