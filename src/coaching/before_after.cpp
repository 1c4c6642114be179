#include "coaching/before_after.hpp"

#include "coaching/before_after_words.hpp"
#include "coaching/wears_apart.hpp"
#include "findings/question_words.hpp"
#include "inference/student_t.hpp"
#include "inference/two_wears.hpp"
#include "measures/day_sums.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace tracewright {

namespace {

constexpr std::size_t fewest_days = 5;
constexpr int most_days_told = 120;

bool weekend(CivilDate date) {
    const std::chrono::weekday day{std::chrono::sys_days{date.time_since_epoch()}};
    return day == std::chrono::Saturday || day == std::chrono::Sunday;
}

// One side: its days, and its hours in range were every reading a little higher or lower.
struct Side {
    std::vector<double> hours;
    std::vector<SeriesStep> steps;
    std::vector<double> weekend;
    std::set<CivilDate> dates;
    int left_out = 0;
    double sensor_variance = 0;  // hours squared
};

double hours_in_range(const DayOfTrace& day) {
    return 24 * day.sums.band_seconds[static_cast<std::size_t>(Band::in_range)] / day.sums.seconds;
}

bool ill_on(const Diary& diary, const ZoneHistory& zones, CivilDate date) {
    return std::ranges::any_of(diary, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::illness && zones.date_at(entry.at) == date;
    });
}

std::vector<Reading> scaled(std::span<const Reading> readings, double factor) {
    std::vector<Reading> result;
    result.reserve(readings.size());
    for (const Reading& reading : readings) {
        const double level = reading.value().value() * factor;
        result.emplace_back(reading.at, Glucose{rounded_hundredths(level), reading.unit()},
                            reading.interval(), reading.limit(), reading.implausible());
    }
    return result;
}

double mean_hours(const TraceView& view, const std::set<CivilDate>& dates,
                  const ZoneHistory& zones) {
    double sum = 0;
    int count = 0;
    for (const CivilDay& day : zones.days(view.window())) {
        if (!dates.contains(day.date)) {
            continue;
        }
        const TimeInBands bands = time_in_bands(cut(view, day.interval()));
        if (const auto share = bands.share(Band::in_range)) {
            sum += 24 * *share;
            ++count;
        }
    }
    return count == 0 ? 0 : sum / count;
}

// Half the span of the measure with all readings moved up and down by one SD of the sensor.
double sensor_sd_of(const Wear& wear, const std::set<CivilDate>& dates, const ZoneHistory& zones,
                    double sd) {
    const TraceView view = wear.view();
    const auto moved = [&](double by) {
        const std::vector<Reading> readings = scaled(wear.readings, std::exp(by));
        return mean_hours({readings, view.from, view.to}, dates, zones);
    };
    return std::abs(moved(sd) - moved(-sd)) / 2;
}

Side side_of(const ReviewInput& input, const std::vector<std::size_t>& wears, double sensor_sd) {
    Side side;
    std::vector<double> variances;
    for (const std::size_t index : wears) {
        const Wear& wear = input.wears.at(index);
        if (wear.empty()) {
            continue;
        }
        std::set<CivilDate> dates;
        std::optional<CivilDate> last;
        for (const DayOfTrace& day : days_of_trace(wear.view(), input.zones)) {
            const bool ill = day.valid && ill_on(input.diary, input.zones, day.date);
            if (!day.valid || ill || side.dates.contains(day.date)) {
                side.left_out += day.sums.seconds > 0 ? 1 : 0;
                continue;
            }
            side.steps.push_back({!last, last ? static_cast<int>((day.date - *last).count()) : 1});
            side.hours.push_back(hours_in_range(day));
            side.weekend.push_back(weekend(day.date) ? 1 : 0);
            last = day.date;
            dates.insert(day.date);
        }
        if (!dates.empty()) {
            variances.push_back(std::pow(sensor_sd_of(wear, dates, input.zones, sensor_sd), 2));
        }
        side.dates.insert(dates.begin(), dates.end());
    }
    // Of several sensors the mean has their errors' mean.
    for (const double variance : variances) {
        side.sensor_variance += variance / std::pow(static_cast<double>(variances.size()), 2);
    }
    return side;
}

// A day's hours in range by all that the wears saw.
std::optional<double> hours_of_all(const ReviewInput& input,
                                   const std::vector<std::size_t>& wears) {
    double seconds = 0;
    double in_range = 0;
    for (const std::size_t index : wears) {
        const TimeInBands bands = time_in_bands(input.wears.at(index).view());
        seconds += static_cast<double>(bands.sensed().count());
        in_range += static_cast<double>(bands.in(Band::in_range).count());
    }
    return seconds > 0 ? std::optional{24 * in_range / seconds} : std::nullopt;
}

bool worn_at_once(const ReviewInput& input, const std::vector<std::size_t>& before,
                  const std::vector<std::size_t>& after) {
    return std::ranges::any_of(before, [&](std::size_t a) {
        return std::ranges::any_of(after, [&](std::size_t b) {
            const Wear& first = input.wears.at(a);
            const Wear& second = input.wears.at(b);
            return !first.empty() && !second.empty() && !is_before(first, second);
        });
    });
}

// The same levels at the same distances, whatever the date.
bool same_readings(const ReviewInput& input, const std::vector<std::size_t>& before,
                   const std::vector<std::size_t>& after) {
    if (before.size() != 1 || after.size() != 1) {
        return false;
    }
    const auto& a = input.wears.at(before[0]).readings;
    const auto& b = input.wears.at(after[0]).readings;
    return a.size() == b.size() && !a.empty() &&
           std::equal(a.begin(), a.end(), b.begin(), [&](const Reading& x, const Reading& y) {
               return x.value() == y.value() && x.limit() == y.limit() &&
                      x.at - a.front().at == y.at - b.front().at;
           });
}

bool other_kind(const ReviewInput& input, const std::vector<std::size_t>& before,
                const std::vector<std::size_t>& after) {
    return std::ranges::any_of(before, [&](std::size_t a) {
        return std::ranges::any_of(after, [&](std::size_t b) {
            return input.wears.at(a).interval != input.wears.at(b).interval;
        });
    });
}

double half_width(const TMixture& found) {
    const auto ends = found.interval();
    return (ends[1] - ends[0]) / 2;
}

std::optional<double> mean_of(const std::vector<double>& values) {
    if (values.empty()) {
        return std::nullopt;
    }
    double sum = 0;
    for (const double value : values) {
        sum += value;
    }
    return sum / static_cast<double>(values.size());
}

// From `before` a day can lose no more than it has, and gain no more than the rest of it.
std::array<double, 2> within_a_day(std::array<double, 2> ends, double before) {
    for (double& end : ends) {
        end = std::clamp(end, -before, 24 - before);
    }
    return ends;
}

// Days in each wear until the interval's half-width comes down to the worth.
std::optional<int> days_needed(double half, double days_now, double sensor_sd, double worth) {
    const double floor = 1.959963984540054 * sensor_sd;
    if (floor >= worth) {
        return std::nullopt;
    }
    for (int n = 5; n <= most_days_told; ++n) {
        if (std::hypot(half * std::sqrt(days_now / n), floor) <= worth) {
            return n;
        }
    }
    return std::nullopt;
}

}  // namespace

BeforeAfter before_after(const ReviewInput& input, const std::vector<std::size_t>& before,
                         const std::vector<std::size_t>& after, const MedicineTimeline& medicines,
                         const BeforeAfterSettings& settings) {
    BeforeAfter result;
    const bool other = settings.other_kind || other_kind(input, before, after);
    const double sd = other ? settings.sensor_sd_other_kind : settings.sensor_sd;
    const Side first = side_of(input, before, sd);
    const Side second = side_of(input, after, sd);
    result.days_before = static_cast<int>(first.hours.size());
    result.days_after = static_cast<int>(second.hours.size());
    result.left_out = first.left_out + second.left_out;
    result.same_readings = same_readings(input, before, after);
    // One record brought in twice is told as such, at whatever dates.
    result.worn_at_once = !result.same_readings && worn_at_once(input, before, after);
    const bool readable = first.hours.size() >= fewest_days && second.hours.size() >= fewest_days &&
                          !result.worn_at_once;
    if (input.goals.kind != GoalKind::pregnancy) {
        result.hours_before = mean_of(first.hours);
        result.hours_after = mean_of(second.hours);
        result.hours_before_of_all = hours_of_all(input, before);
        result.hours_after_of_all = hours_of_all(input, after);
    }
    if (readable) {
        result.sensor_sd = std::sqrt(first.sensor_variance + second.sensor_variance);
        const TwoWears both = two_wears(
            {first.hours, first.steps, first.weekend}, {second.hours, second.steps, second.weekend},
            result.sensor_sd, value_error_of(OutcomeUnit::hours).least_sd);
        const auto has_both = [](const Side& side) {
            return std::ranges::find(side.weekend, 1.0) != side.weekend.end() &&
                   std::ranges::find(side.weekend, 0.0) != side.weekend.end();
        };
        result.weekdays_matched = has_both(first) || has_both(second);
        const double hours_before = std::clamp(both.first, 0.0, 24.0);
        const double hours_after = std::clamp(both.first + both.difference.mean(), 0.0, 24.0);
        if (input.goals.kind != GoalKind::pregnancy) {
            result.hours_before = hours_before;
            result.hours_after = hours_after;
        }
        result.difference = hours_after - hours_before;
        result.interval95 = within_a_day(both.difference.interval(), hours_before);
        result.interval95_of_days = within_a_day(both.days.interval(), hours_before);
        result.probability_more = both.difference.probability_above(0);
        const double above = both.difference.probability_above(settings.worth_hours);
        const double below = both.difference.cdf(-settings.worth_hours);
        result.beyond = std::max(above, below);
        result.within = 1 - above - below;
        const double n = (result.days_before + result.days_after) / 2.0;
        result.days_needed =
            days_needed(half_width(both.days), n, result.sensor_sd, settings.worth_hours);
        if (result.same_readings) {
            result.difference = 0;
            result.hours_after = result.hours_before;
        }
    }
    tell_before_after(result, {input, before, after, medicines, settings, other, readable});
    return result;
}

std::optional<int> days_to_check(const ReviewInput& input, double hours,
                                 const BeforeAfterSettings& settings) {
    for (std::size_t wear = input.wears.size(); wear-- > 0;) {
        const Side side = side_of(input, {wear}, settings.sensor_sd);
        if (side.hours.size() < fewest_days) {
            continue;
        }
        // The other side is thought to scatter like this one.
        const double half = std::sqrt(2.0) * half_width(ar1_mean(side.hours, side.steps));
        const double sensors = std::sqrt(2 * side.sensor_variance);
        return days_needed(half, static_cast<double>(side.hours.size()), sensors, hours);
    }
    return std::nullopt;
}

}  // namespace tracewright
