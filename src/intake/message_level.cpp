#include "intake/message_level.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace tracewright {

namespace {

constexpr std::array<std::string_view, 9> of_glucose{"low",   "lows",    "sugar", "sugars", "level",
                                                     "blood", "reading", "hypo",  "glucose"};
constexpr std::array<std::string_view, 16> between{"went", "was", "is",   "at",   "of",   "to",
                                                   "my",   "the", "a",    "down", "fell", "dropped",
                                                   "and",  "had", "very", "about"};
constexpr std::array<std::string_view, 7> happened{"went", "had",     "was",    "going",
                                                   "very", "dropped", "another"};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

}  // namespace

bool plausible_level(double value, GlucoseUnit unit) {
    return unit == GlucoseUnit::mmol_per_l ? value >= 1 && value <= 33
                                           : value >= 18 && value <= 600;
}

bool tells_a_level(const MessagePart& part, GlucoseUnit usual) {
    const MessageWord* number = nullptr;
    bool named = false;
    for (const MessageWord& word : part.words) {
        if (message_number(word.text)) {
            if (number != nullptr) {
                return false;
            }
            number = &word;
        } else if (among(of_glucose, word.text)) {
            named = true;
        } else if (!among(between, word.text) && !word.is_sign()) {
            return false;
        }
    }
    if (number == nullptr || !plausible_level(*message_number(number->text), usual)) {
        return false;
    }
    const bool decimal = number->text.find_first_of(".,") != std::string::npos;
    return named || (part.clock && part.slot.empty() && part.words.size() == 1 &&
                     (decimal || usual == GlucoseUnit::mg_per_dl));
}

bool tells_of_a_low(const MessagePart& part) {
    for (std::size_t i = 0; i < part.words.size(); ++i) {
        const std::string& word = part.words[i].text;
        const bool last = i + 1 == part.words.size();
        const bool told = std::ranges::any_of(
            part.words, [](const MessageWord& one) { return among(happened, one.text); });
        if (told && (word == "low" || word == "lows") &&
            (last || among(between, part.words[i + 1].text) || part.words[i + 1].is_sign())) {
            return true;
        }
    }
    return false;
}

}  // namespace tracewright
