#include "intake/unread_words.hpp"

#include "intake/plain_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <string>
#include <utility>

namespace tracewright {

namespace {

constexpr std::uint64_t often = 3;
constexpr std::size_t most_words = 5;

struct Seen {
    std::uint64_t rows = 0;
    std::uint32_t first_line = 0;
};

bool is_word(const std::string& found) {
    return found.find_first_of("0123456789") == std::string::npos;
}

}  // namespace

void tell_unread_words(Ledger& ledger) {
    std::map<std::string, Seen> words;
    for (const RowNote& note : ledger.notes()) {
        if (note.code == "value_not_a_number" && is_word(note.found)) {
            Seen& seen = words[lower_case(note.found)];
            seen.first_line = seen.rows == 0 ? note.line : std::min(seen.first_line, note.line);
            ++seen.rows;
        }
    }
    std::multimap<std::uint64_t, std::pair<std::string, std::uint32_t>, std::greater<>> by_rows;
    for (const auto& [word, seen] : words) {
        if (seen.rows >= often) {
            by_rows.emplace(seen.rows, std::pair{word, seen.first_line});
        }
    }
    std::size_t told = 0;
    for (const auto& [rows, word] : by_rows) {
        if (++told > most_words) {
            break;
        }
        ledger.remark({0, 0, Fate::stored, "word_not_read",
                       fmt::format("{} glucose rows with the word {}, the first on line {}", rows,
                                   word.first, word.second),
                       "a level, LOW or HIGH: what it means is not known here, and lows may be "
                       "missing"});
    }
}

}  // namespace tracewright
