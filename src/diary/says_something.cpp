#include "diary/says_something.hpp"

#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <cstdint>

namespace tracewright {

bool says_something(std::string_view text) {
    const icu::UnicodeString unicode = icu::UnicodeString::fromUTF8(
        icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
    for (std::int32_t i = 0; i < unicode.length(); i = unicode.moveIndex32(i, 1)) {
        if (u_isalnum(unicode.char32At(i)) != 0) {
            return true;
        }
    }
    return false;
}

}  // namespace tracewright
