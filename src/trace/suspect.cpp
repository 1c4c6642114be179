#include "trace/suspect.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <iterator>
#include <string>
#include <vector>

namespace tracewright {

namespace {

using std::chrono::seconds;

// 5 mg/dL a minute between readings is suspect: Glucose Monitoring Devices 2020, ch. 11. Over five
// minutes at least, since a step of one minute is mostly noise (ours).
constexpr double impossible_mg_per_dl_a_minute = 5.0;
constexpr seconds rate_span = std::chrono::minutes{5};

// Ours, no source.
constexpr seconds stuck_for = std::chrono::hours{3};
constexpr std::size_t stuck_readings = 12;

// The last day is compared with the days before it; a shorter wear has no days before. Ours.
constexpr seconds last_day = std::chrono::hours{24};
constexpr seconds shortest_judged_wear = std::chrono::days{5};
constexpr double failing_roughness = 2.5;
constexpr double failing_share = 0.5;
constexpr double healthy_share = 0.9;

void add(std::vector<Mark>& marks, MarkReason reason, Interval stretch, std::string seen) {
    if (!marks.empty() && marks.back().reason == reason &&
        marks.back().stretch.to >= stretch.from) {
        marks.back().stretch.to = std::max(marks.back().stretch.to, stretch.to);
        return;
    }
    marks.push_back({reason, stretch, std::move(seen)});
}

std::vector<Mark> implausible_values(const Wear& wear) {
    std::vector<Mark> marks;
    for (const Reading& reading : wear.readings) {
        if (reading.implausible()) {
            add(marks, MarkReason::implausible, {reading.at, reading.at + reading.interval()},
                "a value outside 20 to 600 mg/dL (1.1 to 33.3 mmol/L)");
        }
    }
    return marks;
}

// Not even over the shortest time an impossible rate: 25 mg/dL, 1.388 mmol/L.
bool too_small_for_any_time(const Reading& reading, const Reading& before) {
    const std::int32_t change = std::abs(reading.hundredths() - before.hundredths());
    return reading.unit() == before.unit() &&
           change <= (reading.unit() == GlucoseUnit::mg_per_dl ? 2500 : 138);
}

std::vector<Mark> impossible_rates(const Wear& wear) {
    std::vector<Mark> marks;
    const auto& readings = wear.readings;
    std::size_t back = 0;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        while (back + 1 < i && readings[i].at - readings[back + 1].at >= rate_span) {
            ++back;
        }
        const Reading& before =
            readings[readings[i].at - readings[i - 1].at >= rate_span ? i - 1 : back];
        if (too_small_for_any_time(readings[i], before)) {
            continue;
        }
        const seconds apart = readings[i].at - before.at;
        const bool silent_between = 2 * apart > 3 * std::max(readings[i].interval(), rate_span);
        if (apart < rate_span || silent_between || before.censored() || readings[i].censored()) {
            continue;
        }
        const double change = readings[i].value().in(GlucoseUnit::mg_per_dl)-before.value().in(
            GlucoseUnit::mg_per_dl);
        const double minutes = static_cast<double>(apart.count()) / 60.0;
        if (std::abs(change) > impossible_mg_per_dl_a_minute * minutes) {
            add(marks, MarkReason::impossible_rate,
                {before.at, readings[i].at + readings[i].interval()},
                change > 0 ? "a rise faster than 5 mg/dL (0.28 mmol/L) a minute"
                           : "a fall faster than 5 mg/dL (0.28 mmol/L) a minute");
        }
    }
    return marks;
}

std::vector<Mark> stuck_values(const Wear& wear) {
    std::vector<Mark> marks;
    const auto& readings = wear.readings;
    std::size_t begin = 0;
    for (std::size_t i = 1; i <= readings.size(); ++i) {
        const bool same =
            i < readings.size() && readings[i].value() == readings[begin].value() &&
            2 * (readings[i].at - readings[i - 1].at) <= 3 * readings[i - 1].interval();
        if (same) {
            continue;
        }
        const Interval stretch{readings[begin].at, readings[i - 1].at + readings[i - 1].interval()};
        if (!readings[begin].censored() && i - begin >= stuck_readings &&
            stretch.length() >= stuck_for) {
            add(marks, MarkReason::stuck, stretch,
                "the same value " + std::to_string(i - begin) + " times in a row");
        }
        begin = i;
    }
    return marks;
}

// Median absolute second difference in hundredths: how rough a stretch is, whatever its level and
// trend. Counted rather than sorted: they are small whole numbers.
std::int64_t roughness(std::span<const Reading> readings) {
    constexpr std::size_t counted = 10'001;
    std::vector<std::uint32_t> times(counted);
    std::vector<std::int64_t> larger;
    std::size_t turns = 0;
    for (std::size_t i = 2; i < readings.size(); ++i) {
        if (readings[i].at - readings[i - 2].at <= 3 * readings[i].interval()) {
            const std::int64_t turn = std::abs(std::int64_t{readings[i].hundredths()} -
                                               2 * std::int64_t{readings[i - 1].hundredths()} +
                                               readings[i - 2].hundredths());
            ++turns;
            if (static_cast<std::size_t>(turn) < counted) {
                ++times[static_cast<std::size_t>(turn)];
            } else {
                larger.push_back(turn);
            }
        }
    }
    std::size_t middle = turns / 2;
    for (std::size_t turn = 0; turn < counted; ++turn) {
        if (middle < times[turn]) {
            return static_cast<std::int64_t>(turn);
        }
        middle -= times[turn];
    }
    if (larger.empty()) {
        return 0;
    }
    const auto at = larger.begin() + static_cast<std::ptrdiff_t>(middle);
    std::nth_element(larger.begin(), at, larger.end());
    return *at;
}

double share_sensed(const TraceView& view) {
    return static_cast<double>(sensed(view).count()) /
           static_cast<double>(view.window().length().count());
}

std::vector<Mark> failing_last_day(const Wear& wear) {
    const Interval span = wear.sensed_span();
    if (span.length() < shortest_judged_wear) {
        return {};
    }
    const TraceView last = cut(wear.view(), {span.to - last_day, span.to});
    const TraceView before = cut(wear.view(), {span.from, span.to - last_day});
    const auto usual = static_cast<double>(roughness(readings_within(before)));
    const auto now = static_cast<double>(roughness(readings_within(last)));
    if (usual > 0 && now > failing_roughness * usual) {
        return {{MarkReason::failing_last_day, last.window(),
                 "readings jump about more than on the days before"}};
    }
    if (share_sensed(last) < failing_share && share_sensed(before) >= healthy_share) {
        return {{MarkReason::failing_last_day, last.window(),
                 "most of the day's readings are missing, unlike the days before"}};
    }
    return {};
}

void add_what_was_told(const Wear& wear, const SuspectRules& rules, std::vector<Mark>& marks) {
    for (const ToldStretch& one : rules.told) {
        const Interval shared = intersection(one.stretch, wear.sensed_span());
        if (one.suspect && shared.length() > seconds{0}) {
            marks.push_back({MarkReason::told, shared, "by the coach's word, not by the readings"});
        }
        if (!one.suspect) {
            std::erase_if(marks, [&](const Mark& mark) {
                return mark.reason != MarkReason::told && mark.reason != MarkReason::implausible &&
                       mark.stretch == one.stretch;
            });
        }
    }
}

}  // namespace

std::vector<Mark> suspect_stretches(const Wear& wear, const SuspectRules& rules) {
    std::vector<Mark> marks;
    if (wear.empty()) {
        return marks;
    }
    marks.push_back({MarkReason::warm_up,
                     {wear.start, wear.start + rules.warm_up},
                     "the first " + std::to_string(rules.warm_up / std::chrono::minutes{1}) +
                         " minutes of the wear"});
    for (auto&& found : {implausible_values(wear), impossible_rates(wear), stuck_values(wear),
                         failing_last_day(wear)}) {
        marks.insert(marks.end(), found.begin(), found.end());
    }
    add_what_was_told(wear, rules, marks);
    std::stable_sort(marks.begin(), marks.end(),
                     [](const Mark& a, const Mark& b) { return a.stretch.from < b.stretch.from; });
    return marks;
}

}  // namespace tracewright
