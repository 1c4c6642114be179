#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// Text as UTF-8 with how it was written and how sure that is.
struct DecodedText {
    std::string text;
    std::string encoding;  ///< "UTF-8", "UTF-16LE", "UTF-16BE", "GB 18030", "Windows-1252"
    std::string sure;      ///< in words
};

/// Decodes by: byte order mark; valid UTF-8; UTF-16 by the pattern of its zero bytes; valid GB
/// 18030 with CJK letters in it; UTF-8 with a few broken bytes (which become U+FFFD); else
/// Windows-1252. `forced` (an encoding's name) overrides; an unknown name is refused by returning
/// nothing. A byte order mark is taken off.
std::optional<DecodedText> decoded(std::string bytes,
                                   const std::optional<std::string>& forced = {});

/// Whether the bytes are valid UTF-8, as fast as memory allows for plain ASCII.
bool valid_utf8(std::string_view bytes);

}  // namespace tracewright
