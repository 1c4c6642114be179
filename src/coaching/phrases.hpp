#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A text as phrases are looked for in it: small letters, one blank between words, digits apart
/// from letters ("5kg" as "5 kg"), dashes of every length as "-".
std::string for_phrases(std::string_view words);

/// The phrase begins a word of the text; "*" at its end lets that word go on.
bool says(std::string_view text, std::string_view phrase);

/// The phrases of a table, which stand in one text parted by "|".
std::vector<std::string_view> phrases_in(std::string_view table);
bool says_any(std::string_view text, std::string_view table);

}  // namespace tracewright
