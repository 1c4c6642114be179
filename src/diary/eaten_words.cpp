#include "diary/eaten_words.hpp"

#include "diary/written_words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace tracewright {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 128;
}

struct SmallNumber {
    const char* word;
    double value;
};
constexpr std::array small_numbers{
    SmallNumber{"one", 1},   SmallNumber{"two", 2},     SmallNumber{"three", 3},
    SmallNumber{"four", 4},  SmallNumber{"five", 5},    SmallNumber{"six", 6},
    SmallNumber{"seven", 7}, SmallNumber{"eight", 8},   SmallNumber{"nine", 9},
    SmallNumber{"ten", 10},  SmallNumber{"eleven", 11}, SmallNumber{"twelve", 12}};

struct Fraction {
    std::string_view sign;
    double value;
};
constexpr std::array fractions{Fraction{"\xC2\xBC", 0.25}, Fraction{"\xC2\xBD", 0.5},
                               Fraction{"\xC2\xBE", 0.75}};

// Reads the words of a text from left to right.
class Scanner {
  public:
    // Small letters of ASCII keep every byte's place but for the typographic apostrophe.
    explicit Scanner(std::string_view text) : text_(text) {}

    std::vector<EatenWord> words() {
        while (at_ < text_.size()) {
            const char c = small(at_);
            if (is_digit(c) || fraction_at(at_) != nullptr || lone_decimal()) {
                number();
            } else if (is_letter(c)) {
                word();
            } else {
                sign(c);
            }
        }
        put_together();
        return std::move(words_);
    }

  private:
    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<EatenWord> words_;

    char small(std::size_t i) const {
        const char c = i < text_.size() ? text_[i] : ' ';
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    bool lone_decimal() const {  // ".5 cup"
        return text_[at_] == '.' && is_digit(small(at_ + 1)) &&
               (at_ == 0 || text_[at_ - 1] == ' ' || text_[at_ - 1] == '(');
    }
    const Fraction* fraction_at(std::size_t i) const {
        for (const Fraction& one : fractions) {
            if (text_.substr(i, one.sign.size()) == one.sign) {
                return &one;
            }
        }
        return nullptr;
    }
    void add(std::string text, std::size_t from, std::optional<double> number = std::nullopt) {
        words_.push_back({std::move(text), number, 0, from, at_});
    }

    void number() {
        const std::size_t from = at_;
        std::string digits;
        bool mark = false;
        for (; at_ < text_.size(); ++at_) {
            const char c = text_[at_];
            const bool decimal = (c == '.' || c == ',') && !mark && is_digit(small(at_ + 1));
            if (!is_digit(c) && !decimal) {
                break;
            }
            mark = mark || decimal;
            digits += decimal ? '.' : c;
        }
        double value = 0;
        std::from_chars(digits.data(), digits.data() + digits.size(), value);
        if (const Fraction* part = at_ < text_.size() ? fraction_at(at_) : nullptr) {
            value += part->value;
            at_ += part->sign.size();
        } else if (!mark && small(at_) == '/' && small(at_ + 1) >= '1' && small(at_ + 1) <= '9' &&
                   !is_digit(small(at_ + 2))) {
            value /= small(at_ + 1) - '0';
            at_ += 2;
        }
        std::string text(text_.substr(from, at_ - from));
        // Nobody eats ten thousand of anything: such a number is a word.
        add(std::move(text), from, value < 1e4 ? std::optional(value) : std::nullopt);
    }

    void word() {
        const std::size_t from = at_;
        while (at_ < text_.size()) {
            const bool apostrophe = text_[at_] == '\'' && is_letter(small(at_ + 1));
            if (!is_letter(small(at_)) && !apostrophe) {
                break;
            }
            if (fraction_at(at_) != nullptr) {
                break;
            }
            ++at_;
        }
        std::string text = small_letters(text_.substr(from, at_ - from));
        if (small(at_) == '/' && text == "w") {
            ++at_;
            const bool out = small(at_) == 'o' && !is_letter(small(at_ + 1));
            at_ += out ? 1 : 0;
            add(out ? "without" : "with", from);
            return;
        }
        for (const SmallNumber& one : small_numbers) {
            if (text == one.word) {
                add(std::move(text), from, one.value);
                return;
            }
        }
        add(std::move(text), from);
    }

    void sign(char c) {
        const std::size_t from = at_++;
        switch (c) {
            case ',':
            case ';':
            case '.':
            case '\n':
            case '!':
                add(",", from);
                break;
            case '+':
            case '&':
                add("and", from);
                break;
            case '/':
                add("or", from);
                break;
            case '?':
                add("?", from);
                break;
            case '~':
                add("about", from);
                break;
            case '-':
                if (!words_.empty() && words_.back().number && is_digit(small(at_)) &&
                    words_.back().to == from) {
                    add("-", from);
                }
                break;
            default:
                break;
        }
    }

    // "1 1/2", "one and a half", "2-3".
    void put_together() {
        std::vector<EatenWord> done;
        for (std::size_t i = 0; i < words_.size(); ++i) {
            const auto is = [&](std::size_t k, const char* text) {
                return i + k < words_.size() && words_[i + k].text == text;
            };
            EatenWord word = std::move(words_[i]);
            if (word.number) {
                const EatenWord* next = i + 1 < words_.size() ? &words_[i + 1] : nullptr;
                if (is(1, "and") && is(2, "a") && is(3, "half")) {
                    word.number = *word.number + 0.5;
                    word.to = words_[i + 3].to;
                    i += 3;
                } else if (is(1, "-") && i + 2 < words_.size() && words_[i + 2].number) {
                    const double other = *words_[i + 2].number;
                    word.half_width = std::abs(other - *word.number) / 2;
                    word.number = (*word.number + other) / 2;
                    word.to = words_[i + 2].to;
                    i += 2;
                } else if (next != nullptr && next->number && *next->number < 1 &&
                           *word.number >= 1) {
                    word.number = *word.number + *next->number;
                    word.to = next->to;
                    ++i;
                }
            }
            if (word.text != "-") {
                done.push_back(std::move(word));
            }
        }
        words_ = std::move(done);
    }
};

template <std::size_t N>
bool one_of(const std::array<const char*, N>& words, std::string_view word) {
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

constexpr std::array parting{"and", "with", "w", "plus", "then", "on", "in", "n", ",", "but"};
constexpr std::array carrying_on{"and", "plus", "n"};
constexpr std::array denying{"no",     "not",   "without", "skipped", "minus",
                             "didn't", "didnt", "never",   "nor",     "nothing"};
constexpr std::array doubting{"?", "maybe", "perhaps", "probably"};
constexpr std::array not_denied{"much", "many", "lots"};

// Gathers words into pieces.
class Parter {
  public:
    explicit Parter(std::string_view text) : text_(text) {}

    std::vector<EatenPiece> parted(std::vector<EatenWord> words) {
        for (std::size_t i = 0; i < words.size(); ++i) {
            const std::string& next = i + 1 < words.size() ? words[i + 1].text : empty_;
            const std::string& word = words[i].text;
            const bool two =
                (word == "instead" && next == "of") || (word == "rather" && next == "than");
            if (word == "not" && next == "sure") {
                piece_.questioned = true;
                ++i;
            } else if (word == "not" && (one_of(not_denied, next) || next == "a")) {
                piece_.words.push_back({"little", std::nullopt, 0, words[i].from, words[i].to});
                ++i;
            } else if (two || one_of(denying, word)) {
                close(false);
                piece_.negated = true;
                i += two ? 1 : 0;
            } else if (word == "or") {
                const bool denied = piece_.negated;
                const bool any = !piece_.words.empty() || denied;
                close(false);
                piece_.negated = denied;
                piece_.alternative = any && !denied;
            } else if (one_of(parting, word)) {
                close(one_of(carrying_on, word));
            } else if (one_of(doubting, word)) {
                question();
            } else {
                piece_.words.push_back(std::move(words[i]));
            }
        }
        close(false);
        return std::move(pieces_);
    }

  private:
    std::string_view text_;
    const std::string empty_;
    EatenPiece piece_;
    std::vector<EatenPiece> pieces_;

    void question() {
        if (piece_.words.empty() && !pieces_.empty()) {
            pieces_.back().questioned = true;
        }
        piece_.questioned = true;
    }

    // `carries`: what follows may be meant by the denial too.
    void close(bool carries) {
        EatenPiece next;
        next.perhaps_negated = carries && (piece_.negated || piece_.perhaps_negated);
        if (piece_.words.empty()) {
            next.negated = carries && piece_.negated;  // "no and": a slip of the pen
            next.alternative = piece_.alternative;
            next.questioned = piece_.questioned && carries;
        } else {
            const std::size_t from = piece_.words.front().from;
            piece_.written = text_.substr(from, piece_.words.back().to - from);
            pieces_.push_back(std::move(piece_));
        }
        piece_ = std::move(next);
    }
};

// The longest phrase that begins at a word; null if none does.
const std::vector<std::string>* phrase_at(std::span<const EatenWord> words,
                                          std::span<const std::vector<std::string>> whole) {
    const std::vector<std::string>* found = nullptr;
    for (const std::vector<std::string>& phrase : whole) {
        if (phrase.size() < 2 || phrase.size() > words.size() ||
            (found != nullptr && found->size() >= phrase.size())) {
            continue;
        }
        const bool met =
            std::equal(phrase.begin(), phrase.end(), words.begin(),
                       [](const std::string& a, const EatenWord& b) { return a == b.text; });
        found = met ? &phrase : found;
    }
    return found;
}

std::vector<EatenWord> with_phrases(std::vector<EatenWord> words,
                                    std::span<const std::vector<std::string>> whole) {
    std::vector<EatenWord> done;
    for (std::size_t i = 0; i < words.size(); ++i) {
        EatenWord word = std::move(words[i]);
        if (!whole.empty()) {
            words[i].text = word.text;
            if (const auto* phrase = phrase_at(std::span(words).subspan(i), whole)) {
                for (std::size_t k = 1; k < phrase->size(); ++k) {
                    word.text += " " + words[i + k].text;
                }
                word.number.reset();
                word.to = words[i + phrase->size() - 1].to;
                i += phrase->size() - 1;
            }
        }
        done.push_back(std::move(word));
    }
    return done;
}

}  // namespace

std::vector<EatenWord> eaten_words(std::string_view text) {
    return Scanner(text).words();
}

std::vector<EatenPiece> eaten_pieces(std::string_view text,
                                     std::span<const std::vector<std::string>> whole) {
    return Parter(text).parted(with_phrases(eaten_words(text), whole));
}

}  // namespace tracewright
