// Second, naive ways for what the measures do cleverly, on traces with gaps, mixed intervals, mixed
// units, LOW, HIGH and implausible readings; and what must hold of every measure of every trace.
#include "measures/episodes.hpp"
#include "measures/mean_swing.hpp"
#include "measures/measure_set.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>
#include <numeric>
#include <set>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using std::chrono::minutes;

namespace {

const ZoneHistory floating{Zone::floating()};

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

Reading any_reading(Instant at) {
    const auto interval = minutes{*rc::gen::element(1, 5, 15)};
    const int kind = *rc::gen::inRange(0, 20);
    if (kind == 0) {
        return {at, mg(40), interval, Limit::below};
    }
    if (kind == 1) {
        return {at, mg(400), interval, Limit::above};
    }
    if (kind == 2) {
        return {at, mg(12), interval, Limit::none, true};
    }
    if (kind < 6) {
        return {at, mmol(*rc::gen::inRange(22, 222) / 10.0), interval};
    }
    return {at, mg(*rc::gen::inRange(40, 401)), interval};
}

std::vector<Reading> any_trace(int most) {
    std::vector<Reading> readings;
    Instant at = midnight + minutes{*rc::gen::inRange(0, 30)};
    for (int i = *rc::gen::inRange(1, most); i > 0; --i) {
        readings.push_back(any_reading(at));
        at += minutes{*rc::gen::inRange(0, 12) == 0 ? *rc::gen::inRange(1, 400)
                                                    : *rc::gen::element(1, 5, 7, 8, 15)};
    }
    return readings;
}

// Which reading stands at each minute of the window: rule 3 said as a loop over minutes.
std::map<Instant, const Reading*> standing_by_minute(const std::vector<Reading>& readings,
                                                     Interval window) {
    std::map<Instant, const Reading*> standing;
    for (Instant at = window.from; at < window.to; at += 1min) {
        const Reading* last = nullptr;
        const Reading* next = nullptr;
        for (const Reading& reading : readings) {
            if (reading.at <= at) {
                last = &reading;
            } else {
                next = &reading;
                break;
            }
        }
        if (last == nullptr || last->implausible()) {
            continue;
        }
        const double interval = static_cast<double>(last->interval().count());
        const double until_next =
            next == nullptr ? 1e9 : static_cast<double>((next->at - last->at).count());
        const double stands = until_next <= 1.5 * interval ? until_next : interval;
        if (static_cast<double>((at - last->at).count()) < stands) {
            standing[at] = last;
        }
    }
    return standing;
}

Band naive_band(const Reading& r) {
    if (r.limit() != Limit::none) {
        return r.limit() == Limit::below ? Band::very_low : Band::very_high;
    }
    const double g = r.value().value();
    if (r.unit() == GlucoseUnit::mg_per_dl) {
        return g < 54     ? Band::very_low
               : g < 70   ? Band::low
               : g <= 180 ? Band::in_range
               : g <= 250 ? Band::high
                          : Band::very_high;
    }
    return g < 3       ? Band::very_low
           : g < 3.9   ? Band::low
           : g <= 10   ? Band::in_range
           : g <= 13.9 ? Band::high
                       : Band::very_high;
}

}  // namespace

RC_GTEST_PROP(SecondWay, time_in_bands_agrees_with_a_walk_over_minutes, ()) {
    const auto readings = any_trace(80);
    const TraceView all = view_of(readings);
    const Instant from = all.from + minutes{*rc::gen::inRange(0, 60)};
    const Instant to = from + minutes{*rc::gen::inRange(1, 600)};
    const TraceView part = cut(all, {from, to});
    std::array<std::chrono::seconds, 5> naive{};
    for (const auto& [at, reading] : standing_by_minute(readings, part.window())) {
        naive[static_cast<std::size_t>(naive_band(*reading))] += 60s;
    }
    RC_ASSERT(time_in_bands(part).seconds_in == naive);
}

RC_GTEST_PROP(SecondWay, every_measure_of_any_trace_is_finite_and_has_an_interval_of_some_width,
              ()) {
    std::vector<Reading> readings;
    const int days = *rc::gen::inRange(1, 9);
    const int kind = *rc::gen::inRange(0, 6);
    const auto offset = minutes{*rc::gen::inRange(0, 5)};
    for (Instant at = midnight + offset; at < midnight + std::chrono::days{days}; at += 15min) {
        const auto since = (at - midnight) / 15min;
        double level = 110;
        switch (kind) {
            case 0:
                break;
            case 1:
                level = since % 2 == 0 ? 60 : 200;
                break;
            case 2:
                level = since % 96 < 48 ? 100 : 260;
                break;
            case 3:
                level = *rc::gen::inRange(40, 400);
                break;
            case 4:
                level = 300;
                break;
            default:
                level = 45;
        }
        if (kind != 3 || *rc::gen::inRange(0, 10) > 0) {
            const bool below = kind == 3 && *rc::gen::inRange(0, 400) == 0;
            readings.emplace_back(at, mg(below ? 40 : level), 15min,
                                  below ? Limit::below : Limit::none);
        }
    }
    RC_PRE(!readings.empty());
    for (const Measure& m : measures_of(view_of(readings), floating, {})) {
        RC_LOG() << m.name << " kind " << kind << " days " << days << '\n';
        RC_ASSERT(m.value.has_value() == m.absent_because.empty());
        if (m.bounds && m.value) {
            RC_ASSERT((*m.bounds)[0] <= *m.value && *m.value <= (*m.bounds)[1]);
        }
        if (!m.value) {
            continue;
        }
        RC_ASSERT(std::isfinite(*m.value));
        RC_ASSERT(m.interval95.has_value() == m.no_interval_because.empty());
        if (!m.interval95) {
            continue;
        }
        const auto [low, high] = *m.interval95;
        RC_LOG() << low << " " << *m.value << " " << high << '\n';
        RC_ASSERT(std::isfinite(low) && std::isfinite(high));
        RC_ASSERT(high - low > 1e-9 * std::max(1.0, std::abs(*m.value)));
        RC_ASSERT(low <= *m.value + 1e-9);
        RC_ASSERT(high >= *m.value - 1e-9);
        if (m.unit == "%" && std::set<std::string_view>{"very_low", "low", "in_range", "high",
                                                        "very_high", "tight_range"}
                                 .contains(m.name)) {
            RC_ASSERT(low >= 0);
            RC_ASSERT(high <= 100);
        }
        if (m.name == "gri" || m.name == "lbgi" || m.name == "hbgi") {
            RC_ASSERT(low >= 0);
            RC_ASSERT(high <= 100);
        }
        if (m.name == "grade") {
            RC_ASSERT(high <= 50);
        }
    }
}

// Architecture rule 3: whole intervals and no gap equal counting, wherever midnight falls.
RC_GTEST_PROP(SecondWay, a_reading_that_stands_across_midnight_is_one_reading, ()) {
    const auto offset = minutes{*rc::gen::inRange(0, 15)};
    std::vector<double> values;
    const int n = 96 * *rc::gen::inRange(1, 5) + *rc::gen::inRange(0, 2);
    for (int i = 0; i < n; ++i) {
        values.push_back(*rc::gen::inRange(40, 401));
    }
    const auto readings = every(15min, values, midnight + offset);
    const Measures measures =
        measures_of(view_of(readings), floating, {GlucoseUnit::mg_per_dl, false, 1});
    std::sort(values.begin(), values.end());
    const auto half = values.size() / 2;
    const double median =
        values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    double squares = 0;
    for (const double v : values) {
        squares += (v - mean) * (v - mean);
    }
    RC_ASSERT(std::abs(*find(measures, "median")->value - median) < 1e-9);
    RC_ASSERT(std::abs(*find(measures, "sd")->value - std::sqrt(squares / (n - 1))) < 1e-9);
}

// Every stretch below 54 that is seen at all leads, unless readings on both sides show its end
// within 15 minutes (safety promise 2).
RC_GTEST_PROP(SecondWay, no_very_low_beside_unseen_time_is_passed_over, ()) {
    std::vector<Reading> readings;
    Instant at = midnight;
    for (int i = *rc::gen::inRange(1, 30); i > 0; --i) {
        readings.emplace_back(at, mg(*rc::gen::element(50, 52, 60, 100)), 5min);
        at += minutes{*rc::gen::element(5, 5, 5, 7, 8, 9, 12, 14, 20, 40, 120)};
    }
    const TraceView view = view_of(readings);
    std::vector<Episode> told = cut_short_very_lows(view);
    for (const Episode& e : episodes_of(view)) {
        if (e.kind == EpisodeKind::very_low) {
            told.push_back(e);
        }
    }
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto apart = [&](std::size_t j) { return readings[j].at - readings[j - 1].at; };
        const bool unseen_before = i == 0 || apart(i) > 7min + 30s;
        const bool unseen_after = i + 1 == readings.size() || apart(i + 1) > 7min + 30s;
        if (readings[i].hundredths() >= 5400 || !(unseen_before || unseen_after)) {
            continue;
        }
        RC_ASSERT(std::any_of(told.begin(), told.end(), [&](const Episode& e) {
            return e.from <= readings[i].at && readings[i].at < e.to;
        }));
    }
}

namespace {

// MAGE by its rule, said by recursion on the list of turning points.
std::vector<double> without_small(std::vector<double> points, double sd) {
    std::size_t least = points.size();
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const double size = std::abs(points[i + 1] - points[i]);
        if (size <= sd &&
            (least == points.size() || size < std::abs(points[least + 1] - points[least]))) {
            least = i;
        }
    }
    if (least == points.size()) {
        return points;
    }
    std::vector<double> fewer;
    const bool first = least == 0;
    const bool last = least + 2 == points.size();
    for (std::size_t i = 0; i < points.size(); ++i) {
        const bool goes = first  ? i == 0
                          : last ? i + 1 == points.size()
                                 : i == least || i == least + 1;
        if (!goes) {
            fewer.push_back(points[i]);
        }
    }
    return without_small(fewer, sd);
}

}  // namespace

RC_GTEST_PROP(SecondWay, mean_swing_agrees_with_its_rule_by_recursion, ()) {
    std::vector<double> values;
    for (int i = *rc::gen::inRange(3, 60); i > 0; --i) {
        values.push_back(*rc::gen::inRange(60, 250));
    }
    const double n = static_cast<double>(values.size());
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    double squares = 0;
    for (const double v : values) {
        squares += (v - mean) * (v - mean);
    }
    const double sd = std::sqrt(squares / (n - 1));
    std::vector<double> distinct;
    std::unique_copy(values.begin(), values.end(), std::back_inserter(distinct));
    std::vector<double> points;
    for (std::size_t i = 0; i < distinct.size(); ++i) {
        const bool end = i == 0 || i + 1 == distinct.size();
        if (end || (distinct[i] - distinct[i - 1]) * (distinct[i + 1] - distinct[i]) < 0) {
            points.push_back(distinct[i]);
        }
    }
    points = without_small(points, sd);
    const auto swing = mean_swing(values);
    RC_ASSERT(swing.has_value() == (points.size() >= 2));
    if (swing) {
        double sum = 0;
        int count = 0;
        for (std::size_t i = 0; i + 1 < points.size(); i += 2) {
            sum += std::abs(points[i + 1] - points[i]);
            ++count;
        }
        RC_ASSERT(std::abs(swing->first_direction - sum / count) < 1e-9);
    }
}

// MODD and CONGA by looking at every pair of readings.
RC_GTEST_PROP(SecondWay, pairs_agree_with_looking_at_every_pair, ()) {
    std::vector<Reading> readings;
    for (Instant at = midnight; at < midnight + std::chrono::days{3}; at += 15min) {
        if (*rc::gen::inRange(0, 6) > 0) {
            readings.emplace_back(at + minutes{*rc::gen::inRange(0, 15)},
                                  mg(*rc::gen::inRange(60, 300)), 15min);
        }
    }
    RC_PRE(readings.size() > 2);
    const auto differences = [&](std::chrono::seconds apart) {
        std::vector<double> found;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            const Reading* best = nullptr;
            for (std::size_t j = 0; j < i; ++j) {
                const auto miss = [&](const Reading& r) {
                    return std::chrono::abs(readings[i].at - r.at - apart);
                };
                if (2 * miss(readings[j]) <= 15min &&
                    (best == nullptr || miss(readings[j]) <= miss(*best))) {
                    best = &readings[j];
                }
            }
            if (best != nullptr) {
                found.push_back(readings[i].value().value() - best->value().value());
            }
        }
        return found;
    };
    const Measures measures =
        measures_of(view_of(readings), floating, {GlucoseUnit::mg_per_dl, false, 1});
    const auto day = differences(24h);
    double sum = 0;
    for (const double d : day) {
        sum += std::abs(d);
    }
    RC_ASSERT(find(measures, "modd")->value.has_value() == !day.empty());
    if (!day.empty()) {
        RC_ASSERT(std::abs(*find(measures, "modd")->value - sum / static_cast<double>(day.size())) <
                  1e-9);
    }
    const auto hour = differences(1h);
    if (hour.size() > 1) {
        const double n = static_cast<double>(hour.size());
        const double mean = std::accumulate(hour.begin(), hour.end(), 0.0) / n;
        double squares = 0;
        for (const double d : hour) {
            squares += (d - mean) * (d - mean);
        }
        RC_ASSERT(std::abs(*find(measures, "conga1")->value - std::sqrt(squares / (n - 1))) < 1e-6);
    }
}
