#pragma once

#include "diary/diary_entry.hpp"
#include "trace/counted_trace.hpp"

#include <chrono>
#include <functional>
#include <string>
#include <vector>

namespace tracewright::testing {

using namespace std::chrono_literals;

/// Monday 2 March 2026, 00:00 UTC: day 0 of made-up lives on a floating clock.
inline Instant day_zero() {
    return std::chrono::sys_days{std::chrono::year{2026} / 3 / 2};
}
inline Instant moment(int day, int hour, int minute = 0) {
    return day_zero() + std::chrono::days{day} + std::chrono::hours{hour} +
           std::chrono::minutes{minute};
}

inline DiaryEntry entry(DiaryKind kind, Instant at, std::string text = "") {
    DiaryEntry made;
    made.kind = kind;
    made.at = at;
    made.written = WallTime{at.time_since_epoch()};
    made.text = std::move(text);
    return made;
}
inline DiaryEntry meal(Instant at, std::string text, double carbohydrate_g) {
    DiaryEntry made = entry(DiaryKind::meal, at, std::move(text));
    made.carbohydrate_g = Amount{carbohydrate_g, 0, false};
    return made;
}
inline DiaryEntry slept(Instant from, Instant to) {
    DiaryEntry made = entry(DiaryKind::sleep, from);
    made.until = to;
    return made;
}
inline DiaryEntry prick(Instant at, double mg_per_dl) {
    DiaryEntry made = entry(DiaryKind::finger_prick, at);
    made.glucose = Glucose{rounded_hundredths(mg_per_dl), GlucoseUnit::mg_per_dl};
    return made;
}

/// One wear of `level(moment)` in mg/dL every `step` from `from` to `to`.
inline Wear drawn_wear(Instant from, Instant to, std::chrono::minutes step,
                       const std::function<double(Instant)>& level) {
    Wear wear;
    wear.label = "wear 1";
    wear.start = from;
    wear.interval = step;
    for (Instant at = from; at < to; at += step) {
        wear.readings.emplace_back(
            at, Glucose{rounded_hundredths(level(at)), GlucoseUnit::mg_per_dl}, step);
    }
    return wear;
}

inline CountedTrace drawn_trace(Instant from, Instant to, std::chrono::minutes step,
                                const std::function<double(Instant)>& level) {
    const std::vector<Wear> wears{drawn_wear(from, to, step, level)};
    return counted_trace(wears);
}

inline double minutes_since(Instant from, Instant at) {
    return static_cast<double>((at - from).count()) / 60;
}

}  // namespace tracewright::testing
