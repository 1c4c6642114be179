#pragma once

#include <span>
#include <string>
#include <string_view>

namespace tracewright {

/// A text as phrases are looked for in it: small letters, one blank between words, digits apart
/// from letters ("5kg" as "5 kg"), dashes of every length as "-".
std::string for_phrases(std::string_view words);

/// The phrase begins a word of the text; "*" at its end lets that word go on.
bool says(std::string_view text, std::string_view phrase);
bool says_any(std::string_view text, std::span<const std::string_view> phrases);

}  // namespace tracewright
