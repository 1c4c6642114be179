#include "findings/meal_report.hpp"

#include "findings/special_days.hpp"
#include "inference/student_t.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

bool worn_at(const CountedTrace& trace, Instant at) {
    const auto after = std::lower_bound(
        trace.readings.begin(), trace.readings.end(), at - 1h,
        [](const Reading& reading, Instant moment) { return reading.at < moment; });
    return after != trace.readings.end() && after->at <= at + 3h;
}

bool moved_after(const EatingOccasion& occasion, const Diary& diary) {
    return std::any_of(diary.begin(), diary.end(), [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::movement && entry.at >= occasion.at &&
               entry.at <= occasion.at + 90min;
    });
}

// A meal is told at its own usual portion: what it holds belongs to it.
FoodComparison foods_of(const MealReport& report, const ReviewInput& input) {
    // Known of every meal and by one definition: grams with and without fibre are not compared.
    const bool carbohydrate = std::all_of(
        report.occasions.begin(), report.occasions.end(), [&](const EatingOccasion& one) {
            return one.carbohydrate_g.has_value() &&
                   one.carbohydrate_basis == report.occasions.front().carbohydrate_basis;
        });
    std::vector<std::string> names = {"movement after"};
    if (carbohydrate) {
        names.emplace_back("portion (carbohydrate against the meal's own usual)");
    }
    std::map<std::string, std::pair<double, int>> usual;  // sum of carbohydrate, times
    for (const EatingOccasion& occasion : report.occasions) {
        auto& [sum, times] = usual[food_key(occasion.text())];
        sum += occasion.carbohydrate_g.value_or(0);
        ++times;
    }
    const std::set<CivilDate> unlike = special_dates(input.diary, input.zones);
    int left_out = 0;
    std::vector<FoodResponse> responses;
    for (std::size_t i = 0; i < report.occasions.size(); ++i) {
        const EatingOccasion& occasion = report.occasions[i];
        const MealAmplitude& amplitude = report.overlap.meals[i];
        const std::string food = food_key(occasion.text());
        if (!amplitude.readable || food.empty() || occasion.not_described) {
            continue;
        }
        if (unlike.contains(input.zones.date_at(occasion.at))) {
            ++left_out;
            continue;
        }
        FoodResponse one{food, amplitude.own, {}, occasion.slot};
        one.adjusters = {moved_after(occasion, input.diary) ? 1.0 : 0.0};
        if (carbohydrate) {
            const auto& [sum, times] = usual.at(food);
            one.adjusters.push_back(*occasion.carbohydrate_g - sum / times);
        }
        responses.push_back(std::move(one));
    }
    FoodComparison compared = compare_foods(responses, std::move(names), input.seed);
    if (left_out > 0) {
        compared.adjusted_for.push_back(
            fmt::format("days with illness or cortisone noted ({} {} left out)", left_out,
                        left_out == 1 ? "meal" : "meals"));
    }
    return compared;
}

void set_pair_mean(MealReport& report) {
    std::vector<double> rises;
    for (const FingerPrickPair& pair : report.pairs) {
        if (pair.used()) {
            rises.push_back(pair.rise());
        }
    }
    if (rises.empty()) {
        return;
    }
    const auto n = static_cast<double>(rises.size());
    double mean = 0;
    for (const double rise : rises) {
        mean += rise / n;
    }
    report.mean_pair_rise = mean;
    if (rises.size() < 2) {
        return;
    }
    double squares = 0;
    for (const double rise : rises) {
        squares += (rise - mean) * (rise - mean);
    }
    const double half = student_t_quantile(0.975, n - 1) * std::sqrt(squares / (n - 1) / n);
    report.mean_pair_rise95 = {{mean - half, mean + half}};
}

}  // namespace

MealReport meal_report(const ReviewInput& input) {
    MealReport report;
    const CountedTrace trace = counted_trace(input.wears, input.prefer_wear);
    const std::vector<EatingOccasion> all = eating_occasions(input.diary, input.zones);
    report.pairs = finger_prick_pairs(input.diary, all);
    for (const EatingOccasion& occasion : all) {
        const bool asked = !input.window || input.window->contains(occasion.at);
        if (asked && worn_at(trace, occasion.at)) {
            report.occasions.push_back(occasion);
        }
    }
    report.responses = meal_responses(report.occasions, trace.view());
    report.overlap = overlap_model(report.occasions, trace, input.zones);
    report.foods = foods_of(report, input);
    report.ask_about = unwritten_rises(trace.view(), all, input.diary, input.zones);
    std::erase_if(report.ask_about,
                  [&, unlike = special_dates(input.diary, input.zones)](const auto& rise) {
                      return unlike.contains(input.zones.date_at(rise.from));
                  });
    set_pair_mean(report);
    return report;
}

}  // namespace tracewright
