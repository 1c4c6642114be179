#include "diary/written_words.hpp"

#include <algorithm>
#include <array>

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

bool denies_what_follows(std::string_view before) {
    constexpr std::array denials{"no", "not", "never", "without"};
    constexpr std::array between{"more", "longer", "any", "on", "a", "having", "taking", "had"};
    const std::string text = small_letters(before);
    std::string_view rest = text;
    while (true) {
        while (rest.ends_with(' ')) {
            rest.remove_suffix(1);
        }
        const std::string_view word = rest.substr(rest.find_last_of(' ') + 1);
        const auto among = [&](const auto& words) {
            return std::ranges::any_of(words, [&](const char* one) { return word == one; });
        };
        if (!among(between)) {
            return among(denials);
        }
        rest.remove_suffix(word.size());
    }
}

bool speaks_of_undenied(const DiaryEntry& entry, std::initializer_list<std::string_view> words) {
    const std::string text = small_letters(entry.text);
    return std::ranges::any_of(words, [&](std::string_view word) {
        for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
            if (!denies_what_follows(std::string_view(text).substr(0, at))) {
                return true;
            }
        }
        return false;
    });
}

bool tells_how_they_are(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::symptom || entry.kind == DiaryKind::illness ||
           entry.kind == DiaryKind::mood || entry.kind == DiaryKind::note;
}

}  // namespace tracewright
