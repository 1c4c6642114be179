#include "intake/number_text.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

bool digit(char c) {
    return c >= '0' && c <= '9';
}

constexpr int most_digits = 15;

// Digits before and after the mark, and a power of ten.
struct Decimal {
    std::int64_t digits = 0;
    int count = 0;     // digits taken
    int decimals = 0;  // of them behind the mark
    int dropped = 0;   // digits beyond the fifteenth, behind the mark
};

void take(Decimal& d, char c, bool behind) {
    if (d.count >= most_digits) {
        d.dropped += behind ? 1 : 0;
        d.decimals += 0;
        return;
    }
    d.digits = d.digits * 10 + (c - '0');
    d.count += d.digits > 0 ? 1 : 0;
    d.decimals += behind ? 1 : 0;
}

std::int64_t power_of_ten(int n) {
    std::int64_t p = 1;
    for (; n > 0; --n) {
        p *= 10;
    }
    return p;
}

// Digits x 10^shift to hundredths, halves away from zero.
std::optional<WrittenNumber> to_hundredths(std::int64_t digits, int shift, bool negative) {
    WrittenNumber number;
    const int to_cents = shift + 2;
    if (to_cents > 15 || to_cents < -18) {
        return digits == 0 || to_cents < 0 ? std::optional{number} : std::nullopt;
    }
    if (to_cents >= 0) {
        const std::int64_t factor = power_of_ten(to_cents);
        if (digits > std::int64_t{100'000'000'000'000} / factor) {
            return std::nullopt;
        }
        number.hundredths = digits * factor;
    } else {
        const std::int64_t factor = power_of_ten(-to_cents);
        const std::int64_t whole = digits / factor;
        const std::int64_t rest = digits % factor;
        number.hundredths = whole + (2 * rest >= factor ? 1 : 0);
        // Binary noise (102.60000000000001) is no third decimal.
        const std::int64_t noise = factor >= 100'000'000 ? factor / 100'000'000 : 0;
        number.rounded = rest > noise && factor - rest > noise;
    }
    if (negative) {
        number.hundredths = -number.hundredths;
    }
    return number;
}

// Whether a group mark at `at` is followed by exactly three digits and no more.
bool groups_three(std::string_view text, std::size_t at) {
    for (std::size_t i = 1; i <= 3; ++i) {
        if (at + i >= text.size() || !digit(text[at + i])) {
            return false;
        }
    }
    return at + 4 >= text.size() || !digit(text[at + 4]);
}

bool may_group(char c, char decimal_mark) {
    return c != decimal_mark && (c == '.' || c == ',' || c == ' ' || c == '\'');
}

int exponent_at(std::string_view text, std::size_t& at) {
    std::size_t i = at;
    if (i >= text.size() || (text[i] != 'e' && text[i] != 'E')) {
        return 0;
    }
    ++i;
    const bool negative = i < text.size() && text[i] == '-';
    i += i < text.size() && (text[i] == '-' || text[i] == '+') ? 1U : 0U;
    if (i >= text.size() || !digit(text[i])) {
        return 0;
    }
    int exponent = 0;
    for (; i < text.size() && digit(text[i]); ++i) {
        exponent = std::min(999, exponent * 10 + (text[i] - '0'));
    }
    at = i;
    return negative ? -exponent : exponent;
}

std::string squeezed(std::string_view text) {
    std::string result = lower_case(text);
    std::erase_if(result, [](char c) { return c == ' ' || c == '.' || c == '_' || c == '-'; });
    return result;
}

// What stands for a level beyond the sensor's limit, as `squeezed` leaves it.
struct LimitWords {
    std::string_view low;
    std::string_view high;
};
constexpr std::array limit_words{
    LimitWords{"low lo toolow verylow belowrange", "high hi toohigh veryhigh aboverange"},
    LimitWords{"tief zutief niedrig zuniedrig sehrniedrig", "hoch zuhoch sehrhoch"},
    LimitWords{"bas basse tropbas tropbasse tr\xC3\xA8s"
               "bas",
               "haut haute trophaut trophaute tr\xC3\xA8shaut \xC3\xA9lev\xC3\xA9 "
               "\xC3\xA9lev\xC3\xA9"
               "e trop\xC3\xA9lev\xC3\xA9 eleve"},
    LimitWords{"bajo baja muybajo demasiadobajo", "alto alta muyalto demasiadoalto elevado"},
    LimitWords{"basso bassa troppobasso moltobasso",
               "alto alta troppoalto moltoalto elevato elevata"},
    LimitWords{"\xE4\xBD\x8E \xE5\x81\x8F\xE4\xBD\x8E \xE8\xBF\x87\xE4\xBD\x8E",
               "\xE9\xAB\x98 \xE5\x81\x8F\xE9\xAB\x98 \xE8\xBF\x87\xE9\xAB\x98"}};
constexpr std::array empty_words{"", "na", "n/a", "null", "none", "nan", "nil", "#n/a", "/"};

template <std::size_t N>
bool one_of(const std::string& word, const std::array<const char*, N>& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

Limit limit_in_words(const std::string& word) {
    for (const LimitWords& words : limit_words) {
        if (!word.empty() && has_whole_word(words.low, word)) {
            return Limit::below;
        }
        if (!word.empty() && has_whole_word(words.high, word)) {
            return Limit::above;
        }
    }
    return Limit::none;
}

GlucoseCell level_or_why(const WrittenNumber& number, Limit limit,
                         std::optional<GlucoseUnit> unit) {
    if (number.hundredths == 0 && limit == Limit::none) {
        return {std::nullopt, NoGlucose::zero};
    }
    return {WrittenGlucose{number.hundredths, limit, unit, number.rounded}, NoGlucose::empty};
}

}  // namespace

std::optional<WrittenNumber> written_number(std::string_view text, char decimal_mark) {
    std::size_t i = 0;
    const bool negative = !text.empty() && text[0] == '-';
    i += !text.empty() && (text[0] == '-' || text[0] == '+') ? 1U : 0U;
    Decimal decimal;
    bool any = false;
    char group = '\0';
    for (; i < text.size(); ++i) {
        if (digit(text[i])) {
            take(decimal, text[i], false);
            any = true;
            if (decimal.count >= most_digits) {
                return std::nullopt;
            }
        } else if (any && may_group(text[i], decimal_mark) && (group == '\0' || group == text[i]) &&
                   groups_three(text, i)) {
            group = text[i];
        } else {
            break;
        }
    }
    if (i < text.size() && text[i] == decimal_mark) {
        std::size_t j = i + 1;
        for (; j < text.size() && digit(text[j]); ++j) {
            take(decimal, text[j], true);
        }
        const bool digits_behind = j > i + 1;
        any = any || digits_behind;
        i = digits_behind ? j : i;
    }
    if (!any) {
        return std::nullopt;
    }
    const int exponent = exponent_at(text, i);
    auto number = to_hundredths(decimal.digits, exponent - decimal.decimals, negative);
    if (number) {
        number->tail = std::string(trimmed(text.substr(i)));
    }
    return number;
}

MarkEvidence mark_evidence(std::string_view text) {
    std::size_t i = text.find_first_of("0123456789");
    if (i == std::string_view::npos) {
        return MarkEvidence::none;
    }
    std::string marks;
    std::size_t last_mark = 0;
    std::size_t end = i;
    for (; end < text.size() && (digit(text[end]) || text[end] == '.' || text[end] == ','); ++end) {
        if (!digit(text[end])) {
            marks += text[end];
            last_mark = end;
        }
    }
    if (marks.empty() || last_mark + 1 == end) {
        return MarkEvidence::none;
    }
    const bool comma = marks.back() == ',';
    const bool mixed = marks.find(comma ? '.' : ',') != std::string::npos;
    if (mixed) {
        return comma ? MarkEvidence::comma : MarkEvidence::point;
    }
    if (marks.size() > 1) {  // 1,234,567: the mark groups, so the other one is decimal
        return comma ? MarkEvidence::point : MarkEvidence::comma;
    }
    const bool three_behind = end - last_mark == 4;
    const bool could_group =
        three_behind && last_mark - i >= 1 && last_mark - i <= 3 && text[i] != '0';
    if (could_group) {
        return comma ? MarkEvidence::lone_comma : MarkEvidence::lone_point;
    }
    return comma ? MarkEvidence::comma : MarkEvidence::point;
}

std::optional<GlucoseUnit> unit_named(std::string_view text) {
    const std::string word = squeezed(text);
    if (word.find("mmol") != std::string::npos || word == "mm") {  // millimolar
        return GlucoseUnit::mmol_per_l;
    }
    if (word.find("mg/dl") != std::string::npos || word.find("mgdl") != std::string::npos ||
        word.find("mg/100ml") != std::string::npos || word.find("mg%") != std::string::npos) {
        return GlucoseUnit::mg_per_dl;
    }
    return std::nullopt;
}

bool is_unit_alone(std::string_view text) {
    std::string word = squeezed(text);
    std::erase_if(word, [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; });
    constexpr std::array units{"mg/dl", "mgdl", "mg/100ml", "mg%", "mmol/l", "mmoll", "mmol"};
    return one_of(word, units);
}

GlucoseCell written_glucose(std::string_view text, char decimal_mark) {
    if (text.empty() || is_separator(text)) {
        return {std::nullopt, NoGlucose::empty};
    }
    if (text.front() == '<' || text.front() == '>') {
        const Limit limit = text.front() == '<' ? Limit::below : Limit::above;
        std::string_view rest = trimmed(text.substr(1));
        rest.remove_prefix(rest.starts_with('=') ? 1 : 0);
        const auto number = written_number(trimmed(rest), decimal_mark);
        if (number && (number->tail.empty() || unit_named(number->tail))) {
            return level_or_why(*number, limit, unit_named(number->tail));
        }
        return {std::nullopt, NoGlucose::not_a_number};
    }
    if (const auto number = written_number(text, decimal_mark)) {
        if (number->hundredths >= 0 && (number->tail.empty() || unit_named(number->tail))) {
            return level_or_why(*number, Limit::none, unit_named(number->tail));
        }
        return {std::nullopt, NoGlucose::not_a_number};
    }
    const std::string word = squeezed(text);
    if (const Limit limit = limit_in_words(word); limit != Limit::none) {
        return {WrittenGlucose{0, limit, std::nullopt, false}, NoGlucose::empty};
    }
    return {std::nullopt, one_of(word, empty_words) ? NoGlucose::empty : NoGlucose::not_a_number};
}

}  // namespace tracewright
