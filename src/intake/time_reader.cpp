#include "intake/time_reader.hpp"

#include "intake/calendar_words.hpp"
#include "intake/offset_text.hpp"
#include "intake/plain_text.hpp"
#include "intake/text_cursor.hpp"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <vector>

namespace tracewright {

namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

int full_year(int year, int digits) {
    return digits <= 2 ? 2000 + year : year;
}

class TimeReader : private TextCursor {
  public:
    explicit TimeReader(std::string_view text) : TextCursor(text) {}

    std::optional<WrittenTime> read() {
        if (unix_time() || basic_format()) {
            return finished();
        }
        while (!rest_.empty()) {
            if (!piece()) {
                return std::nullopt;
            }
        }
        return finished();
    }

  private:
    std::optional<WrittenTime> finished() {
        if (!time_.has_date && !time_.has_clock) {
            return std::nullopt;
        }
        if (afternoon_ && !apply_half_of_day()) {
            return std::nullopt;
        }
        return time_;
    }

    bool unix_time() {
        if (rest_.find_first_not_of("0123456789") != std::string_view::npos ||
            (rest_.size() != 10 && rest_.size() != 13)) {
            return false;
        }
        std::int64_t count = 0;
        std::from_chars(rest_.data(), rest_.data() + rest_.size(), count);
        count = rest_.size() == 13 ? count / 1000 : count;
        time_.instant = Instant{seconds{count}};
        time_.has_date = time_.has_clock = true;
        rest_ = {};
        return true;
    }

    // 20260302T081500, 20260302 0815, 20260302
    bool basic_format() {
        std::size_t n = 0;
        while (n < rest_.size() && is_digit(rest_[n])) {
            ++n;
        }
        const bool date = n == 8 && (rest_.size() == 8 || rest_[8] == 'T' || rest_[8] == ' ');
        const bool both = n == 14 || n == 12;
        if (!date && !both) {
            return false;
        }
        const std::string_view digits = rest_.substr(0, n);
        const auto part = [&](std::size_t at, std::size_t length) {
            int value = 0;
            std::from_chars(digits.data() + at, digits.data() + at + length, value);
            return value;
        };
        set_year_first(part(0, 4), part(4, 2), part(6, 2));
        if (both) {
            if (!set_clock(part(8, 2), part(10, 2), n == 14 ? part(12, 2) : 0)) {
                return false;
            }
            rest_.remove_prefix(n);
            return tail_of_clock();
        }
        rest_.remove_prefix(8);
        if (rest_.empty()) {
            return true;
        }
        rest_.remove_prefix(1);
        return basic_clock();
    }

    bool basic_clock() {
        const std::string_view before = rest_;
        const auto clock = number();
        if (clock && (clock->digits == 4 || clock->digits == 6) && !rest_.starts_with(':')) {
            const int hm = clock->digits == 6 ? clock->value / 100 : clock->value;
            return set_clock(hm / 100, hm % 100, clock->digits == 6 ? clock->value % 100 : 0) &&
                   tail_of_clock();
        }
        rest_ = before;
        while (!rest_.empty()) {
            if (!piece()) {
                return false;
            }
        }
        return true;
    }

    bool piece() {
        const char c = rest_.front();
        if (c == ' ' || c == ',' || c == '\t') {
            rest_.remove_prefix(1);
            return true;
        }
        if ((c == 'T' || c == 't') && time_.has_date && !time_.has_clock && rest_.size() > 1 &&
            is_digit(rest_[1])) {
            rest_.remove_prefix(1);
            return true;
        }
        if (c == '[') {
            return zone();
        }
        return is_digit(c) ? numbers() : word();
    }

    // A number begins a date or a clock.
    bool numbers() {
        const std::string_view before = rest_;
        const auto first = number();
        if (!first) {
            return false;
        }
        if (rest_.starts_with(':') || clock_behind_a_date()) {
            return clock_from(first->value);
        }
        if (rest_.starts_with("\xE5\xB9\xB4")) {  // year sign
            return chinese_date(*first);
        }
        if (time_.has_date && !time_.has_clock && half_of_day_follows()) {
            return set_clock(first->value, 0, 0);  // "8 AM"
        }
        if (time_.has_date) {
            return false;
        }
        if (!rest_.empty() &&
            (rest_.front() == '-' || rest_.front() == '/' || rest_.front() == '.')) {
            rest_ = before;
            return date();
        }
        return day_or_year_of_named_month(*first);
    }

    // "02.03.2026 8.15", "02/03/2026 8h15": behind a date these are nothing else.
    bool clock_behind_a_date() const {
        return time_.has_date && !time_.has_clock && rest_.size() >= 3 &&
               std::string_view(".hH").find(rest_[0]) != std::string_view::npos &&
               is_digit(rest_[1]) && is_digit(rest_[2]);
    }

    bool half_of_day_follows() const {
        const std::string word = lower_case(trimmed(rest_));
        return word.starts_with("am") || word.starts_with("pm") || word.starts_with("a.m") ||
               word.starts_with("p.m") || word.starts_with("a. m") || word.starts_with("p. m");
    }

    bool chinese_date(const Number& year) {
        take_text("\xE5\xB9\xB4");
        const auto month = number();
        if (!month || !take_text("\xE6\x9C\x88")) {
            return false;
        }
        const auto day = number();
        take_text("\xE6\x97\xA5");
        if (!day) {
            return false;
        }
        set_year_first(full_year(year.value, year.digits), month->value, day->value);
        return true;
    }

    bool date() {
        const auto a = number();
        const char mark = rest_.front();
        rest_.remove_prefix(1);
        if (rest_.empty() || !is_digit(rest_.front())) {
            // "2-Mar-2026", "2. March 2026"
            return mark != '/' && day_or_year_of_named_month(*a);
        }
        const auto b = number();
        if (!b || !take(mark)) {
            return false;
        }
        const auto c = number();
        if (!c) {
            return false;
        }
        if (a->digits == 4) {
            set_year_first(a->value, b->value, c->value);
            return b->digits <= 2 && c->digits <= 2;
        }
        if (c->digits != 4 && c->digits != 2) {
            return false;
        }
        time_.has_date = true;
        time_.year = full_year(c->value, c->digits);
        time_.first = a->value;
        time_.second = b->value;
        return a->digits <= 2 && b->digits <= 2;
    }

    // The number of a date whose month is a word: the day if small, else the year.
    bool day_or_year_of_named_month(const Number& n) {
        loose_.push_back(n);
        take('.');
        return loose_.size() <= 2 && settle_named_date();
    }

    bool settle_named_date() {
        if (named_month_ == 0 || loose_.size() < 2) {
            return true;
        }
        const bool year_is_first = loose_[0].digits == 4;
        const Number year = year_is_first ? loose_[0] : loose_[1];
        const Number day = year_is_first ? loose_[1] : loose_[0];
        set_year_first(full_year(year.value, year.digits), named_month_, day.value);
        return day.value >= 1 && day.value <= 31;
    }

    void set_year_first(int year, int month, int day) {
        time_.has_date = true;
        time_.year_first = true;
        time_.year = year;
        time_.first = month;
        time_.second = day;
    }

    bool set_clock(int hour, int minute, int second) {
        // A leap second reads as the one before it.
        second = second == 60 ? 59 : second;
        const bool midnight = hour == 24 && minute == 0 && second == 0;
        if (time_.has_clock || (hour > 23 && !midnight) || minute > 59 || second > 59) {
            return false;
        }
        time_.has_clock = true;
        hour_ = hour;
        time_.clock = hours{hour} + minutes{minute} + seconds{second};
        return true;
    }

    bool clock_from(int hour) {
        const char mark = rest_.front() == '.' ? '.' : ':';
        rest_.remove_prefix(1);
        const auto minute = number();
        if (!minute || minute->digits > 2) {
            return false;
        }
        int second = 0;
        if (take(mark)) {
            const auto s = number();
            if (!s || s->digits > 2) {
                return false;
            }
            second = s->value;
            const bool fraction =
                rest_.size() > 1 && (rest_[0] == '.' || rest_[0] == ',') && is_digit(rest_[1]);
            if (fraction) {
                rest_.remove_prefix(1);
                const std::size_t end = rest_.find_first_not_of("0123456789");
                rest_.remove_prefix(end == std::string_view::npos ? rest_.size() : end);
                time_.fraction = true;
            }
        }
        return set_clock(hour, minute->value, second) && tail_of_clock();
    }

    bool offset() {
        const auto offset = take_offset(rest_);
        if (offset) {
            time_.offset = offset->east;
            time_.utc = offset->utc;
        }
        return offset.has_value();
    }

    // Z or an offset, right behind the clock or a blank away.
    bool tail_of_clock() {
        const std::string_view before = rest_;
        rest_ = trimmed(rest_);
        if (offset()) {
            return true;
        }
        if (rest_.starts_with('+') || rest_.starts_with('-')) {
            return false;
        }
        rest_ = before;
        return true;
    }

    bool zone() {
        const std::size_t end = rest_.find(']');
        if (end == std::string_view::npos) {
            return false;
        }
        std::string_view name = rest_.substr(1, end - 1);
        const bool critical = name.starts_with('!');
        name.remove_prefix(critical ? 1 : 0);
        rest_.remove_prefix(end + 1);
        if (name.find('=') != std::string_view::npos) {  // a calendar or the like
            return !critical;
        }
        time_.zone_critical = critical;
        time_.zone = std::string(name);
        return true;
    }

    bool word() {
        if (take_text("\xE4\xB8\x8A\xE5\x8D\x88")) {  // before noon
            afternoon_ = false;
            return true;
        }
        if (take_text("\xE4\xB8\x8B\xE5\x8D\x88")) {  // after noon
            afternoon_ = true;
            return true;
        }
        if (time_.has_clock && !time_.offset && offset()) {
            return true;
        }
        std::size_t n = 0;
        while (n < rest_.size() && !is_digit(rest_[n]) && rest_[n] != ' ' && rest_[n] != ',' &&
               rest_[n] != '[' && rest_[n] != '-' && rest_[n] != '/') {
            ++n;
        }
        if (n == 0) {
            if (named_month_ != 0 || !loose_.empty()) {  // "2-Mar-2026"
                rest_.remove_prefix(1);
                return true;
            }
            return false;
        }
        const std::string_view written = rest_.substr(0, n);
        const std::string word = lower_case(written);
        rest_.remove_prefix(n);
        if (word == "am" || word == "a.m." || word == "a.m" || word == "pm" || word == "p.m." ||
            word == "p.m") {
            afternoon_ = word.front() == 'p';
            return time_.has_clock;
        }
        if ((word == "a." || word == "p.") && time_.has_clock) {  // "12:07 a. m."
            take(' ');
            afternoon_ = word.front() == 'p';
            const bool m = take('m') || take('M');
            take('.');
            return m;
        }
        if (word == "a.m.," || word == "p.m.,") {
            afternoon_ = word.front() == 'p';
            return time_.has_clock;
        }
        if (word == "uhr" || word == "h") {
            return time_.has_clock;
        }
        if (word == "de" || word == "st" || word == "nd" || word == "rd" || word == "th") {
            return !loose_.empty();
        }
        if (named_month_ == 0 && !time_.has_date) {
            named_month_ = month_of(word);
            if (named_month_ != 0) {
                return settle_named_date();
            }
        }
        if (is_weekday(word)) {
            return !time_.has_clock;
        }
        return abbreviation(written);
    }

    // "CET": behind date and clock it is read to be refused by its name. Behind an offset, which
    // tells, it says nothing more.
    bool abbreviation(std::string_view written) {
        const bool capitals =
            std::ranges::all_of(written, [](char c) { return c >= 'A' && c <= 'Z'; });
        if (!capitals || written.size() < 3 || written.size() > 5 || !time_.has_date ||
            !time_.has_clock || !time_.abbreviation.empty()) {
            return false;
        }
        if (time_.offset) {
            return (written != "UTC" && written != "GMT") || *time_.offset == seconds{0};
        }
        time_.abbreviation = std::string(written);
        return true;
    }

    bool apply_half_of_day() {
        if (hour_ < 1 || hour_ > 12) {
            return false;  // 13:05 PM
        }
        time_.twelve_hour = true;
        time_.clock -= hour_ == 12 ? hours{12} : hours{0};
        time_.clock += *afternoon_ ? hours{12} : hours{0};
        return true;
    }

    WrittenTime time_;
    int hour_ = 0;
    std::optional<bool> afternoon_;
    int named_month_ = 0;
    std::vector<Number> loose_;
};

}  // namespace

std::optional<WrittenTime> time_read_from(std::string_view text) {
    return TimeReader(text).read();
}

}  // namespace tracewright
