#include "intake/titled_clock.hpp"

#include "intake/plain_text.hpp"
#include "intake/text_cursor.hpp"

#include <string>

namespace tracewright {

namespace {

class TitledClock : private TextCursor {
  public:
    explicit TitledClock(std::string_view text) : TextCursor(text) {}

    std::optional<WrittenTime> read() {
        const auto hour = number();
        if (!hour || hour->digits > 2 || hour->value > 23) {
            return std::nullopt;
        }
        const bool spoken = mark_of_hour();
        if (!spoken && !take('.') && !take(':')) {
            return std::nullopt;
        }
        blanks();
        if (spoken && rest_.empty()) {
            return at(hour->value, 0, 0);
        }
        const auto minute = number();
        if (!minute || minute->digits != 2 || minute->value > 59) {
            return std::nullopt;
        }
        int second = 0;
        if (take('.') || take(':')) {
            const auto told = number();
            if (!told || told->digits != 2 || told->value > 59) {
                return std::nullopt;
            }
            second = told->value;
        }
        (void)(mark_of_hour() || take_text("min") || take('m'));
        return rest_.empty() ? at(hour->value, minute->value, second) : std::nullopt;
    }

  private:
    static std::optional<WrittenTime> at(int hour, int minute, int second) {
        WrittenTime time;
        time.has_clock = true;
        time.clock =
            std::chrono::hours{hour} + std::chrono::minutes{minute} + std::chrono::seconds{second};
        return time;
    }

    void blanks() {
        while (take(' ')) {
        }
    }

    bool mark_of_hour() {
        const std::string_view before = rest_;
        blanks();
        const bool marked = take_text("uhr") || take('h');
        rest_ = marked ? rest_ : before;
        return marked;
    }
};

}  // namespace

std::optional<WrittenTime> titled_clock(std::string_view plain_text) {
    const std::string small = lower_case(plain_text);
    return TitledClock(small).read();
}

}  // namespace tracewright
