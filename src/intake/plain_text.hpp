#pragma once

#include <string>
#include <string_view>

namespace tracewright {

/// Without blanks at both ends: space, tab, no-break space, narrow no-break space, U+FEFF.
std::string_view trimmed(std::string_view text);

/// Trimmed, with full-width and Arabic-Indic digits, full-width punctuation, U+2212 and no-break
/// spaces written as ASCII (interchange 4.4 row 28). Plain ASCII comes back as it was.
std::string plain(std::string_view text);

/// Letters to lower case: ASCII by itself, anything else by Unicode.
std::string lower_case(std::string_view text);

bool is_ascii(std::string_view text);

/// Whether a word, or several, stands in a text whose words are parted by single blanks.
bool has_whole_word(std::string_view text, std::string_view word);

/// Nothing but dashes, equals signs, underscores, stars or blanks: a drawn line, not data.
bool is_separator(std::string_view text);

/// Has a control character (other than TAB and line ends), or U+FFFD where a byte had no meaning.
bool has_broken_characters(std::string_view text);

/// Broken characters replaced by U+FFFD, control characters left out: how a note is kept.
std::string without_controls(std::string_view text);

}  // namespace tracewright
