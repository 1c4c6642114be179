#include "coaching/phrases.hpp"

#include "diary/written_words.hpp"

#include <algorithm>

namespace tracewright {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return c >= 'a' && c <= 'z';
}

bool is_letter_or_digit(char c) {
    return is_letter(c) || is_digit(c);
}

}  // namespace

std::string for_phrases(std::string_view words) {
    std::string text;
    const std::string small = small_letters(words);
    for (std::size_t i = 0; i < small.size(); ++i) {
        char c = small[i];
        if (const auto three = std::string_view(small).substr(i, 3);
            three >= "\xE2\x80\x90" && three <= "\xE2\x80\x95") {  // hyphens and dashes
            c = '-';
            i += 2;
        }
        if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
            if (!text.empty() && text.back() != ' ') {
                text += ' ';
            }
            continue;
        }
        const bool apart = !text.empty() && ((is_digit(text.back()) && is_letter(c)) ||
                                             (is_letter(text.back()) && is_digit(c)));
        text += apart ? std::string{' ', c} : std::string{c};
    }
    return text;
}

bool says(std::string_view text, std::string_view phrase) {
    const bool goes_on = phrase.ends_with('*');
    phrase.remove_suffix(goes_on ? 1 : 0);
    for (auto at = text.find(phrase); at != std::string_view::npos;
         at = text.find(phrase, at + 1)) {
        const auto end = at + phrase.size();
        const bool begins = at == 0 || !is_letter_or_digit(text[at - 1]);
        const bool ends = goes_on || end == text.size() || !is_letter_or_digit(text[end]);
        if (begins && ends) {
            return true;
        }
    }
    return false;
}

std::vector<std::string_view> phrases_in(std::string_view table) {
    std::vector<std::string_view> phrases;
    while (!table.empty()) {
        const auto end = std::min(table.find('|'), table.size());
        phrases.push_back(table.substr(0, end));
        table.remove_prefix(std::min(end + 1, table.size()));
    }
    return phrases;
}

bool says_any(std::string_view text, std::string_view table) {
    while (!table.empty()) {
        const auto end = std::min(table.find('|'), table.size());
        if (says(text, table.substr(0, end))) {
            return true;
        }
        table.remove_prefix(std::min(end + 1, table.size()));
    }
    return false;
}

}  // namespace tracewright
