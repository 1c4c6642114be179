#include "responses/meal_response.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr double longest_gap_minutes = 20;
constexpr double full_window_minutes = 180;
constexpr double next_meal_over_g = 10;
constexpr double rest_mg_per_dl_a_minute = 1;

double mg(const Reading& reading) {
    return reading.value().in(GlucoseUnit::mg_per_dl);
}

double minutes_from(Instant from, Instant at) {
    return static_cast<double>((at - from).count()) / 60;
}

std::span<const Reading> between(const TraceView& trace, Instant from, Instant to) {
    const auto earlier = [](const Reading& reading, Instant at) { return reading.at < at; };
    const auto first =
        std::lower_bound(trace.readings.begin(), trace.readings.end(), from, earlier);
    const auto last = std::lower_bound(first, trace.readings.end(), to, earlier);
    return {first, last};
}

double median_level(std::span<const Reading> readings) {
    std::vector<double> levels;
    for (const Reading& reading : readings) {
        levels.push_back(mg(reading));
    }
    std::sort(levels.begin(), levels.end());
    const std::size_t half = levels.size() / 2;
    return levels.size() % 2 == 1 ? levels[half] : (levels[half - 1] + levels[half]) / 2;
}

// The level at a minute by the line between its neighbours; empty beyond the curve.
std::optional<double> level_at(std::span<const CurvePoint> curve, double minutes) {
    for (std::size_t i = 1; i < curve.size(); ++i) {
        if (curve[i - 1].minutes <= minutes && minutes <= curve[i].minutes) {
            const double share =
                (minutes - curve[i - 1].minutes) / (curve[i].minutes - curve[i - 1].minutes);
            return curve[i - 1].level + share * (curve[i].level - curve[i - 1].level);
        }
    }
    return std::nullopt;
}

std::optional<double> area_to(std::span<const CurvePoint> curve, double baseline, double minutes) {
    const auto end = level_at(curve, minutes);
    if (!end) {
        return std::nullopt;
    }
    std::vector<CurvePoint> part;
    for (const CurvePoint& point : curve) {
        if (point.minutes < minutes) {
            part.push_back(point);
        }
    }
    part.push_back({minutes, *end});
    return incremental_area(part, baseline);
}

bool at_rest(const EatingOccasion& occasion, const TraceView& trace) {
    const auto before = between(trace, occasion.at - 30min, occasion.at + 1s);
    if (before.size() < 2) {
        return true;  // not seen to move
    }
    const double minutes = minutes_from(before.front().at, before.back().at);
    return std::abs(mg(before.back()) - mg(before.front())) <= rest_mg_per_dl_a_minute * minutes;
}

bool cuts_short(const EatingOccasion* next) {
    return next != nullptr && !(next->carbohydrate_g && *next->carbohydrate_g <= next_meal_over_g);
}

MealResponse not_readable(std::string why) {
    MealResponse response;
    response.not_readable = std::move(why);
    return response;
}

// Why the readings of the window can't tell; empty if they can.
std::string gap_in(std::span<const CurvePoint> curve, double window) {
    for (std::size_t i = 1; i < curve.size(); ++i) {
        if (curve[i].minutes - curve[i - 1].minutes > longest_gap_minutes) {
            return "a gap of more than 20 minutes after the first bite";
        }
    }
    if (curve.back().minutes < std::min(window, 60.0) - longest_gap_minutes) {
        return "the sensor was not seen for an hour after the first bite";
    }
    return {};
}

}  // namespace

MealResponse response_of_curve(std::span<const CurvePoint> curve, double baseline) {
    MealResponse response;
    response.baseline = baseline;
    const auto top = std::max_element(
        curve.begin(), curve.end(),
        [](const CurvePoint& a, const CurvePoint& b) { return a.level < b.level; });
    response.peak = top->level;
    response.minutes_to_peak = top->minutes;
    response.rise = top->level - baseline;
    response.at_1h = level_at(curve, 60);
    response.at_2h = level_at(curve, 120);
    response.area_2h = area_to(curve, baseline, 120);
    response.area_3h = area_to(curve, baseline, 180);
    for (auto at = top; at != curve.end() && response.rise > 0; ++at) {
        if (at->level <= baseline) {
            response.back_to_start_minutes = at->minutes;
            break;
        }
    }
    response.window_minutes = curve.back().minutes;
    return response;
}

MealResponse meal_response(const EatingOccasion& occasion, const EatingOccasion* next,
                           const TraceView& trace) {
    if (occasion.time_uncertain) {
        return not_readable("the time was not written or not certain");
    }
    const auto before = between(trace, occasion.at - 15min, occasion.at + 1s);
    if (before.empty()) {
        return not_readable("no reading in the 15 minutes before the first bite");
    }
    double window = full_window_minutes;
    const bool cut = cuts_short(next) && next->at - occasion.at < 180min;
    if (cut) {
        window = minutes_from(occasion.at, next->at);
    }
    const double baseline = median_level(before);
    std::vector<CurvePoint> curve{{0, baseline}};
    const Instant to = occasion.at + std::chrono::seconds{std::lround(window * 60)} + 20min;
    bool beyond = false;
    for (const Reading& reading : between(trace, occasion.at + 1s, to)) {
        const double minutes = minutes_from(occasion.at, reading.at);
        if (reading.implausible()) {
            continue;
        }
        if (minutes > window && curve.back().minutes >= window) {
            break;  // one reading beyond the window, for the line to its end
        }
        curve.push_back({minutes, mg(reading)});
        beyond = beyond || reading.censored();
    }
    if (const std::string why = gap_in(curve, window); !why.empty()) {
        return not_readable(why);
    }
    const auto end = level_at(curve, window);
    std::erase_if(curve, [&](const CurvePoint& point) { return point.minutes > window; });
    if (end && curve.back().minutes < window) {
        curve.push_back({window, *end});
    }
    if (curve.size() < 2) {
        return not_readable("the next meal follows at once");
    }
    MealResponse response = response_of_curve(curve, baseline);
    response.window_minutes = window;
    response.cut_short = cut;
    response.not_at_rest = !at_rest(occasion, trace);
    response.beyond_limit = beyond;
    return response;
}

std::vector<MealResponse> meal_responses(std::span<const EatingOccasion> occasions,
                                         const TraceView& trace) {
    std::vector<MealResponse> responses;
    for (std::size_t i = 0; i < occasions.size(); ++i) {
        const EatingOccasion* next = i + 1 < occasions.size() ? &occasions[i + 1] : nullptr;
        responses.push_back(meal_response(occasions[i], next, trace));
    }
    return responses;
}

}  // namespace tracewright
