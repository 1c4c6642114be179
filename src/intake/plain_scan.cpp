#include "intake/plain_scan.hpp"

#include <algorithm>
#include <cstring>

namespace tracewright {

namespace {

using std::chrono::seconds;

bool digit(char c) {
    return static_cast<unsigned>(c - '0') < 10U;
}

int two(const char* p) {
    return (p[0] - '0') * 10 + (p[1] - '0');
}

bool two_digits(const char* p) {
    return digit(p[0]) && digit(p[1]);
}

// Only a time and a glucose column mean anything; the others are passed over.
bool plain_shape(const TableShape& shape) {
    int times = 0;
    int levels = 0;
    for (const ColumnGuess& column : shape.columns) {
        times += column.role == Role::time ? 1 : 0;
        levels += column.role == Role::glucose ? 1 : 0;
        if (column.role != Role::time && column.role != Role::glucose &&
            column.role != Role::ignored && column.role != Role::device) {
            return false;
        }
    }
    // One device throughout is no matter; which are two is told the careful way.
    return times == 1 && levels == 1 && shape.all(Role::device).size() <= 1;
}

// Goes through the text row by row; every step says whether the row is still plain.
class Scanner {
  public:
    Scanner(std::string_view text, std::size_t columns, std::size_t time_column,
            std::size_t level_column, std::optional<std::size_t> device_column, char delimiter)
        : at_(text.data()),
          end_(text.data() + text.size()),
          columns_(columns),
          time_column_(time_column),
          level_column_(level_column),
          device_column_(device_column),
          delimiter_(delimiter) {}

    bool skip_lines(std::uint64_t lines) {
        for (; lines > 0; --lines) {
            const char* line_end = find('\n');
            if (line_end == end_ ||
                std::memchr(at_, '"', static_cast<std::size_t>(line_end - at_)) != nullptr) {
                return false;
            }
            at_ = line_end + 1;
        }
        return true;
    }

    bool at_end() const { return at_ == end_; }

    bool blank() {
        const char* p = at_;
        p += p < end_ && *p == '\r' ? 1 : 0;
        if (p < end_ && *p == '\n') {
            at_ = p + 1;
            return true;
        }
        return false;
    }

    bool row(PlainRows& rows) {
        const char* line_start = at_;
        WallTime wall{};
        std::int32_t level = 0;
        const std::size_t last = std::max(time_column_, level_column_);
        for (std::size_t column = 0; column <= last; ++column) {
            if (column > 0) {
                if (at_ == end_ || *at_ != delimiter_) {
                    return false;
                }
                ++at_;
            }
            const bool read = column == time_column_    ? time(wall)
                              : column == level_column_ ? number(level)
                                                        : pass_over(column);
            if (!read) {
                return false;
            }
        }
        for (std::size_t column = last + 1; at_ < end_ && *at_ == delimiter_; ++column) {
            const char* field = ++at_;
            if (!pass_over(column) || (column >= columns_ && at_ != field)) {
                return false;  // more fields than columns
            }
        }
        if (rows.rows.empty()) {
            keep_first(rows, line_start);
        }
        at_ += at_ < end_ && *at_ == '\r' ? 1 : 0;
        if (at_ < end_) {
            if (*at_ != '\n') {
                return false;
            }
            ++at_;
        }
        rows.rows.emplace_back(Instant{wall.time_since_epoch()},
                               Glucose{level, GlucoseUnit::mg_per_dl}, seconds{1});
        rows.unit.see(level);
        return true;
    }

  private:
    const char* find(char c) const {
        const void* found = std::memchr(at_, c, static_cast<std::size_t>(end_ - at_));
        return found != nullptr ? static_cast<const char*>(found) : end_;
    }

    // A column that means nothing: plain characters up to the next delimiter or line end; in that
    // of the device the same ones as on the first row.
    bool pass_over(std::size_t column) {
        const char* field = at_;
        while (at_ < end_ && *at_ != delimiter_ && *at_ != '\n' && *at_ != '\r') {
            if (*at_ == '"') {
                return false;
            }
            ++at_;
        }
        if (column != device_column_) {
            return true;
        }
        const std::string_view text(field, static_cast<std::size_t>(at_ - field));
        device_ = device_.value_or(text);
        return text == *device_;
    }

    bool time(WallTime& wall) {
        if (end_ - at_ < 16 || !date(at_) || (at_[10] != ' ' && at_[10] != 'T') ||
            !two_digits(at_ + 11) || at_[13] != ':' || !two_digits(at_ + 14)) {
            return false;
        }
        const int hour = two(at_ + 11);
        const int minute = two(at_ + 14);
        int second = 0;
        at_ += 16;
        if (end_ - at_ >= 3 && *at_ == ':' && two_digits(at_ + 1)) {
            second = two(at_ + 1);
            at_ += 3;
        }
        if (hour > 23 || minute > 59 || second > 59) {
            return false;
        }
        wall = date_ + seconds{hour * 3600 + minute * 60 + second};
        return true;
    }

    // Rows of one day share their first ten bytes: the day is worked out once.
    bool date(const char* p) {
        std::uint64_t head = 0;
        std::uint64_t tail = 0;
        std::memcpy(&head, p, sizeof head);
        std::memcpy(&tail, p + 2, sizeof tail);
        if (head == seen_head_ && tail == seen_tail_) {
            return true;
        }
        for (const int i : {0, 1, 2, 3, 5, 6, 8, 9}) {
            if (!digit(p[i])) {
                return false;
            }
        }
        if (p[4] != '-' || p[7] != '-') {
            return false;
        }
        const std::chrono::year_month_day ymd{std::chrono::year{two(p) * 100 + two(p + 2)},
                                              std::chrono::month{static_cast<unsigned>(two(p + 5))},
                                              std::chrono::day{static_cast<unsigned>(two(p + 8))}};
        if (!ymd.ok()) {
            return false;
        }
        seen_head_ = head;
        seen_tail_ = tail;
        date_ = CivilDate{ymd};
        return true;
    }

    bool number(std::int32_t& hundredths) {
        std::int32_t whole = 0;
        const char* p = at_;
        for (; p < end_ && digit(*p); ++p) {
            whole = whole * 10 + (*p - '0');
            if (p - at_ > 4) {
                return false;
            }
        }
        if (p == at_) {
            return false;
        }
        std::int32_t decimals = 0;
        if (p < end_ && *p == '.') {
            ++p;
            if (p == end_ || !digit(*p)) {
                return false;
            }
            decimals = (*p++ - '0') * 10;
            if (p < end_ && digit(*p)) {
                decimals += *p++ - '0';
            }
        }
        hundredths = whole * 100 + decimals;
        at_ = p;
        return hundredths > 0;
    }

    void keep_first(PlainRows& rows, const char* line_start) const {
        std::string_view line(line_start, static_cast<std::size_t>(at_ - line_start));
        for (std::size_t column = 0; !line.empty(); ++column) {
            const std::size_t cut = line.find(delimiter_);
            const std::string_view field = line.substr(0, cut);
            if (column == time_column_) {
                rows.first_time = field;
            } else if (column == level_column_) {
                rows.first_value = field;
            }
            line = cut == std::string_view::npos ? std::string_view() : line.substr(cut + 1);
        }
    }

    const char* at_;
    const char* end_;
    std::size_t columns_;
    std::size_t time_column_;
    std::size_t level_column_;
    std::optional<std::size_t> device_column_;
    std::optional<std::string_view> device_;  // of the first row
    char delimiter_;
    std::uint64_t seen_head_ =
        ~std::uint64_t{0};         // its first eight bytes, at first those of no text
    std::uint64_t seen_tail_ = 0;  // and its last eight
    CivilDate date_{};
};

}  // namespace

std::optional<PlainRows> plain_rows(std::string_view text, const TableShape& shape,
                                    char delimiter) {
    if (text.empty() || !plain_shape(shape)) {
        return std::nullopt;
    }
    PlainRows rows;
    rows.rows_before = shape.first_data_line - 1;
    Scanner scanner(text, shape.columns.size(), *shape.first(Role::time),
                    *shape.first(Role::glucose), shape.first(Role::device), delimiter);
    if (!scanner.skip_lines(rows.rows_before)) {
        return std::nullopt;
    }
    // A guess of the count from the first line's length spares moving the rows.
    const std::size_t line_length = 20;
    rows.rows.reserve(text.size() / line_length + 1);
    while (!scanner.at_end()) {
        if (scanner.blank()) {
            ++rows.blank_rows;
        } else if (rows.blank_rows > 0 ||
                   !scanner.row(rows)) {  // blank lines stand at the end only
            return std::nullopt;
        }
    }
    if (rows.first_value.find('.') != std::string::npos) {
        rows.point_sample = rows.first_value;
    }
    return rows;
}

}  // namespace tracewright
