#include "coaching/numbers_in_text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <vector>

namespace tracewright {

namespace {

constexpr std::array<std::string_view, 12> months = {
    "january", "february", "march",     "april",   "may",      "june",
    "july",    "august",   "september", "october", "november", "december"};
constexpr std::array<std::string_view, 7> weekdays = {"mon", "tue", "wed", "thu",
                                                      "fri", "sat", "sun"};
constexpr std::array<std::string_view, 27> number_words = {
    "two",     "three",     "four",     "five",     "six",      "seven",    "eight",
    "nine",    "ten",       "eleven",   "twelve",   "thirteen", "fourteen", "fifteen",
    "sixteen", "seventeen", "eighteen", "nineteen", "twenty",   "thirty",   "forty",
    "fifty",   "sixty",     "ninety",   "hundred",  "thousand", "twice"};

bool digit(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) != 0;
}

// Words in small letters, without what stands round them; a hyphen parts two words, not two digits.
std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    const auto end = [&] {
        while (!word.empty() && std::ispunct(static_cast<unsigned char>(word.back())) != 0) {
            word.pop_back();
        }
        if (!word.empty()) {
            words.push_back(word);
        }
        word.clear();
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool within_digits =
            !word.empty() && digit(word.back()) && i + 1 < text.size() && digit(text[i + 1]);
        if (std::isalnum(static_cast<unsigned char>(c)) != 0 ||
            static_cast<unsigned char>(c) > 127 || c == '\'' ||
            (within_digits && std::string_view("-.,:").find(c) != std::string_view::npos)) {
            // "20g" is a number and a unit.
            if (!word.empty() && digit(word.back()) &&
                std::isalpha(static_cast<unsigned char>(c))) {
                end();
            }
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        } else {
            end();
        }
    }
    end();
    return words;
}

bool iso_date(std::string_view word) {
    return word.size() == 10 && word[4] == '-' && word[7] == '-';
}

template <std::size_t n>
bool one_of(const std::array<std::string_view, n>& all, std::string_view word) {
    return std::ranges::find(all, word) != all.end();
}

bool is_number(const std::string& word) {
    return digit(word.front()) || one_of(number_words, word);
}

}  // namespace

int numbers_in(std::string_view text) {
    const std::vector<std::string> words = words_of(text);
    int numbers = 0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto month = [&](std::size_t at) {
            return at < words.size() && one_of(months, words[at]);
        };
        // Behind the month it is a date only with its weekday: 'may 12 walks' counts walks.
        const auto of_month = [&](std::size_t at) {
            return at < words.size() && digit(words[at].front()) && words[at].size() <= 2 &&
                   (month(at + 1) || (at > 1 && month(at - 1) && one_of(weekdays, words[at - 2])));
        };
        const bool day = of_month(i);
        const bool year =
            words[i].size() == 4 && (month(i - 1) || (of_month(i - 1) && month(i - 2)));
        numbers += is_number(words[i]) && !day && !year && !iso_date(words[i]) ? 1 : 0;
    }
    return numbers;
}

int numbers_in_message(const Paper& paper) {
    int numbers = numbers_in(paper.title);
    for (const std::string& text : message_of(paper)) {
        numbers += numbers_in(text);
    }
    return numbers;
}

bool percent_or_decimal(std::string_view text) {
    for (std::size_t i = 1; i + 1 < text.size(); ++i) {
        if ((text[i] == '.' || text[i] == ',') && digit(text[i - 1]) && digit(text[i + 1])) {
            return true;
        }
    }
    const auto words = words_of(text);
    return text.find('%') != std::string_view::npos ||
           std::ranges::find(words, "percent") != words.end();
}

}  // namespace tracewright
