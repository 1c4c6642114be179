#include "diary/says_something.hpp"

#include <cstddef>

namespace tracewright {

namespace {

// The code point that begins at text[i], and how many bytes it takes; of bytes that are no UTF-8
// the byte itself.
struct CodePoint {
    char32_t value = 0;
    std::size_t bytes = 1;
};

CodePoint code_point_at(std::string_view text, std::size_t i) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
    const unsigned first = byte(i);
    const std::size_t more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC0 ? 1 : 0;
    if (more == 0 || i + more >= text.size()) {
        return {first, 1};
    }
    char32_t value = first & (0x3FU >> more);
    for (std::size_t k = 1; k <= more; ++k) {
        value = value << 6U | (byte(i + k) & 0x3FU);
    }
    return {value, more + 1};
}

// Beyond ASCII all is taken for a letter but the blanks and signs of Latin text, of general and of
// East Asian punctuation, and what is not seen.
bool is_letter_or_digit(char32_t c) {
    if (c < 0x80) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    }
    const bool latin_sign = c < 0xC0 || c == 0xD7 || c == 0xF7;
    const bool sign = (c >= 0x2000 && c <= 0x206F) || (c >= 0x3000 && c <= 0x3003) ||
                      (c >= 0x3008 && c <= 0x3020) || (c >= 0xFE00 && c <= 0xFE0F) ||
                      (c >= 0xFF01 && c <= 0xFF0F) || c == 0xFEFF || c == 0x1680 || c == 0x115F ||
                      c == 0x3164;
    return !latin_sign && !sign;
}

}  // namespace

bool says_something(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const CodePoint one = code_point_at(text, i);
        if (is_letter_or_digit(one.value)) {
            return true;
        }
        i += one.bytes;
    }
    return false;
}

}  // namespace tracewright
