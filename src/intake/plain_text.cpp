#include "intake/plain_text.hpp"

#include <unicode/locid.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

constexpr std::array<std::string_view, 6> blanks{
    " ", "\t", "\xC2\xA0", "\xE2\x80\xAF", "\xEF\xBB\xBF", "\xE2\x80\x89"};
constexpr std::string_view replacement = "\xEF\xBF\xBD";

bool is_control(char c) {
    const auto u = static_cast<unsigned char>(c);
    return (u < 0x20 && c != '\t' && c != '\n' && c != '\r') || u == 0x7F;
}

char32_t as_plain(char32_t c) {
    if (c >= 0xFF01 && c <= 0xFF5E) {
        return c - 0xFF01 + U'!';
    }
    if (c >= 0x0660 && c <= 0x0669) {
        return c - 0x0660 + U'0';
    }
    if (c >= 0x06F0 && c <= 0x06F9) {
        return c - 0x06F0 + U'0';
    }
    if (c == 0x066B || c == 0x066C) {  // their decimal mark and their mark of thousands
        return c == 0x066B ? U'.' : U',';
    }
    if (c == 0x2212 || c == 0x2013) {
        return U'-';
    }
    return c == 0xA0 || c == 0x202F || c == 0x2009 || c == 0x3000 ? U' ' : c;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    const auto visible = [](char c) { return c > ' ' && c < 0x7F; };
    if (!text.empty() && visible(text.front()) && visible(text.back())) {
        return text;  // as most are: no blank begins or ends with such a character
    }
    for (bool more = true; more;) {
        more = false;
        for (const std::string_view blank : blanks) {
            if (text.starts_with(blank)) {
                text.remove_prefix(blank.size());
                more = true;
            }
            if (text.ends_with(blank)) {
                text.remove_suffix(blank.size());
                more = true;
            }
        }
    }
    return text;
}

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

std::string plain(std::string_view text) {
    text = trimmed(text);
    if (is_ascii(text)) {
        return std::string(text);
    }
    icu::UnicodeString result;
    const icu::UnicodeString source = icu::UnicodeString::fromUTF8(
        icu::StringPiece(text.data(), static_cast<int32_t>(text.size())));
    for (int32_t i = 0; i < source.length(); i = source.moveIndex32(i, 1)) {
        result.append(static_cast<UChar32>(as_plain(static_cast<char32_t>(source.char32At(i)))));
    }
    std::string utf8;
    result.toUTF8String(utf8);
    return std::string(trimmed(utf8));
}

std::string lower_case(std::string_view text) {
    std::string result(text);
    if (is_ascii(text)) {
        std::transform(result.begin(), result.end(), result.begin(), [](char c) {
            return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        });
        return result;
    }
    icu::UnicodeString unicode = icu::UnicodeString::fromUTF8(
        icu::StringPiece(text.data(), static_cast<int32_t>(text.size())));
    unicode.toLower(icu::Locale::getRoot());
    result.clear();
    unicode.toUTF8String(result);
    return result;
}

bool has_whole_word(std::string_view text, std::string_view word) {
    for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
        const auto end = at + word.size();
        if ((at == 0 || text[at - 1] == ' ') && (end == text.size() || text[end] == ' ')) {
            return true;
        }
    }
    return false;
}

bool is_separator(std::string_view text) {
    return text.find_first_not_of("-=_*~+ \t") == std::string_view::npos;
}

bool has_broken_characters(std::string_view text) {
    return std::any_of(text.begin(), text.end(), is_control) ||
           text.find(replacement) != std::string_view::npos;
}

std::string without_controls(std::string_view text) {
    std::string result(text);
    std::erase_if(result, is_control);
    return result;
}

}  // namespace tracewright
