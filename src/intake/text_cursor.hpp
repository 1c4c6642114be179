#pragma once

#include <charconv>
#include <optional>
#include <string_view>

namespace tracewright {

inline bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// What is left of a text that is read from left to right. For readers to build on.
class TextCursor {
  protected:
    explicit TextCursor(std::string_view text) : rest_(text) {}

    struct Number {
        int value;
        int digits;
    };

    /// Up to nine digits that the rest begins with; empty, and nothing taken, if there are none or
    /// more.
    std::optional<Number> number() {
        std::size_t n = 0;
        while (n < rest_.size() && is_digit(rest_[n])) {
            ++n;
        }
        if (n == 0 || n > 9) {
            return std::nullopt;
        }
        int value = 0;
        std::from_chars(rest_.data(), rest_.data() + n, value);
        rest_.remove_prefix(n);
        return Number{value, static_cast<int>(n)};
    }

    bool take(char c) {
        if (rest_.starts_with(c)) {
            rest_.remove_prefix(1);
            return true;
        }
        return false;
    }

    bool take_text(std::string_view text) {
        if (rest_.starts_with(text)) {
            rest_.remove_prefix(text.size());
            return true;
        }
        return false;
    }

    std::string_view rest_;
};

}  // namespace tracewright
