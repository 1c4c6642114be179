#include "trace/fitness.hpp"

#include "trace/days_for_an_interval.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace tracewright {

namespace {

using std::chrono::seconds;

// 70 % of 14 days: Battelino et al. 2019, 10.2337/dci19-0028. Asked of each day too (ours).
constexpr double consensus_share = 0.70;

double share(seconds part, seconds whole) {
    return whole.count() > 0
               ? static_cast<double>(part.count()) / static_cast<double>(whole.count())
               : 0.0;
}

seconds not_worn_within(std::span<const Interval> not_worn, Interval window) {
    seconds total{0};
    for (const Interval& stretch : not_worn) {
        total += intersection(stretch, window).length();
    }
    return total;
}

seconds longest_gap_of(const TraceView& view, std::span<const Interval> not_worn) {
    seconds longest{0};
    Instant seen_to = view.from;
    for (std::size_t i = 0; i < view.readings.size(); ++i) {
        const Reading& reading = view.readings[i];
        const Interval gap{seen_to, std::max(seen_to, std::min(reading.at, view.to))};
        longest = std::max(longest, gap.length() - not_worn_within(not_worn, gap));
        const Reading* next = i + 1 < view.readings.size() ? &view.readings[i + 1] : nullptr;
        seen_to = std::max(seen_to, reading.at + standing_time(reading, next));
    }
    return std::max(longest, view.to - std::min(seen_to, view.to));
}

// The clock hours of a day by their moments; the hour h is [h, h + 1).
std::array<Instant, 25> hours_of(const CivilDay& day, const ZoneHistory& zones) {
    std::array<Instant, 25> edges;
    const Interval kept = zones.constant_offset_round(day.from);
    const bool plain =
        day.length() == std::chrono::days{1} && kept.from <= day.from && day.to <= kept.to;
    for (std::size_t h = 0; h < edges.size(); ++h) {
        const std::chrono::hours shown{h};
        edges[h] =
            plain ? day.from + shown : std::min(zones.clock_window(day, shown, shown).from, day.to);
    }
    edges[0] = day.from;
    edges[24] = day.to;
    return edges;
}

// One day's part of what was seen by the hour: each reading's time goes to the hours it lies in.
void add_hours(Fitness& fitness, const CivilDay& day, const TraceView& view,
               const ZoneHistory& zones, std::span<const Interval> not_worn) {
    const std::array<Instant, 25> edges = hours_of(day, zones);
    const TraceView of_day = cut(view, day.interval());
    std::array<seconds, 24> seen{};
    std::size_t hour = 0;
    for_each_standing(of_day, [&](const Reading& reading, seconds stood) {
        Instant from = std::max(reading.at, of_day.from);
        const Instant to = from + stood;
        while (from < to) {
            while (edges[hour + 1] <= from) {
                ++hour;
            }
            const Instant end = std::min(to, edges[hour + 1]);
            seen[hour] += end - from;
            from = end;
        }
    });
    std::array<bool, 24> any{};
    hour = 0;
    for (const Reading& reading : readings_within(of_day)) {
        while (edges[hour + 1] <= reading.at) {
            ++hour;
        }
        any[hour] = true;
    }
    seconds sensed_of_day{0};
    for (std::size_t h = 0; h < seen.size(); ++h) {
        const Interval possible = intersection({edges[h], edges[h + 1]}, view.window());
        Fitness::Hour& of_clock = fitness.by_hour[h];
        of_clock.possible += possible.length() - not_worn_within(not_worn, possible);
        of_clock.sensed += seen[h];
        of_clock.days_with_readings += any[h] ? 1 : 0;
        sensed_of_day += seen[h];
    }
    fitness.sensed += sensed_of_day;
    fitness.valid_days += share(sensed_of_day, day.length()) >= consensus_share ? 1 : 0;
}

std::string days_words(int days) {
    return std::to_string(days) + (days == 1 ? " day" : " days");
}

struct Need {
    Settles kind;
    int valid_days;  // days with at least 70 % of their readings
    const char* what;
    const char* if_not;
    const char* by_interval;             // how to read it then, where days suffice for an interval
    const char* what_in_mmol = nullptr;  // where the words name an edge
};

// 14 days at 70 % are ten valid days (Danne et al. 2017: "10 of 14 days"); sources at
// sufficiency_of.
constexpr Need needs[] = {
    {Settles::mean_and_bands, 10, "Average and hours in range",
     "below the 14 days with 70 % of readings that the consensus asks for",
     "read them with their intervals"},
    {Settles::tight_range, 10, "Hours between 70 and 140 mg/dL (3.9 and 7.8 mmol/L)",
     "needs about 10 days", "read with its interval",
     "Hours between 3.9 and 7.8 mmol/L (70 and 140 mg/dL)"},
    {Settles::lows, 21, "How often lows come",
     "not settled, needs about 21 days or more; each low that was seen is still shown", nullptr},
    {Settles::spread, 21, "How much glucose varies", "not settled, needs about 21 days or more",
     "shown with its interval"},
};

Sufficiency judged(const Need& need, const Fitness& fitness, GlucoseUnit unit) {
    Sufficiency result{need.kind, false, fitness.valid_days, need.valid_days, {}};
    result.enough =
        fitness.active_percent() >= 100 * consensus_share && fitness.valid_days >= need.valid_days;
    const std::string seen = days_words(fitness.valid_days) + " with at least 70 % of readings";
    const bool mmol = unit == GlucoseUnit::mmol_per_l && need.what_in_mmol != nullptr;
    std::string if_not = need.if_not;
    if (need.by_interval != nullptr) {
        if_not += std::string("; ") + (fitness.valid_days < days_for_an_interval
                                           ? "too few days for an interval"
                                           : need.by_interval);
    }
    result.sentence =
        std::string(mmol ? need.what_in_mmol : need.what) + ": " +
        (result.enough ? "enough to read, from " + seen + "." : if_not + " (here " + seen + ").");
    return result;
}

}  // namespace

double Fitness::active_percent() const {
    return 100.0 * share(sensed, possible);
}

std::vector<int> Fitness::hours_seen_on_fewer_than(int wanted) const {
    std::vector<int> hours;
    for (std::size_t h = 0; h < by_hour.size(); ++h) {
        if (by_hour[h].days_with_readings < wanted) {
            hours.push_back(static_cast<int>(h));
        }
    }
    return hours;
}

std::vector<CivilDay> days_of(const TraceView& view, const ZoneHistory& zones,
                              std::span<const Interval> not_worn) {
    std::vector<CivilDay> days = zones.days(view.window());
    const auto within = readings_within(view);
    if (days.size() > 1 && !within.empty()) {
        const Reading& last = within.back();
        const bool only_standing =
            last.at < days.back().from && last.at + last.interval() >= view.to;
        if (only_standing) {
            days.pop_back();
        }
    }
    std::erase_if(days, [&](const CivilDay& day) {
        return not_worn_within(not_worn, day.interval()) == day.length();
    });
    return days;
}

Fitness fitness_of(const TraceView& view, const ZoneHistory& zones, std::string denominator,
                   std::span<const Interval> not_worn) {
    Fitness fitness;
    fitness.denominator = std::move(denominator);
    fitness.possible = view.window().length() - not_worn_within(not_worn, view.window());
    fitness.days = static_cast<int>(days_of(view, zones, not_worn).size());
    for (const CivilDay& day : zones.days(view.window())) {
        add_hours(fitness, day, view, zones, not_worn);
    }
    fitness.longest_gap = longest_gap_of(view, not_worn);
    return fitness;
}

std::vector<Sufficiency> sufficiency_of(const Fitness& fitness, GlucoseUnit unit) {
    std::vector<Sufficiency> answers;
    for (const Need& need : needs) {
        answers.push_back(judged(need, fitness, unit));
    }
    return answers;
}

}  // namespace tracewright
