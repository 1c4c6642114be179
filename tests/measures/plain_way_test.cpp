// The measures summed over even runs, counted levels and runs of one class, against the same things
// said reading by reading: on traces with gaps, LOW and HIGH, implausible values, both units,
// levels between two whole ones, clock changes and travel.
#include "inference/weighted_quantile.hpp"
#include "measures/day_sums.hpp"
#include "measures/episodes.hpp"
#include "measures/level_terms.hpp"
#include "measures/mean_swing.hpp"
#include "measures/measure_set.hpp"
#include "measures/paired_differences.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <random>

namespace tracewright {
namespace {

using namespace testing;
using std::chrono::minutes;
using std::chrono::seconds;
using std::chrono::sys_days;
using std::chrono::year;

constexpr GlucoseUnit in_mg = GlucoseUnit::mg_per_dl;

struct Life {
    std::vector<Reading> readings;
    ZoneHistory zones{Zone::floating()};

    TraceView view() const {
        return {readings, readings.front().at, readings.back().at + readings.back().interval()};
    }
};

Reading any_reading(Instant at, int level, GlucoseUnit unit, seconds step, std::mt19937& draw) {
    const auto one_in = [&](unsigned n) { return draw() % n == 0; };
    const bool mg_dl = unit == in_mg;
    if (one_in(60)) {
        return {at, mg_dl ? mg(40) : mmol(2.2), step, Limit::below};
    }
    if (one_in(60)) {
        return {at, mg_dl ? mg(400) : mmol(22.2), step, Limit::above};
    }
    if (one_in(90)) {
        return {at, mg(12), step, Limit::none, true};
    }
    if (one_in(90)) {
        return {at, mg_dl ? mmol(5.5) : mg(99), step};
    }
    const std::int32_t between = one_in(90) ? 5 : 0;  // a hundredth of no whole level
    return {at, Glucose{level * (mg_dl ? 100 : 10) + between, unit}, step};
}

// Mostly even; `plain`: nothing but gaps and LOW or HIGH in whole levels of one unit.
Life any_life(bool plain) {
    std::mt19937 draw(*rc::gen::arbitrary<unsigned>());
    Life life;
    const Instant starts[] = {sys_days{year{2026} / 3 / 27}, sys_days{year{2025} / 10 / 24},
                              sys_days{year{2026} / 6 / 1}};
    const Instant start = starts[draw() % 3] + minutes{draw() % 3000};
    const auto place = draw() % 3;
    if (place > 0) {
        life.zones = ZoneHistory{*Zone::named("Europe/Berlin")};
    }
    if (place > 1) {
        life.zones.change(start + minutes{1000 + draw() % 2000}, *Zone::named("America/New_York"));
    }
    const minutes step{std::array{1, 5, 15}[draw() % 3]};
    const GlucoseUnit unit = draw() % 2 == 0 ? in_mg : GlucoseUnit::mmol_per_l;
    const int count = *rc::gen::inRange(2, 1500);
    int level = unit == in_mg ? 130 : 75;
    Instant at = start;
    for (int i = 0; i < count; ++i) {
        level =
            std::clamp(level + static_cast<int>(draw() % 31) - 15, 25, unit == in_mg ? 380 : 300);
        life.readings.push_back(
            plain ? Reading{at, Glucose{level * (unit == in_mg ? 100 : 10), unit}, step,
                            draw() % 50 == 0 ? (level < 100 ? Limit::below : Limit::above)
                                             : Limit::none}
                  : any_reading(at, level, unit, step, draw));
        at += step;
        if (draw() % 70 == 0) {
            at += step * static_cast<int>(draw() % 40);
        }
        if (!plain && draw() % 70 == 0) {
            at += seconds{draw() % 200};
        }
    }
    return life;
}

bool near(double a, double b) {
    return std::abs(a - b) <= 1e-12 * std::max({1.0, std::abs(a), std::abs(b)});
}

// Sums of one day, reading by reading.
DayOfTrace plain_levels(const CivilDay& of, const TraceView& view) {
    DayOfTrace day;
    day.part = of.interval();
    day.view = cut(view, day.part);
    for_each_standing(day.view, [&](const Reading& reading, seconds stood) {
        const auto time = static_cast<double>(stood.count());
        const auto unit = static_cast<std::size_t>(reading.unit());
        const double level = reading.hundredths();
        GlucoseSums& sums = day.sums;
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
        if (day.part.contains(reading.at)) {
            day.low_risk_max = std::max(day.low_risk_max, terms.risk.low);
            day.high_risk_max = std::max(day.high_risk_max, terms.risk.high);
        }
    });
    return day;
}

void add_plain_steps(GlucoseSums& sums, const TraceView& view, Interval part) {
    for (std::size_t i = 1; i < view.readings.size(); ++i) {
        const Reading& before = view.readings[i - 1];
        const Reading& reading = view.readings[i];
        const seconds apart = reading.at - before.at;
        if (!part.contains(reading.at) || 2 * apart > 3 * before.interval() ||
            before.implausible() || reading.implausible()) {
            continue;
        }
        const double change = reading.value().in(in_mg)-before.value().in(in_mg);
        sums.change += std::abs(change);
        sums.path += std::hypot(static_cast<double>(apart.count()) / 60, change);
        sums.step_seconds += static_cast<double>(apart.count());
    }
}

void add_plain_pairs(GlucoseSums& sums, const TraceView& view, const ZoneHistory& zones,
                     Interval part) {
    for (const PairedDifference& pair : differences_to_day_before(view, zones)) {
        sums.day_before += part.contains(pair.at) ? std::abs(pair.mg_per_dl) : 0;
        sums.day_before_pairs += part.contains(pair.at) ? 1 : 0;
    }
    for (std::size_t i = 0; i < 3; ++i) {
        for (const PairedDifference& pair : differences_after(view, std::chrono::hours{1 << i})) {
            if (part.contains(pair.at)) {
                sums.hourly[i] += pair.mg_per_dl;
                sums.hourly_squared[i] += pair.mg_per_dl * pair.mg_per_dl;
                sums.hourly_pairs[i] += 1;
            }
        }
    }
}

void expect_the_same(const GlucoseSums& quick, const GlucoseSums& plain) {
    RC_ASSERT(quick.readings == plain.readings);
    RC_ASSERT(quick.seconds == plain.seconds);
    RC_ASSERT(quick.unit_seconds == plain.unit_seconds);
    RC_ASSERT(quick.level == plain.level);
    RC_ASSERT(quick.level_squared == plain.level_squared);
    RC_ASSERT(quick.band_seconds == plain.band_seconds);
    RC_ASSERT(quick.tight_seconds == plain.tight_seconds);
    RC_ASSERT(quick.pregnancy_seconds == plain.pregnancy_seconds);
    RC_ASSERT(quick.censored_seconds == plain.censored_seconds);
    RC_ASSERT(near(quick.low_risk, plain.low_risk));
    RC_ASSERT(near(quick.high_risk, plain.high_risk));
    RC_ASSERT(near(quick.m_value, plain.m_value));
    RC_ASSERT(near(quick.change, plain.change));
    RC_ASSERT(near(quick.path, plain.path));
    RC_ASSERT(quick.step_seconds == plain.step_seconds);
    RC_ASSERT(near(quick.day_before, plain.day_before));
    RC_ASSERT(quick.day_before_pairs == plain.day_before_pairs);
    RC_ASSERT(quick.hourly_pairs == plain.hourly_pairs);
    for (std::size_t i = 0; i < 3; ++i) {
        RC_ASSERT(near(quick.hourly_squared[i], plain.hourly_squared[i]));
        // Differences of either sign cancel: the rounding is that of their sizes.
        RC_ASSERT(std::abs(quick.hourly[i] - plain.hourly[i]) <=
                  1e-12 * (1 + plain.hourly_squared[i] + plain.hourly_pairs[i]));
    }
}

}  // namespace

RC_GTEST_PROP(PlainWay, sums_of_days_agree_with_going_reading_by_reading, (bool plain)) {
    const Life life = any_life(plain);
    const TraceView view = life.view();
    const auto civil = life.zones.days(view.window());
    const auto days = days_of_trace(view, life.zones);
    RC_ASSERT(days.size() == civil.size());
    for (std::size_t d = 0; d < days.size(); ++d) {
        DayOfTrace day = plain_levels(civil[d], view);
        add_plain_steps(day.sums, view, day.part);
        add_plain_pairs(day.sums, view, life.zones, day.part);
        expect_the_same(days[d].sums, day.sums);
        RC_ASSERT(days[d].low_risk_max == day.low_risk_max);
        RC_ASSERT(days[d].high_risk_max == day.high_risk_max);
    }
}

RC_GTEST_PROP(PlainWay, medians_agree_with_sorting_all_readings, (bool plain)) {
    const Life life = any_life(plain);
    const TraceView view = life.view();
    std::vector<Weighted> levels;
    std::vector<Weighted> grades;
    bool censored = false;
    for_each_standing(view, [&](const Reading& reading, seconds stood) {
        const auto time = static_cast<double>(stood.count());
        levels.push_back({reading.value().in(in_mg), time});
        grades.push_back({level_terms(reading.value()).grade, time});
        censored = censored || reading.censored();
    });
    RC_PRE(!levels.empty());
    const Measures measures = measures_of(view, life.zones, {in_mg, false, 1});
    const auto agrees = [&](const char* name, std::vector<Weighted>& values) {
        const Measure& measure = *find(measures, name);
        // With LOW or HIGH a value may be left open.
        return measure.value ? near(*measure.value, weighted_median(values)) : censored;
    };
    RC_ASSERT(agrees("median", levels));
    RC_ASSERT(agrees("grade", grades));
}

// Swings of which many are as large as one another.
RC_GTEST_PROP(PlainWay, swings_of_few_levels_agree_with_taking_the_smallest_out_one_by_one, ()) {
    const auto values = *rc::gen::container<std::vector<double>>(
        *rc::gen::inRange<std::size_t>(3, 40),
        rc::gen::map(rc::gen::inRange(0, 6), [](int level) { return 100 + 10.0 * level; }));
    const auto swing = mean_swing(values);
    std::vector<double> points;
    for (const double v : values) {
        const std::size_t n = points.size();
        if (n > 0 && points.back() == v) {
            continue;
        }
        if (n >= 2 && (points[n - 1] > points[n - 2]) == (v > points[n - 1])) {
            points.back() = v;
        } else {
            points.push_back(v);
        }
    }
    double mean = 0;
    for (const double v : values) {
        mean += v / static_cast<double>(values.size());
    }
    double squares = 0;
    for (const double v : values) {
        squares += (v - mean) * (v - mean);
    }
    const double sd = std::sqrt(squares / (static_cast<double>(values.size()) - 1));
    for (const double v : {10.0, 20.0, 30.0, 40.0, 50.0}) {
        RC_PRE(std::abs(sd - v) > 1e-9);  // a swing of one SD is decided by rounding
    }
    while (points.size() >= 2) {
        std::size_t least = 0;
        for (std::size_t i = 1; i + 1 < points.size(); ++i) {
            least =
                std::abs(points[i + 1] - points[i]) < std::abs(points[least + 1] - points[least])
                    ? i
                    : least;
        }
        if (std::abs(points[least + 1] - points[least]) > sd) {
            break;
        }
        const auto at = points.begin() + static_cast<std::ptrdiff_t>(least);
        if (least == 0) {
            points.erase(at);
        } else if (least + 2 == points.size()) {
            points.pop_back();
        } else {
            points.erase(at, at + 2);
        }
    }
    RC_ASSERT(swing.has_value() == (points.size() >= 2));
    double sums[2] = {0, 0};
    int counts[2] = {0, 0};
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const bool up = points[i + 1] > points[i];
        sums[up] += std::abs(points[i + 1] - points[i]);
        ++counts[up];
    }
    if (swing) {
        RC_ASSERT(swing->first_upward == (points[1] > points[0]));
        RC_ASSERT(swing->up.has_value() == (counts[1] > 0));
        RC_ASSERT(near(swing->up.value_or(0), counts[1] > 0 ? sums[1] / counts[1] : 0));
        RC_ASSERT(near(swing->down.value_or(0), counts[0] > 0 ? sums[0] / counts[0] : 0));
    }
}

namespace {

// One kind of episode walked reading by reading.
struct PlainEpisodes {
    EpisodeKind kind;
    bool (*begins)(Band);
    bool (*goes_on)(const Reading&);
    seconds at_least;
    bool strictly;
    bool lower;

    std::vector<Episode> found{};
    Episode candidate{};
    seconds run{0};
    seconds recovery{0};
    bool running = false;
    int readings = 0;

    void close(bool unseen) {
        if (running) {
            candidate.end_not_seen = unseen;
            candidate.single_reading = readings == 1;
            found.push_back(candidate);
        }
        running = false;
        recovery = seconds{0};
    }

    double farness(const Reading& r) const {
        const double level = r.value().in(in_mg);
        const bool beyond = r.limit() == (lower ? Limit::below : Limit::above);
        return (lower ? -level : level) + (beyond ? 1e6 : 0);
    }

    void walk(const TraceView& view) {
        const Reading* before = nullptr;
        for_each_standing(view, [&](const Reading& r, seconds stood) {
            const bool silence =
                before == nullptr ||
                r.at - before->at >= std::max(3 * before->interval(), seconds{minutes{20}});
            if (silence) {
                close(true);
                run = seconds{0};
            }
            step(r, stood, silence);
            before = &r;
        });
        close(true);
    }

    void step(const Reading& r, seconds stood, bool silence) {
        if (begins(band_of(r))) {
            if (!running && run.count() == 0) {
                candidate = Episode{kind, r.at, r.at, seconds{0}, r, silence, false, false};
                readings = 0;
            }
            candidate.lasted += recovery + stood;
            recovery = seconds{0};
            run += stood;
            ++readings;
            candidate.to = r.at + stood;
            candidate.extreme = farness(r) > farness(candidate.extreme) ? r : candidate.extreme;
            running = running || (strictly ? run > at_least : run >= at_least);
        } else if (goes_on(r)) {
            if (running) {
                candidate.lasted += recovery + stood;
                recovery = seconds{0};
                candidate.to = r.at + stood;
            }
            run = seconds{0};
        } else {
            run = seconds{0};
            recovery += running ? stood : seconds{0};
            if (recovery >= minutes{15}) {
                close(false);
            }
        }
    }
};

bool same_episode(const Episode& a, const Episode& b) {
    return a.kind == b.kind && a.from == b.from && a.to == b.to && a.lasted == b.lasted &&
           a.extreme == b.extreme && a.start_not_seen == b.start_not_seen &&
           a.end_not_seen == b.end_not_seen && a.single_reading == b.single_reading;
}

}  // namespace

RC_GTEST_PROP(PlainWay, episodes_agree_with_going_reading_by_reading, (bool plain, bool of_2017)) {
    const Life life = any_life(plain);
    const TraceView view = life.view();
    const auto low = [](Band b) { return b <= Band::low; };
    const auto very_low = [](Band b) { return b == Band::very_low; };
    const auto high = [](Band b) { return b >= Band::high; };
    const auto very_high = [](Band b) { return b == Band::very_high; };
    const auto never = [](const Reading&) { return false; };
    const auto to_seventy = [](const Reading& r) {
        return band_of(r) <= Band::low ||
               (!r.censored() && r.hundredths() <= (r.unit() == in_mg ? 7000 : 390));
    };
    std::vector<PlainEpisodes> kinds = {
        {EpisodeKind::low, low, never, minutes{15}, false, true},
        {EpisodeKind::very_low, very_low, never, minutes{15}, false, true},
        {EpisodeKind::extended_low, low, never, minutes{120}, true, true},
        {EpisodeKind::high, high, never, minutes{15}, false, false},
        {EpisodeKind::very_high, very_high, never, minutes{15}, false, false},
    };
    if (of_2017) {
        kinds[1].goes_on = to_seventy;
    }
    std::vector<Episode> expected;
    for (PlainEpisodes& kind : kinds) {
        kind.walk(view);
        expected.insert(expected.end(), kind.found.begin(), kind.found.end());
    }
    auto found =
        episodes_of(view, of_2017 ? EpisodeRules::consensus_2017 : EpisodeRules::consensus_2023);
    std::erase_if(found, [](const Episode& e) { return e.kind == EpisodeKind::extended_high; });
    const auto by_kind = [](const Episode& a, const Episode& b) {
        return std::pair{a.kind, a.from} < std::pair{b.kind, b.from};
    };
    std::sort(found.begin(), found.end(), by_kind);
    std::sort(expected.begin(), expected.end(), by_kind);
    RC_ASSERT(found.size() == expected.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        RC_ASSERT(same_episode(found[i], expected[i]));
    }
}

}  // namespace tracewright
