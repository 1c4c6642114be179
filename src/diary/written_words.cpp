#include "diary/written_words.hpp"

#include <algorithm>

namespace tracewright {

std::string small_letters(std::string_view text) {
    constexpr std::string_view curly = "\xE2\x80\x99";
    std::string result;
    result.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i, curly.size()) == curly) {
            result += '\'';
            i += curly.size() - 1;
            continue;
        }
        const char c = text[i];
        result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return result;
}

bool speaks_of(const DiaryEntry& entry, std::initializer_list<std::string_view> words) {
    const std::string text = small_letters(entry.text);
    return std::ranges::any_of(
        words, [&](std::string_view word) { return text.find(word) != std::string::npos; });
}

bool tells_how_they_are(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::symptom || entry.kind == DiaryKind::illness ||
           entry.kind == DiaryKind::mood || entry.kind == DiaryKind::note;
}

}  // namespace tracewright
