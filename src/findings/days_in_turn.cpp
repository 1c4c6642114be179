#include "findings/days_in_turn.hpp"

#include "findings/driver_fit.hpp"
#include "findings/question_words.hpp"
#include "findings/wording.hpp"
#include "measures/day_sums.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tracewright {

namespace {

constexpr double days_in_a_week = 7;
constexpr double worth_mg_per_dl = 5.4;

DriverRows rows_of(const CountedTrace& trace, const ZoneHistory& zones) {
    DriverRows rows;
    rows.drivers = 1;
    for (const DayOfTrace& day : days_of_trace(cut(trace.view(), trace.window), zones)) {
        if (day.valid) {
            const int number = static_cast<int>(day.date.time_since_epoch().count());
            rows.y.push_back(day.sums.mean(GlucoseUnit::mg_per_dl));
            rows.x.push_back(number);
            rows.wear.push_back(trace.wear_at(day.part.from + day.part.length() / 2));
            rows.day.push_back(number);
        }
    }
    return rows;
}

}  // namespace

std::optional<Caveat> days_in_turn(const CountedTrace& trace, const ZoneHistory& zones,
                                   GlucoseUnit unit) {
    if (trace.readings.empty()) {
        return std::nullopt;
    }
    const ValueError error = value_error_of(OutcomeUnit::glucose);
    const DriverFit fit = driver_fit(rows_of(trace, zones), {{days_in_a_week, false}},
                                     worth_mg_per_dl, 0, {error.least_sd, error.share});
    if (fit.drivers.empty() || fit.drivers.front().answer != Answer::yes) {
        return std::nullopt;
    }
    const DriverResult& week = fit.drivers.front();
    const auto level = [&](double mg_per_dl) {
        return glucose_words(converted(std::abs(mg_per_dl), GlucoseUnit::mg_per_dl, unit), unit);
    };
    const bool rises = week.effect > 0;
    const std::size_t least = rises ? 0 : 1;
    return Caveat{
        CaveatKind::days_in_turn,
        fmt::format(
            "The days were not alike: later ones lie {}, along a line by about {} a week ({}), and "
            "one average mixes them. A change of habit or medicine, illness and a sensor that "
            "drifts look alike here; finger-pricks early and late in a wear tell of the sensor.",
            rises ? "higher" : "lower", level(week.effect),
            between_words(level(week.interval95.at(least)), level(week.interval95.at(1 - least))))};
}

}  // namespace tracewright
