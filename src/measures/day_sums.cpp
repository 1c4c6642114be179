#include "measures/day_sums.hpp"

#include "measures/course_sums.hpp"
#include "measures/level_terms.hpp"
#include "measures/mean_swing.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr double valid_share = 0.70;  // Battelino et al. 2019, asked of each day (ours)
std::size_t index_of(GlucoseUnit unit) {
    return static_cast<std::size_t>(unit);
}

double mg(const Reading& reading) {
    return reading.value().in(GlucoseUnit::mg_per_dl);
}

// Sums of one day's readings. Seconds and hundredths are whole numbers, so all
// but the risks is exact.
class LevelTally {
  public:
    // `time`: what all such readings stood, together.
    void add(const Reading& reading, std::int64_t time, bool read_that_day) {
        add(reading, time, level_terms(reading.value()), read_that_day);
    }
    void add(const Reading& reading, std::int64_t time, const LevelTerms& terms,
             bool read_that_day) {
        const auto unit = static_cast<std::size_t>(reading.unit());
        const std::int64_t level = reading.hundredths();
        seconds_[unit] += time;
        level_[unit] += time * level;
        squared_[unit] += time * level * level;
        band_[static_cast<std::size_t>(band_of(reading))] += time;
        tight_ += in_tight_range(reading) ? time : 0;
        pregnancy_ += in_pregnancy_range(reading) ? time : 0;
        censored_ += reading.censored() ? time : 0;
        low_risk_ += static_cast<double>(time) * terms.risk.low;
        high_risk_ += static_cast<double>(time) * terms.risk.high;
        m_value_ += static_cast<double>(time) * terms.m_value;
        if (read_that_day) {
            low_risk_max_ = std::max(low_risk_max_, terms.risk.low);
            high_risk_max_ = std::max(high_risk_max_, terms.risk.high);
        }
    }

    void give(DayOfTrace& day) const {
        GlucoseSums& sums = day.sums;
        const auto number = [](std::int64_t whole) { return static_cast<double>(whole); };
        for (std::size_t i = 0; i < 2; ++i) {
            sums.unit_seconds[i] = number(seconds_[i]);
            sums.level[i] = number(level_[i]);
            sums.level_squared[i] = number(squared_[i]);
        }
        sums.seconds = number(seconds_[0] + seconds_[1]);
        for (std::size_t i = 0; i < band_.size(); ++i) {
            sums.band_seconds[i] = number(band_[i]);
        }
        sums.tight_seconds = number(tight_);
        sums.pregnancy_seconds = number(pregnancy_);
        sums.censored_seconds = number(censored_);
        sums.low_risk = low_risk_;
        sums.high_risk = high_risk_;
        sums.m_value = m_value_;
        day.low_risk_max = low_risk_max_;
        day.high_risk_max = high_risk_max_;
    }

  private:
    std::array<std::int64_t, 2> seconds_{};  // by unit, as the next two
    std::array<std::int64_t, 2> level_{};
    std::array<std::int64_t, 2> squared_{};
    std::array<std::int64_t, 5> band_{};
    std::int64_t tight_ = 0;
    std::int64_t pregnancy_ = 0;
    std::int64_t censored_ = 0;
    double low_risk_ = 0;
    double high_risk_ = 0;
    double m_value_ = 0;
    double low_risk_max_ = 0;
    double high_risk_max_ = 0;
};

// Most readings of a day stand one interval at a whole level of one unit: those
// are counted by level, and a level's terms are taken once however often it was
// read. The others go one by one.
void sum_levels(DayOfTrace& day) {
    if (day.view.readings.empty()) {
        return;
    }
    const Reading first = day.view.readings.front();
    const LevelTable& table = LevelTable::of(first.unit());
    std::array<std::uint32_t, LevelTable::most_places> times{};
    LevelTally tally;
    int readings = 0;
    for_each_standing(day.view, [&](const Reading& reading, seconds stood) {
        // One that stands over midnight has time in both days and is still one
        // reading.
        const bool read_that_day = reading.at >= day.part.from;
        readings += read_that_day ? 1 : 0;
        const std::size_t place = table.place(reading.hundredths());
        if (read_that_day && stood == first.interval() && reading.unit() == first.unit() &&
            !reading.censored() && place != LevelTable::none) {
            ++times[place];
        } else {
            tally.add(reading, stood.count(), read_that_day);
        }
    });
    for (std::size_t place = 0; place < table.size(); ++place) {
        if (times[place] > 0) {
            tally.add(Reading{first.at, table.level(place), first.interval()},
                      times[place] * first.interval().count(), table.at(place), true);
        }
    }
    tally.give(day);
    day.sums.readings = readings;
    day.valid = day.sums.seconds >= valid_share * day.seconds_possible() && day.sums.seconds > 0;
}

void swing_of(DayOfTrace& day) {
    if (!day.valid) {
        return;
    }
    const auto readings = readings_within(day.view);
    const bool one_unit = std::all_of(
        readings.begin(), readings.end(),
        [&](const Reading& reading) { return reading.unit() == readings.front().unit(); });
    std::vector<double> levels;  // in hundredths of the one unit, else in mg/dL
    levels.reserve(readings.size());
    for (const Reading& reading : readings) {
        if (!reading.implausible()) {
            levels.push_back(one_unit ? reading.hundredths() : mg(reading));
        }
    }
    if (const auto swing = mean_swing(levels)) {
        const double size = swing->first_direction;
        day.swing = one_unit
                        ? converted(size / 100, readings.front().unit(), GlucoseUnit::mg_per_dl)
                        : size;
    }
}

}  // namespace

void GlucoseSums::add(const GlucoseSums& other, double times) {
    readings += times * other.readings;
    seconds += times * other.seconds;
    for (std::size_t i = 0; i < 2; ++i) {
        level[i] += times * other.level[i];
        level_squared[i] += times * other.level_squared[i];
        unit_seconds[i] += times * other.unit_seconds[i];
    }
    for (std::size_t i = 0; i < 5; ++i) {
        band_seconds[i] += times * other.band_seconds[i];
    }
    tight_seconds += times * other.tight_seconds;
    pregnancy_seconds += times * other.pregnancy_seconds;
    censored_seconds += times * other.censored_seconds;
    low_risk += times * other.low_risk;
    high_risk += times * other.high_risk;
    m_value += times * other.m_value;
    change += times * other.change;
    path += times * other.path;
    step_seconds += times * other.step_seconds;
    day_before += times * other.day_before;
    day_before_pairs += times * other.day_before_pairs;
    for (std::size_t i = 0; i < 3; ++i) {
        hourly[i] += times * other.hourly[i];
        hourly_squared[i] += times * other.hourly_squared[i];
        hourly_pairs[i] += times * other.hourly_pairs[i];
    }
}

double GlucoseSums::centre(GlucoseUnit unit) const {
    double sum = 0;
    for (const GlucoseUnit reported : {GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l}) {
        sum += converted(level[index_of(reported)], reported, unit);
    }
    return sum / seconds;
}

double GlucoseSums::mean(GlucoseUnit unit) const {
    return centre(unit) / 100;
}

std::optional<double> GlucoseSums::sd(GlucoseUnit unit) const {
    if (readings < 2) {
        return std::nullopt;
    }
    double squares = 0;
    for (const GlucoseUnit reported : {GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l}) {
        squares +=
            converted(converted(level_squared[index_of(reported)], reported, unit), reported, unit);
    }
    const double middle = centre(unit);
    const double variance = std::max(0.0, squares / seconds - middle * middle);
    return std::sqrt(variance * readings / (readings - 1)) / 100;
}

std::vector<DayOfTrace> days_of_trace(const TraceView& view, const ZoneHistory& zones) {
    std::vector<DayOfTrace> days;
    for (const CivilDay& day : zones.days(view.window())) {
        DayOfTrace of_day;
        of_day.date = day.date;
        of_day.part = day.interval();
        of_day.view = cut(view, day.interval());
        sum_levels(of_day);
        swing_of(of_day);
        days.push_back(of_day);
    }
    if (!days.empty()) {
        sum_course(view, zones, days);
    }
    return days;
}

std::vector<DayOfTrace> clock_windows_of_trace(const TraceView& view, const ZoneHistory& zones,
                                               seconds begin, seconds end) {
    std::vector<DayOfTrace> days;
    for (const CivilDay& day : zones.days(view.window())) {
        DayOfTrace of_day;
        of_day.date = day.date;
        of_day.part = zones.clock_window(day, begin, end);
        of_day.view = cut(view, of_day.part);
        sum_levels(of_day);
        days.push_back(of_day);
    }
    return days;
}

}  // namespace tracewright
