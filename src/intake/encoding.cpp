#include "intake/encoding.hpp"

#include <unicode/ucnv.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <memory>

namespace tracewright {

namespace {

constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";
constexpr std::string_view utf16le_mark = "\xFF\xFE";
constexpr std::string_view utf16be_mark = "\xFE\xFF";
constexpr std::size_t sample_size = 1 << 16;
// Up to this share of broken bytes a text is UTF-8 with slips, not another encoding.
constexpr double few_broken = 0.01;

struct CloseConverter {
    void operator()(UConverter* c) const { ucnv_close(c); }
};
using Converter = std::unique_ptr<UConverter, CloseConverter>;

// ICU's name for one of ours, or for any other that a user gives.
std::string icu_name(const std::string& name) {
    return name == "GB 18030" ? "gb18030" : name == "Windows-1252" ? "windows-1252" : name;
}

struct Converted {
    icu::UnicodeString text;
    bool clean = false;  // every byte had a meaning
};

std::optional<Converted> through_icu(std::string_view bytes, const std::string& name) {
    UErrorCode error = U_ZERO_ERROR;
    const Converter converter(ucnv_open(icu_name(name).c_str(), &error));
    if (U_FAILURE(error)) {
        return std::nullopt;
    }
    ucnv_setToUCallBack(converter.get(), UCNV_TO_U_CALLBACK_SUBSTITUTE, nullptr, nullptr, nullptr,
                        &error);
    Converted result;
    result.text = icu::UnicodeString(bytes.data(), static_cast<int32_t>(bytes.size()),
                                     converter.get(), error);
    result.clean = U_SUCCESS(error) && result.text.indexOf(UChar(0xFFFD)) < 0;
    return U_SUCCESS(error) ? std::optional{result} : std::nullopt;
}

std::string as_utf8(const icu::UnicodeString& text) {
    std::string result;
    text.toUTF8String(result);
    return result;
}

bool has_cjk(const icu::UnicodeString& text) {
    for (int32_t i = 0; i < text.length(); ++i) {
        const UChar c = text.charAt(i);
        if (c >= 0x4E00 && c <= 0x9FFF) {
            return true;
        }
    }
    return false;
}

// Bytes of the UTF-8 character at the start; 0 if it is broken (overlong, a surrogate, cut short).
std::size_t character_length(std::string_view bytes) {
    const auto at = [&](std::size_t i) {
        return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U;
    };
    const auto follows = [&](std::size_t i, unsigned low, unsigned high) {
        return at(i) >= low && at(i) <= high;
    };
    const unsigned first = at(0);
    if (first < 0x80) {
        return bytes.empty() ? 0 : 1;
    }
    if (first >= 0xC2 && first <= 0xDF) {
        return follows(1, 0x80, 0xBF) ? 2 : 0;
    }
    if (first >= 0xE0 && first <= 0xEF) {
        const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = first == 0xED ? 0x9F : 0xBF;
        return follows(1, low, high) && follows(2, 0x80, 0xBF) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const unsigned low = first == 0xF0 ? 0x90 : 0x80;
        const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
        return follows(1, low, high) && follows(2, 0x80, 0xBF) && follows(3, 0x80, 0xBF) ? 4 : 0;
    }
    return 0;
}

// Chinese text is written in pairs of which both bytes are high; western letters are followed by
// ASCII.
bool mostly_high_pairs(std::string_view bytes) {
    std::size_t high = 0;
    std::size_t mixed = 0;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        if (static_cast<unsigned char>(bytes[i]) < 0x80) {
            continue;
        }
        const bool pair = i + 1 < bytes.size() && static_cast<unsigned char>(bytes[i + 1]) >= 0xA1;
        (pair ? high : mixed) += 1;
        i += pair ? 1U : 0U;
    }
    return high > mixed;
}

// Replaces each broken byte by U+FFFD; `broken` counts them.
std::string repaired_utf8(std::string_view bytes, std::size_t& broken) {
    std::string result;
    result.reserve(bytes.size());
    broken = 0;
    for (std::size_t i = 0; i < bytes.size();) {
        const std::size_t length = character_length(bytes.substr(i, 4));
        if (length == 0) {
            result += "\xEF\xBF\xBD";
            ++broken;
            ++i;
        } else {
            result.append(bytes, i, length);
            i += length;
        }
    }
    return result;
}

// UTF-16 without a mark: Latin text has a zero in every second byte. Little or big endian by where.
std::optional<const char*> utf16_by_zeros(std::string_view bytes) {
    const std::string_view sample = bytes.substr(0, sample_size);
    if (sample.find('\0') == std::string_view::npos) {
        return std::nullopt;
    }
    std::size_t even = 0;
    std::size_t odd = 0;
    for (std::size_t i = 0; i < sample.size(); ++i) {
        (i % 2 == 0 ? even : odd) += sample[i] == '\0' ? 1U : 0U;
    }
    const std::size_t pairs = sample.size() / 2;
    if (pairs < 4 || bytes.size() % 2 != 0) {
        return std::nullopt;
    }
    if (odd * 2 > pairs && even * 10 < pairs) {
        return "UTF-16LE";
    }
    if (even * 2 > pairs && odd * 10 < pairs) {
        return "UTF-16BE";
    }
    return std::nullopt;
}

// A word at a time, without a way out half-way: as fast as memory.
bool plain_ascii(std::string_view bytes) {
    std::uint64_t any = 0;
    std::size_t i = 0;
    for (; i + 8 <= bytes.size(); i += 8) {
        std::uint64_t word = 0;
        std::memcpy(&word, bytes.data() + i, 8);
        any |= word;
    }
    for (; i < bytes.size(); ++i) {
        any |= static_cast<unsigned char>(bytes[i]);
    }
    return (any & 0x8080808080808080ULL) == 0;
}

DecodedText with_mark(std::string_view bytes, const char* encoding) {
    const auto converted = through_icu(bytes, encoding);
    return {converted ? as_utf8(converted->text) : std::string(), encoding,
            "certain: byte order mark"};
}

DecodedText without_mark(std::string bytes) {
    if (const auto utf16 = utf16_by_zeros(bytes)) {
        return {as_utf8(through_icu(bytes, *utf16)->text), *utf16,
                "likely: zero bytes in every second place"};
    }
    if (plain_ascii(bytes)) {
        return {std::move(bytes), "UTF-8", "certain: plain ASCII"};
    }
    if (valid_utf8(bytes)) {
        return {std::move(bytes), "UTF-8", "likely: valid UTF-8 throughout"};
    }
    std::size_t broken = 0;
    std::string repaired = repaired_utf8(bytes, broken);
    const auto letters = static_cast<std::size_t>(std::count_if(
        bytes.begin(), bytes.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; }));
    if (const auto chinese = through_icu(bytes, "GB 18030");
        chinese && chinese->clean && has_cjk(chinese->text) && mostly_high_pairs(bytes)) {
        return {as_utf8(chinese->text), "GB 18030", "likely: valid GB 18030 with Chinese letters"};
    }
    // Most letters beyond ASCII are good UTF-8: a slip here and there, not another encoding.
    const bool mostly_utf8 =
        letters > 8 * broken &&
        static_cast<double>(broken) < few_broken * static_cast<double>(bytes.size());
    if (mostly_utf8) {
        return {std::move(repaired), "UTF-8",
                "likely: UTF-8 with " + std::to_string(broken) + " broken bytes, shown as U+FFFD"};
    }
    const auto western = through_icu(bytes, "Windows-1252");
    return {western ? as_utf8(western->text) : std::move(repaired), "Windows-1252",
            "a guess: not valid UTF-8, no zero bytes; --encoding overrides"};
}

}  // namespace

bool valid_utf8(std::string_view bytes) {
    std::size_t i = 0;
    while (i < bytes.size()) {
        // Eight plain bytes at a time.
        while (i + 8 <= bytes.size()) {
            std::uint64_t word = 0;
            std::memcpy(&word, bytes.data() + i, 8);
            if ((word & 0x8080808080808080ULL) != 0) {
                break;
            }
            i += 8;
        }
        if (i >= bytes.size()) {
            break;
        }
        if (static_cast<unsigned char>(bytes[i]) < 0x80) {
            ++i;
            continue;
        }
        const std::size_t length = character_length(bytes.substr(i, 4));
        if (length == 0) {
            return false;
        }
        i += length;
    }
    return true;
}

std::optional<DecodedText> decoded(std::string bytes, const std::optional<std::string>& forced) {
    if (forced) {
        const std::string_view view = bytes;
        const bool marked = view.starts_with(utf8_mark);
        const auto converted = through_icu(marked ? view.substr(utf8_mark.size()) : view, *forced);
        if (!converted) {
            return std::nullopt;
        }
        icu::UnicodeString text = converted->text;
        if (text.startsWith(icu::UnicodeString(UChar(0xFEFF)))) {
            text.remove(0, 1);
        }
        return DecodedText{as_utf8(text), *forced, "asked for by option"};
    }
    const std::string_view view = bytes;
    if (view.starts_with(utf8_mark)) {
        bytes.erase(0, utf8_mark.size());
        std::size_t broken = 0;
        std::string sure = "certain: byte order mark";
        if (!valid_utf8(bytes)) {
            bytes = repaired_utf8(bytes, broken);
            sure += "; " + std::to_string(broken) + " broken bytes, shown as U+FFFD";
        }
        return DecodedText{std::move(bytes), "UTF-8", sure};
    }
    if (view.starts_with(utf16le_mark)) {
        return with_mark(view.substr(2), "UTF-16LE");
    }
    if (view.starts_with(utf16be_mark)) {
        return with_mark(view.substr(2), "UTF-16BE");
    }
    return without_mark(std::move(bytes));
}

}  // namespace tracewright
