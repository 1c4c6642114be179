#include "measures/day_sums.hpp"

#include "measures/level_terms.hpp"
#include "measures/mean_swing.hpp"
#include "measures/paired_differences.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr double valid_share = 0.70;  // Battelino et al. 2019, asked of each day (ours)
constexpr std::array<seconds, 3> pairs_apart{std::chrono::hours{1}, std::chrono::hours{2},
                                             std::chrono::hours{4}};

std::size_t index_of(GlucoseUnit unit) {
    return static_cast<std::size_t>(unit);
}

double mg(const Reading& reading) {
    return reading.value().in(GlucoseUnit::mg_per_dl);
}

void sum_levels(DayOfTrace& day) {
    GlucoseSums& sums = day.sums;
    for_each_standing(day.view, [&](const Reading& reading, seconds stood) {
        const auto time = static_cast<double>(stood.count());
        const std::size_t unit = index_of(reading.unit());
        const double level = reading.hundredths();
        // One that stands over midnight has time in both days and is still one reading.
        sums.readings += day.part.contains(reading.at) ? 1 : 0;
        sums.seconds += time;
        sums.unit_seconds[unit] += time;
        sums.level[unit] += time * level;
        sums.level_squared[unit] += time * level * level;
        sums.band_seconds[static_cast<std::size_t>(band_of(reading))] += time;
        sums.tight_seconds += in_tight_range(reading) ? time : 0;
        sums.pregnancy_seconds += in_pregnancy_range(reading) ? time : 0;
        sums.censored_seconds += reading.censored() ? time : 0;
        const LevelTerms terms = level_terms(reading.value());
        sums.low_risk += time * terms.risk.low;
        sums.high_risk += time * terms.risk.high;
        sums.m_value += time * terms.m_value;
        day.low_risk_max = std::max(day.low_risk_max, terms.risk.low);
        day.high_risk_max = std::max(day.high_risk_max, terms.risk.high);
    });
    day.valid = sums.seconds >= valid_share * day.seconds_possible() && sums.seconds > 0;
}

// Steps between neighbours without a gap, for the day of the later one.
void sum_steps(const TraceView& view, std::vector<DayOfTrace>& days) {
    std::size_t d = 0;
    for (std::size_t i = 1; i < view.readings.size(); ++i) {
        const Reading& before = view.readings[i - 1];
        const Reading& reading = view.readings[i];
        if (reading.at < view.from || reading.at >= view.to || before.at < view.from) {
            continue;
        }
        const seconds apart = reading.at - before.at;
        if (2 * apart > 3 * before.interval() || before.implausible() || reading.implausible()) {
            continue;
        }
        while (d + 1 < days.size() && reading.at >= days[d].part.to) {
            ++d;
        }
        const double change = mg(reading) - mg(before);
        const double minutes = static_cast<double>(apart.count()) / 60;
        GlucoseSums& sums = days[d].sums;
        sums.change += std::abs(change);
        sums.path += std::sqrt(minutes * minutes + change * change);
        sums.step_seconds += static_cast<double>(apart.count());
    }
}

template <typename Add>
void add_by_day(const std::vector<PairedDifference>& pairs, std::vector<DayOfTrace>& days,
                Add add) {
    std::size_t d = 0;
    for (const PairedDifference& pair : pairs) {
        while (d + 1 < days.size() && pair.at >= days[d].part.to) {
            ++d;
        }
        add(days[d].sums, pair.mg_per_dl);
    }
}

void sum_pairs(const TraceView& view, const ZoneHistory& zones, std::vector<DayOfTrace>& days) {
    add_by_day(differences_to_day_before(view, zones), days,
               [](GlucoseSums& sums, double difference) {
                   sums.day_before += std::abs(difference);
                   sums.day_before_pairs += 1;
               });
    for (std::size_t i = 0; i < pairs_apart.size(); ++i) {
        add_by_day(differences_after(view, pairs_apart[i]), days,
                   [&](GlucoseSums& sums, double difference) {
                       sums.hourly[i] += difference;
                       sums.hourly_squared[i] += difference * difference;
                       sums.hourly_pairs[i] += 1;
                   });
    }
}

void swing_of(DayOfTrace& day) {
    if (!day.valid) {
        return;
    }
    std::vector<double> levels;
    for (const Reading& reading : readings_within(day.view)) {
        if (!reading.implausible()) {
            levels.push_back(mg(reading));
        }
    }
    if (const auto swing = mean_swing(levels)) {
        day.swing = swing->first_direction;
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
        sum_steps(view, days);
        sum_pairs(view, zones, days);
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
