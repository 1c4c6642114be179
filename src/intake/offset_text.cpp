#include "intake/offset_text.hpp"

#include "intake/plain_text.hpp"
#include "intake/text_cursor.hpp"

#include <charconv>
#include <cstdlib>
#include <string>

namespace tracewright {

namespace {

using std::chrono::hours;
using std::chrono::minutes;

bool is_letter(char c) {
    const auto small = static_cast<char>(c | 0x20);
    return small >= 'a' && small <= 'z';
}

class OffsetReader : private TextCursor {
  public:
    explicit OffsetReader(std::string_view text) : TextCursor(text) {}

    std::optional<WrittenOffset> read() {
        if (word("z")) {
            return WrittenOffset{{}, true};
        }
        if (!word("utc") && !word("gmt")) {
            return behind_a_sign();
        }
        const std::string_view behind_the_word = rest_;
        take(' ');
        if (const auto offset = behind_a_sign()) {
            return offset;
        }
        rest_ = behind_the_word;
        return WrittenOffset{{}, true};
    }

    std::optional<WrittenOffset> behind_a_sign() {
        const bool west = take('-');
        return west || take('+') ? hours_and_minutes(west) : std::nullopt;
    }

    std::optional<WrittenOffset> hours_and_minutes(bool west) {
        const auto first = number();
        if (!first || first->digits == 3) {
            return std::nullopt;
        }
        int hour = first->value;
        int minute = 0;
        if (first->digits == 4) {
            hour = first->value / 100;
            minute = first->value % 100;
        } else if (take(':')) {
            const auto told = number();
            if (!told || told->digits != 2) {
                return std::nullopt;
            }
            minute = told->value;
        }
        if (hour > 15 || minute > 59) {
            return std::nullopt;
        }
        const std::chrono::seconds east = (west ? -1 : 1) * (hours{hour} + minutes{minute});
        return WrittenOffset{east, west && east.count() == 0};  // RFC 3339, 4.3
    }

    std::string_view rest() const { return rest_; }

  private:
    bool word(std::string_view small) {
        if (rest_.size() < small.size()) {
            return false;
        }
        for (std::size_t i = 0; i < small.size(); ++i) {
            if ((rest_[i] | 0x20) != small[i]) {
                return false;
            }
        }
        if (rest_.size() > small.size() && is_letter(rest_[small.size()])) {
            return false;
        }
        rest_.remove_prefix(small.size());
        return true;
    }
};

}  // namespace

std::optional<WrittenOffset> take_offset(std::string_view& text) {
    OffsetReader reader(text);
    const auto offset = reader.read();
    text = offset ? reader.rest() : text;
    return offset;
}

namespace {

// "3600", "-18000": no hour and minute, but a distance in seconds.
std::optional<WrittenOffset> in_seconds(std::string_view text) {
    text.remove_prefix(text.starts_with('+') ? 1 : 0);
    int seconds = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), seconds);
    const bool read = error == std::errc{} && end == text.data() + text.size();
    constexpr int quarter = 900;
    const int size = std::abs(seconds);
    return read && size >= 2 * quarter && size <= 15 * 4 * quarter && size % quarter == 0
               ? std::optional(WrittenOffset{std::chrono::seconds{seconds}, false})
               : std::nullopt;
}

}  // namespace

std::optional<WrittenOffset> offset_in_cell(std::string_view text) {
    OffsetReader reader(text);
    const bool bare = !text.empty() && is_digit(text.front());
    const auto offset = bare ? reader.hours_and_minutes(false) : reader.read();
    return offset && reader.rest().empty() ? offset : in_seconds(text);
}

std::optional<WrittenOffset> offset_in_title(std::string_view title) {
    const std::string small = lower_case(plain(title));
    for (const std::string_view word : {"utc", "gmt"}) {
        for (auto at = small.find(word); at != std::string::npos; at = small.find(word, at + 1)) {
            const std::size_t end = at + word.size();
            const bool begins = at == 0 || !is_letter(small[at - 1]);
            const bool ends = end == small.size() || !is_letter(small[end]);
            std::string_view rest = std::string_view(small).substr(at);
            if (ends) {
                return take_offset(rest);
            }
            if (begins) {  // "utctime"
                return WrittenOffset{{}, true};
            }
        }
    }
    return std::nullopt;
}

}  // namespace tracewright
