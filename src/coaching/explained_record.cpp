#include "coaching/explained_record.hpp"

#include "findings/wording.hpp"
#include "trace/suspect.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr double sensed_at_least = 0.9;

bool shares_time(const Interval& a, const Interval& b) {
    return intersection(a, b).length().count() > 0;
}

// By the edge of the unit it was reported in.
bool below_range(const Reading& reading) {
    return reading.hundredths() < (reading.unit() == GlucoseUnit::mg_per_dl ? 7000 : 390);
}

std::vector<Interval> suspect_or_first_day(const ReviewInput& input) {
    std::vector<Interval> stretches;
    for (const Wear& wear : input.wears) {
        stretches.push_back({wear.start, wear.start + 24h});
        for (const Mark& mark : suspect_stretches(wear, input.suspect)) {
            stretches.push_back(mark.stretch);
        }
    }
    return stretches;
}

double hours_from(Instant zero, Instant at) {
    return static_cast<double>((at - zero).count()) / 3600;
}

}  // namespace

ExplainedRecord::ExplainedRecord(const ReviewInput& input)
    : input_(input),
      trace_(counted_trace(input.wears, input.prefer_wear)),
      occasions_(eating_occasions(input.diary, input.zones)),
      responses_(meal_responses(occasions_, trace_.view())),
      not_shown_(suspect_or_first_day(input)) {}

bool ExplainedRecord::fit_to_show(Interval stretch) const {
    const auto within = [&](const Interval& other) { return shares_time(stretch, other); };
    if (trace_.readings.empty() ||
        (input_.window && intersection(*input_.window, stretch).length() < stretch.length()) ||
        std::any_of(not_shown_.begin(), not_shown_.end(), within)) {
        return false;
    }
    const TraceView part = cut(trace_.view(), stretch);
    const auto readings = readings_within(part);
    const bool odd = std::any_of(readings.begin(), readings.end(), [](const Reading& reading) {
        return reading.censored() || reading.implausible() || below_range(reading);
    });
    const auto seen = static_cast<double>(sensed(part).count());
    const bool unusual =
        std::any_of(input_.diary.begin(), input_.diary.end(), [&](const DiaryEntry& entry) {
            return (entry.kind == DiaryKind::illness || entry.kind == DiaryKind::alcohol) &&
                   entry.at >= stretch.from - 12h && entry.at < stretch.to;
        });
    return !odd && !unusual &&
           seen >= sensed_at_least * static_cast<double>(stretch.length().count());
}

bool ExplainedRecord::meal_can_be_shown(std::size_t occasion) const {
    const MealResponse& response = responses_[occasion];
    const EatingOccasion& eaten = occasions_[occasion];
    return response.not_readable.empty() && !response.cut_short && !response.not_at_rest &&
           !response.beyond_limit && !eaten.time_uncertain && response.rise > 0 &&
           fit_to_show({eaten.at - 30min, eaten.at + 3h});
}

IllustratedCurve ExplainedRecord::curve(Interval stretch, Instant zero, std::string label,
                                        IllustratedCurve::Look look) const {
    IllustratedCurve result{std::move(label), look, {}};
    const Reading* before = nullptr;
    for (const Reading& reading : readings_within(cut(trace_.view(), stretch))) {
        if (reading.implausible()) {
            continue;
        }
        if (before == nullptr || 2 * (reading.at - before->at) > 3 * before->interval()) {
            result.runs.emplace_back();
        }
        result.runs.back().push_back(
            {hours_from(zero, reading.at), reading.value().in(input_.unit)});
        before = &reading;
    }
    return result;
}

std::vector<IllustratedSpan> ExplainedRecord::spans(Interval stretch, Instant zero) const {
    std::vector<IllustratedSpan> result;
    for (const EatingOccasion& eaten : occasions_) {
        if (stretch.contains(eaten.at)) {
            const double at = hours_from(zero, eaten.at);
            result.push_back({at, at, name_of(eaten.slot)});
        }
    }
    for (const DiaryEntry& entry : input_.diary) {
        const Interval lasted{entry.at, std::max(entry.until.value_or(entry.at), entry.at + 1s)};
        const bool walked = entry.kind == DiaryKind::movement && !entry.text.empty();
        if (walked && shares_time(lasted, stretch)) {
            result.push_back({hours_from(zero, std::max(lasted.from, stretch.from)),
                              hours_from(zero, std::min(lasted.to, stretch.to)), "moved"});
        }
    }
    return result;
}

std::vector<IllustratedTick> ExplainedRecord::clock_ticks(Interval stretch, Instant zero,
                                                          int every) const {
    std::vector<IllustratedTick> ticks;
    WallClock clock(input_.zones);
    for (Instant at = std::chrono::ceil<std::chrono::minutes>(stretch.from); at <= stretch.to;
         at += 1min) {
        const auto since = clock.at(at) - std::chrono::floor<std::chrono::days>(clock.at(at));
        if (since % std::chrono::hours{every} == 0s) {
            ticks.push_back(
                {hours_from(zero, at), clock_time(clock.at(at), input_.zones.writing())});
        }
    }
    return ticks;
}

double ExplainedRecord::shown(double mg_per_dl) const {
    return converted(mg_per_dl, GlucoseUnit::mg_per_dl, input_.unit);
}

std::string ExplainedRecord::words(double mg_per_dl) const {
    return glucose_words(shown(mg_per_dl), input_.unit);
}

std::size_t nearest_the_median(std::span<const double> values) {
    std::vector<double> ordered(values.begin(), values.end());
    std::sort(ordered.begin(), ordered.end());
    const std::size_t half = ordered.size() / 2;
    const double median =
        ordered.size() % 2 == 1 ? ordered[half] : (ordered[half - 1] + ordered[half]) / 2;
    std::size_t nearest = 0;
    for (std::size_t i = 1; i < values.size(); ++i) {
        if (std::abs(values[i] - median) <= std::abs(values[nearest] - median)) {
            nearest = i;
        }
    }
    return nearest;
}

}  // namespace tracewright
