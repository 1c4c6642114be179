#pragma once

#include "intake/clock_text.hpp"
#include "intake/number_text.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What a whole column of number cells says of its decimal mark.
class DecimalMarkEvidence {
  public:
    void see(std::string_view cell);

    bool contradictory() const { return points_ > 0 && commas_ > 0; }
    /// Only "1.234" or only "1,234": nothing else in the column tells.
    bool lone() const { return points_ + commas_ == 0 && lone_points_ + lone_commas_ > 0; }
    /// The mark; the point where nothing was seen. Not meaningful if contradictory() or lone().
    char mark() const { return commas_ > points_ ? ',' : '.'; }
    bool any() const { return points_ + commas_ > 0; }

  private:
    std::uint64_t points_ = 0;
    std::uint64_t commas_ = 0;
    std::uint64_t lone_points_ = 0;
    std::uint64_t lone_commas_ = 0;
};

/// What a column of glucose numbers says of its unit.
class UnitEvidence {
  public:
    void see(std::int64_t hundredths) {
        const std::int64_t whole = hundredths < 0 ? 0 : hundredths / 100;
        ++by_whole_[static_cast<std::size_t>(whole < 1000 ? whole : 1000)];
        ++seen_;
    }

    /// 2 to 25 reads as mmol/L, 40 to 400 as mg/dL, anything else as neither.
    std::optional<GlucoseUnit> by_median() const;
    double median() const;
    /// Both small and large numbers: at least one in twenty up to 25 and one in twenty from 40 on,
    /// three of each at least.
    bool mixed() const;
    std::uint64_t seen() const { return seen_; }

  private:
    std::array<std::uint64_t, 1001> by_whole_{};  // last: larger
    std::uint64_t seen_ = 0;
};

/// What a column of dates says of its order.
class DateOrderEvidence {
  public:
    void see(const WrittenTime& time);

    struct Answer {
        std::optional<DateOrder> order;  ///< empty: must be asked, or contradictory
        bool certain = false;
        bool contradictory = false;
        std::string why;
    };
    Answer answer() const;

  private:
    // How a column reads under one of the two orders.
    struct Course {
        std::uint64_t impossible = 0;
        std::uint64_t forward = 0;
        std::uint64_t backward = 0;
        std::optional<WallTime> previous;
        std::optional<WallTime> first;
        std::optional<WallTime> last;
        std::uint64_t large_steps = 0;  // of more than 20 days
    };
    void follow(Course& course, const WrittenTime& time, DateOrder order);

    std::uint64_t year_first_ = 0;
    std::uint64_t open_ = 0;
    std::uint64_t first_over_12_ = 0;
    std::uint64_t second_over_12_ = 0;
    Course day_first_;
    Course month_first_;
};

/// Whether clock times never pass 12:59 and come back: a 12-hour clock whose AM and PM were left
/// out.
class TwelveHourEvidence {
  public:
    /// Two times of one day, the second against the way that most rows run.
    struct Turn {
        std::chrono::seconds from;
        WrittenTime to;
    };

    void see(const WrittenTime& time);
    /// `set_back`: whether a turn is a clock that was set back, which says nothing of its hours.
    bool suspicious(const std::function<bool(const Turn&)>& set_back) const;

  private:
    // The turns of one direction; those past the kept ones are only counted.
    struct Turns {
        std::uint64_t count = 0;
        std::vector<Turn> kept;
    };

    std::uint64_t seen_ = 0;
    Turns backwards_;
    Turns forwards_;
    bool beyond_ = false;  // an hour of 0 or 13 to 24, or an AM or PM
    std::optional<std::array<int, 3>> date_;
    std::chrono::seconds previous_{0};
};

}  // namespace tracewright
