#include "diary/food_spelling.hpp"

#include "diary/written_words.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

bool is_part_of_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 128;
}

// What a word may be the plural of, itself among it.
std::array<std::string, 4> singulars(std::string_view word) {
    std::array<std::string, 4> forms;
    forms[0] = word;
    if (word.size() > 3 && word.ends_with("s") && !word.ends_with("ss")) {
        forms[1] = word.substr(0, word.size() - 1);
        if (word.ends_with("es")) {
            forms[2] = word.substr(0, word.size() - 2);
        }
        if (word.ends_with("ies")) {
            forms[3] = forms[2].substr(0, forms[2].size() - 1) + "y";
        }
    }
    return forms;
}

constexpr std::size_t longest_word = 40;  // more is no word: the rows below stay small

}  // namespace

std::vector<std::string> food_name_words(std::string_view name) {
    std::vector<std::string> words(1);
    for (const char c : small_letters(name)) {
        if (is_part_of_word(c)) {
            words.back() += c;
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    if (words.back().empty()) {
        words.pop_back();
    }
    return words;
}

bool same_food_word(std::string_view a, std::string_view b) {
    if (a == b) {
        return true;
    }
    if (a.size() < 3 || b.size() < 3) {
        return false;
    }
    for (const std::string& one : singulars(a)) {
        for (const std::string& other : singulars(b)) {
            if (!one.empty() && one == other) {
                return true;
            }
        }
    }
    return false;
}

std::size_t letters_apart(std::string_view a, std::string_view b, std::size_t most) {
    const std::size_t longer = std::max(a.size(), b.size());
    const std::size_t shorter = std::min(a.size(), b.size());
    if (longer - shorter > most || longer > longest_word) {
        return a == b ? 0 : most + 1;
    }
    std::array<std::array<std::size_t, longest_word + 1>, 3> rows{};
    for (std::size_t j = 0; j <= b.size(); ++j) {
        rows[0][j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        auto& row = rows[i % 3];
        const auto& above = rows[(i + 2) % 3];
        const auto& two_above = rows[(i + 1) % 3];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], two_above[j - 2] + 1);
            }
        }
    }
    return std::min(rows[a.size() % 3][b.size()], most + 1);
}

bool may_be_misspelt(std::string_view typed, std::string_view word) {
    const std::size_t shorter = std::min(typed.size(), word.size());
    if (shorter < 5 || typed.front() != word.front()) {
        return false;
    }
    const std::size_t most = shorter < 8 ? 1 : 2;
    const auto forms = singulars(word);
    return std::any_of(forms.begin(), forms.end(), [&](const std::string& form) {
        return !form.empty() && letters_apart(typed, form, most) <= most;
    });
}

}  // namespace tracewright
