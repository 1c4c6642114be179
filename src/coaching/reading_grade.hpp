#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace tracewright {

/// Syllables of one English word: groups of vowels (a, e, i, o, u, y), less a silent e at the end
/// and in -ed and -es, at least 1; words that this rule misses and our papers use stand in a short
/// list. A number counts one for each digit, a unit with a slash ("mmol/L") its parts. Our own
/// rule: the formula's source counts by ear.
int syllables(std::string_view word);

/// Words, sentences and syllables of running text. A text that ends without a full stop, question
/// or exclamation mark is a sentence all the same; a colon or semicolon ends none.
struct TextCounts {
    int sentences = 0;
    int words = 0;
    int syllables = 0;
};
TextCounts counts_of(std::span<const std::string> texts);

/// School grade of English text: 0.39 words a sentence + 11.8 syllables a word - 15.59. Empty for
/// a text without a word. A short easy text can come out below 0.
/// Source: Kincaid, Fishburne, Rogers, Chissom 1975, Derivation of new readability formulas for
/// Navy enlisted personnel, Research Branch Report 8-75, 10.21236/ADA006655 (from memory).
std::optional<double> reading_grade(const TextCounts& counts);

}  // namespace tracewright
