#include "intake/column_guesses.hpp"

#include <algorithm>

namespace tracewright {

namespace {

using std::chrono::hours;

constexpr std::uint64_t one_in = 20;

}  // namespace

void DecimalMarkEvidence::see(std::string_view cell) {
    switch (mark_evidence(cell)) {
        case MarkEvidence::point:
            ++points_;
            break;
        case MarkEvidence::comma:
            ++commas_;
            break;
        case MarkEvidence::lone_point:
            ++lone_points_;
            break;
        case MarkEvidence::lone_comma:
            ++lone_commas_;
            break;
        case MarkEvidence::none:
            break;
    }
}

double UnitEvidence::median() const {
    std::uint64_t below = 0;
    for (std::size_t i = 0; i < by_whole_.size(); ++i) {
        below += by_whole_[i];
        if (2 * below > seen_) {
            return static_cast<double>(i);
        }
    }
    return 0;
}

std::optional<GlucoseUnit> UnitEvidence::by_median() const {
    const double middle = median();
    if (seen_ > 0 && middle >= 2 && middle <= 25) {
        return GlucoseUnit::mmol_per_l;
    }
    if (seen_ > 0 && middle >= 40 && middle <= 400) {
        return GlucoseUnit::mg_per_dl;
    }
    return std::nullopt;
}

bool UnitEvidence::mixed() const {
    std::uint64_t small = 0;
    std::uint64_t large = 0;
    for (std::size_t i = 0; i < by_whole_.size(); ++i) {
        small += i >= 1 && i <= 25 ? by_whole_[i] : 0;
        large += i >= 40 ? by_whole_[i] : 0;
    }
    // A slip or two is no second unit.
    return one_in * small >= seen_ && one_in * large >= seen_ && small >= 3 && large >= 3;
}

void DateOrderEvidence::follow(Course& course, const WrittenTime& time, DateOrder order) {
    const auto date = time.date(order);
    if (!date) {
        ++course.impossible;
        return;
    }
    const WallTime wall = *date + time.clock;
    if (course.previous) {
        course.forward += wall > *course.previous ? 1U : 0U;
        course.backward += wall < *course.previous ? 1U : 0U;
        course.large_steps += std::chrono::abs(wall - *course.previous) > hours{24 * 20} ? 1U : 0U;
    }
    course.previous = wall;
    course.first = std::min(course.first.value_or(wall), wall);
    course.last = std::max(course.last.value_or(wall), wall);
}

void DateOrderEvidence::see(const WrittenTime& time) {
    if (!time.has_date) {
        return;
    }
    if (time.year_first || time.instant) {
        ++year_first_;
        return;
    }
    ++open_;
    first_over_12_ += time.first > 12 ? 1U : 0U;
    second_over_12_ += time.second > 12 ? 1U : 0U;
    follow(day_first_, time, DateOrder::day_first);
    follow(month_first_, time, DateOrder::month_first);
}

DateOrderEvidence::Answer DateOrderEvidence::answer() const {
    if (open_ == 0) {
        return {DateOrder::year_first, true, false,
                "the year is written first, or the month by name"};
    }
    if (first_over_12_ > 0 && second_over_12_ == 0) {
        return {DateOrder::day_first, true, false, "a first number above 12 can only be a day"};
    }
    if (second_over_12_ > 0 && first_over_12_ == 0) {
        return {DateOrder::month_first, true, false, "a second number above 12 can only be a day"};
    }
    if (first_over_12_ > 0 && second_over_12_ > 0) {
        // One slip among many dates does not turn the column.
        const bool day = first_over_12_ > one_in * second_over_12_;
        const bool month = second_over_12_ > one_in * first_over_12_;
        if (day || month) {
            return {day ? DateOrder::day_first : DateOrder::month_first, false, false,
                    "nearly all numbers above 12 stand in the place of the day"};
        }
        return {std::nullopt, false, true, "numbers above 12 stand in both places"};
    }
    const auto turns = [](const Course& c) { return std::min(c.forward, c.backward); };
    if (turns(day_first_) == 0 && turns(month_first_) > 0) {
        return {DateOrder::day_first, false, false,
                "only with the day first do the times run one way"};
    }
    if (turns(month_first_) == 0 && turns(day_first_) > 0) {
        return {DateOrder::month_first, false, false,
                "only with the month first do the times run one way"};
    }
    // Readings that jump a month from one row to the next are days and months swapped.
    if (day_first_.large_steps == 0 && month_first_.large_steps > 0) {
        return {DateOrder::day_first, false, false,
                "with the month first the times would jump by months"};
    }
    if (month_first_.large_steps == 0 && day_first_.large_steps > 0) {
        return {DateOrder::month_first, false, false,
                "with the day first the times would jump by months"};
    }
    return {std::nullopt, false, false, "every date fits both orders"};
}

void TwelveHourEvidence::see(const WrittenTime& time) {
    if (!time.has_clock || time.instant) {
        return;
    }
    ++seen_;
    const auto hour = std::chrono::duration_cast<hours>(time.clock).count();
    beyond_ = beyond_ || time.twelve_hour || hour == 0 || hour > 12;
    const std::array date{time.year, time.first, time.second};
    if (date_ == date && time.clock != previous_) {
        constexpr std::size_t enough = 1000;  // more than clocks are set back in a file
        Turns& turns = time.clock < previous_ ? backwards_ : forwards_;
        ++turns.count;
        if (!beyond_ && turns.kept.size() < enough) {
            turns.kept.push_back({previous_, time});
        }
    }
    date_ = date;
    previous_ = time.clock;
}

bool TwelveHourEvidence::suspicious(const std::function<bool(const Turn&)>& set_back) const {
    constexpr std::uint64_t few = 24;
    const Turns& against = forwards_.count < backwards_.count ? forwards_ : backwards_;
    return seen_ >= few && !beyond_ && against.count > 0 &&
           (against.count > against.kept.size() || !std::ranges::all_of(against.kept, set_back));
}

}  // namespace tracewright
