#include "coaching/reading_grade.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

namespace tracewright {

namespace {

char lower(char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}
bool digit(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) != 0;
}
// Bytes beyond ASCII belong to letters of other alphabets: part of a word, no vowel.
bool letter(char c) {
    return std::isalpha(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) > 127;
}
bool vowel(char c) {
    return std::string_view("aeiouy").find(c) != std::string_view::npos;
}

// What the rule below gets wrong among the words of our papers.
constexpr std::array<std::pair<std::string_view, int>, 30> by_ear = {{
    {"area", 3},    {"being", 2},      {"diabetes", 4}, {"diary", 3},     {"every", 2},
    {"fluid", 2},   {"fluids", 2},     {"going", 2},    {"hour", 1},      {"hours", 1},
    {"idea", 3},    {"maybe", 2},      {"medicine", 3}, {"medicines", 3}, {"mmol", 2},
    {"people", 2},  {"prescriber", 3}, {"quiet", 2},    {"sometimes", 2}, {"something", 2},
    {"someone", 2}, {"usual", 3},      {"vomiting", 3}, {"whereas", 2},   {"dl", 2},
    {"mg", 2},      {"g", 1},          {"l", 1},        {"somewhere", 2}, {"trial", 2},
}};

bool ends_with_any(std::string_view word, std::initializer_list<std::string_view> ends) {
    return std::ranges::any_of(ends, [&](std::string_view end) { return word.ends_with(end); });
}

// Whether the last group of vowels is an e that is not spoken.
bool silent_end(std::string_view word) {
    const std::size_t n = word.size();
    if (n < 3) {
        return false;
    }
    if (word.ends_with("e")) {
        // "table" has a syllable of its own there, "whole" has none.
        return !vowel(word[n - 2]) && !(word[n - 2] == 'l' && !vowel(word[n - 3]));
    }
    if (word.ends_with("ed")) {
        return !vowel(word[n - 3]) && word[n - 3] != 't' && word[n - 3] != 'd';
    }
    if (word.ends_with("es")) {
        return !vowel(word[n - 3]) &&
               !ends_with_any(word, {"ses", "xes", "zes", "ches", "shes", "ces", "ges", "les"});
    }
    return ends_with_any(word, {"eless", "eful", "ement"});
}

int of_letters(const std::string& word) {
    const auto* known =
        std::ranges::find(by_ear, std::string_view(word), &std::pair<std::string_view, int>::first);
    if (known != by_ear.end()) {
        return known->second;
    }
    int groups = 0;
    bool in_group = false;
    for (const char c : word) {
        groups += vowel(c) && !in_group ? 1 : 0;
        in_group = vowel(c);
    }
    return std::max(1, groups - (silent_end(word) ? 1 : 0));
}

bool ends_sentence(std::string_view text, std::size_t at) {
    const char c = text[at];
    if (c == '!' || c == '?') {
        return true;
    }
    // A point within a number ends nothing.
    return c == '.' && (at + 1 == text.size() || !digit(text[at + 1]));
}

void count(std::string_view text, TextCounts& counts) {
    std::string word;
    int words_in_sentence = 0;
    const auto end_word = [&] {
        if (std::ranges::any_of(word, [](char c) { return letter(c) || digit(c); })) {
            ++words_in_sentence;
            ++counts.words;
            counts.syllables += syllables(word);
        }
        word.clear();
    };
    const auto end_sentence = [&] {
        counts.sentences += words_in_sentence > 0 ? 1 : 0;
        words_in_sentence = 0;
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (ends_sentence(text, i)) {
            end_word();
            end_sentence();
        } else if (text[i] == ' ' || text[i] == '\n') {
            end_word();
        } else {
            word += text[i];
        }
    }
    end_word();
    end_sentence();
}

}  // namespace

int syllables(std::string_view word) {
    int total = 0;
    std::string part;
    const auto end_part = [&] {
        total += part.empty() ? 0 : of_letters(part);
        part.clear();
    };
    for (const char c : word) {
        if (digit(c)) {
            end_part();
            ++total;
        } else if (letter(c)) {
            part += lower(c);
        } else if (c != '\'') {  // "don't" is one word
            end_part();
        }
    }
    end_part();
    return std::max(1, total);
}

TextCounts counts_of(std::span<const std::string> texts) {
    TextCounts counts;
    for (const std::string& text : texts) {
        count(text, counts);
    }
    return counts;
}

std::optional<double> reading_grade(const TextCounts& counts) {
    if (counts.words == 0) {
        return std::nullopt;
    }
    return 0.39 * counts.words / counts.sentences + 11.8 * counts.syllables / counts.words - 15.59;
}

}  // namespace tracewright
