#include "intake/message_limit.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace tracewright {

namespace {

constexpr std::array<std::string_view, 9> of_the_meter{
    "finger", "fingers", "prick", "pricked", "fingerprick", "fingertip", "meter", "strip", "test"};
constexpr std::array<std::string_view, 9> of_measuring{
    "glucose", "bg", "sugar", "sugars", "sensor", "level", "reading", "mmol/l", "mg/dl"};
constexpr std::array<std::string_view, 15> never_of_glucose{
    "carb",     "carbs",  "carbohydrate", "fat",   "sugar",   "gi",      "salt", "calorie",
    "calories", "energy", "mood",         "fibre", "protein", "alcohol", "kcal"};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

bool as_written_in_capitals(const MessagePart& part, std::string_view word) {
    std::string capitals;
    for (const char c : word) {
        capitals += static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
    }
    const auto at = part.written.find(capitals);
    const auto letter = [&](std::size_t i) {
        const char c = part.written[i];
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    };
    return at != std::string::npos && (at == 0 || !letter(at - 1)) &&
           (at + word.size() >= part.written.size() || !letter(at + word.size()));
}

}  // namespace

ShownLimit shown_limit(const MessagePart& part) {
    const auto& words = part.words;
    const auto found = std::ranges::find_if(words, [](const MessageWord& word) {
        return word.text == "lo" || word.text == "low" || word.text == "hi" || word.text == "high";
    });
    if (found == words.end()) {
        return {};
    }
    const auto next = found + 1;
    if (next != words.end() && among(never_of_glucose, next->text)) {
        return {};
    }
    const bool low = found->text.starts_with("lo");
    const bool capitals = as_written_in_capitals(part, found->text);
    const bool meter = std::ranges::any_of(
        words, [](const MessageWord& word) { return among(of_the_meter, word.text); });
    const bool measuring = std::ranges::any_of(
        words, [](const MessageWord& word) { return among(of_measuring, word.text); });
    const bool alone = part.clock && words.size() == 1;
    const bool counts = meter || ((low || capitals) && (measuring || alone));
    if (!counts) {
        return {};
    }
    return {low ? MeterLimit::shows_low : MeterLimit::shows_high, capitals && meter};
}

}  // namespace tracewright
