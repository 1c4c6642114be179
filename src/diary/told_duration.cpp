#include "diary/told_duration.hpp"

#include "diary/eaten_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace tracewright {

namespace {

using std::chrono::days;
using std::chrono::hours;
using std::chrono::minutes;

template <std::size_t N>
bool among(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

struct Named {
    std::string_view word;
    minutes length;
};

constexpr std::array lengths{
    Named{"h", hours{1}},     Named{"hr", hours{1}},    Named{"hrs", hours{1}},
    Named{"hour", hours{1}},  Named{"hours", hours{1}}, Named{"day", days{1}},
    Named{"days", days{1}},   Named{"night", days{1}},  Named{"nights", days{1}},
    Named{"week", days{7}},   Named{"weeks", days{7}},  Named{"fortnight", days{14}},
    Named{"month", days{30}}, Named{"months", days{30}}};
// "all night": of the stretch itself, no matter when it was written.
constexpr std::array whole_stretches{Named{"night", hours{8}}, Named{"day", hours{12}},
                                     Named{"week", days{7}}, Named{"weekend", days{2}}};
// "for hours", "for days": how many is not told.
constexpr std::array unnumbered{Named{"hours", hours{7}}, Named{"days", days{2}},
                                Named{"weeks", days{14}}};
struct Counted {
    std::string_view word;
    double count;
};
constexpr std::array counts{Counted{"a", 1},        Counted{"an", 1},      Counted{"couple", 2},
                            Counted{"few", 3},      Counted{"several", 3}, Counted{"second", 2},
                            Counted{"third", 3},    Counted{"fourth", 4},  Counted{"fifth", 5},
                            Counted{"fourteen", 14}};
constexpr double most_counted = 1000;  // of any length
// After midnight.
constexpr std::array parts_of_a_day{
    Named{"midnight", hours{0}},   Named{"morning", hours{6}},    Named{"breakfast", hours{8}},
    Named{"noon", hours{12}},      Named{"midday", hours{12}},    Named{"lunch", hours{12}},
    Named{"lunchtime", hours{12}}, Named{"afternoon", hours{12}}, Named{"dinner", hours{18}},
    Named{"supper", hours{18}},    Named{"evening", hours{18}},   Named{"night", hours{21}}};
constexpr std::array<std::string_view, 7> weekdays{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
constexpr std::array<std::string_view, 5> of_another_time{"ago", "before", "earlier", "later",
                                                          "after"};
constexpr std::array<std::string_view, 11> no_length_behind{
    "in", "every", "each", "per", "within", "next", "time", "times", "once", "twice", "x"};
constexpr std::array<std::string_view, 5> beginnings{"since", "started", "start", "began", "begun"};

template <std::size_t N>
std::optional<minutes> named(const std::array<Named, N>& table, std::string_view word) {
    const auto found = std::ranges::find(table, word, &Named::word);
    return found == table.end() ? std::nullopt : std::optional(found->length);
}

// Reads the words of a text for lengths of time.
class DurationReader {
  public:
    DurationReader(std::string_view text, WallTime written)
        : words_(eaten_words(text)), written_(written) {}

    std::optional<minutes> longest() {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            take(length_ending_at(i));
            take(day_counted_at(i));
            take(whole_stretch_at(i));
            take(since_at(i));
        }
        return longest_;
    }

  private:
    std::vector<EatenWord> words_;
    WallTime written_;
    std::optional<minutes> longest_;

    std::string_view word(std::size_t i) const {
        return i < words_.size() ? std::string_view(words_[i].text) : std::string_view();
    }
    std::string_view back(std::size_t i, std::size_t by) const {
        return i >= by ? word(i - by) : std::string_view();
    }
    void take(std::optional<minutes> told) {
        longest_ = told && *told > longest_.value_or(minutes{0}) ? told : longest_;
    }

    std::optional<double> count_at(std::size_t i) const {
        if (words_[i].number) {
            return *words_[i].number + words_[i].half_width;
        }
        const auto found = std::ranges::find(counts, words_[i].text, &Counted::word);
        return found == counts.end() ? std::nullopt : std::optional(found->count);
    }

    bool tells_a_beginning() const {
        return std::ranges::any_of(
            words_, [](const EatenWord& one) { return among(beginnings, one.text); });
    }

    // "10 hours", "a couple of days", "a few days", "for days", with its unit at i.
    std::optional<minutes> length_ending_at(std::size_t i) const {
        const auto unit = named(lengths, word(i));
        const bool of_another =
            among(of_another_time, word(i + 1)) && !(word(i + 1) == "ago" && tells_a_beginning());
        if (!unit || i == 0 || of_another) {
            return std::nullopt;
        }
        const std::size_t number = i - (i > 1 && word(i - 1) == "of" ? 2 : 1);
        const auto count = count_at(number);
        const std::string_view before =
            back(number, 1) == "the" ? back(number, 2) : back(number, 1);
        if (!count) {
            return word(i - 1) == "for" ? named(unnumbered, word(i)) : std::nullopt;
        }
        if (among(no_length_behind, before)) {
            return std::nullopt;
        }
        return minutes{
            std::lround(std::min(*count, most_counted) * static_cast<double>(unit->count()))};
    }

    // "day 3 of flu"
    std::optional<minutes> day_counted_at(std::size_t i) const {
        const bool counted = word(i) == "day" && i + 1 < words_.size() && words_[i + 1].number &&
                             !named(lengths, word(i + 2));
        if (!counted) {
            return std::nullopt;
        }
        return minutes{std::lround(std::min(*words_[i + 1].number, most_counted) * 24 * 60)};
    }

    // "all night", "the whole day"
    std::optional<minutes> whole_stretch_at(std::size_t i) const {
        if (word(i) == "overnight") {
            return named(whole_stretches, "night");
        }
        const bool whole = word(i) == "all" || word(i) == "whole" || word(i) == "entire";
        return whole ? named(whole_stretches, word(word(i + 1) == "the" ? i + 2 : i + 1))
                     : std::nullopt;
    }

    // "since ..."
    std::optional<minutes> since_at(std::size_t i) const {
        if (word(i) != "since") {
            return std::nullopt;
        }
        std::size_t next = i + 1;
        while (word(next) == "the" || word(next) == "this" || word(next) == "early" ||
               word(next) == "late" || word(next) == "about" || word(next) == "at") {
            ++next;
        }
        const auto at = moment_at(next);
        return at && *at < written_
                   ? std::optional(std::chrono::duration_cast<minutes>(written_ - *at))
                   : std::nullopt;
    }

    std::optional<WallTime> moment_at(std::size_t i) const {
        const auto today = std::chrono::floor<days>(written_);
        if (word(i) == "last" && word(i + 1) == "night") {
            return WallTime{today} - hours{3};
        }
        if (word(i) == "last" && word(i + 1) == "week") {
            return WallTime{today} - days{7};
        }
        i += word(i) == "last" ? 1U : 0U;
        if (word(i) == "yesterday") {
            return WallTime{today} - days{1} +
                   named(parts_of_a_day, word(i + 1)).value_or(minutes{0});
        }
        if (const auto weekday = weekday_at(i)) {
            const unsigned now = std::chrono::weekday{today}.c_encoding();
            const unsigned past = (now + 6 - *weekday) % 7 + 1;
            return WallTime{today} - days{past};
        }
        auto clock = named(parts_of_a_day, word(i));
        clock = clock ? clock : clock_at(i);
        return clock ? std::optional(latest_before(WallTime{today} + *clock)) : std::nullopt;
    }
    WallTime latest_before(WallTime at) const { return at < written_ ? at : at - days{1}; }

    // "Monday", "Mon", "the weekend", which is its Saturday.
    std::optional<unsigned> weekday_at(std::size_t i) const {
        if (word(i) == "weekend") {
            return 6;
        }
        const bool whole = word(i).ends_with("day") || word(i).size() == 3;
        const auto found = std::ranges::find(weekdays, word(i).substr(0, 3));
        return whole && found != weekdays.end()
                   ? std::optional(static_cast<unsigned>(found - weekdays.begin()))
                   : std::nullopt;
    }

    // "3 am", "8:30", "15"
    std::optional<minutes> clock_at(std::size_t i) const {
        if (i >= words_.size() || !words_[i].number || *words_[i].number > 24 ||
            named(lengths, word(i + 1))) {
            return std::nullopt;
        }
        int hour = static_cast<int>(*words_[i].number);
        const bool minute =
            i + 1 < words_.size() && words_[i + 1].number && *words_[i + 1].number < 60;
        const std::string_view half = word(minute ? i + 2 : i + 1);
        hour = half == "pm" && hour < 12 ? hour + 12 : half == "am" && hour == 12 ? 0 : hour;
        return hours{hour} + minutes{minute ? std::lround(*words_[i + 1].number) : 0};
    }
};

}  // namespace

std::optional<std::chrono::minutes> told_duration(std::string_view text, WallTime written) {
    return DurationReader(text, written).longest();
}

}  // namespace tracewright
