#include "coaching/expected_a1c.hpp"

#include "coaching/red_cell_memory.hpp"
#include "inference/ar1_grid.hpp"
#include "measures/glucose_indicator.hpp"

#include <cmath>
#include <optional>

namespace tracewright {

namespace {

constexpr std::chrono::days looked_at{60};
constexpr int days_needed = 10;
constexpr int days_of_a_pair = 14;
constexpr double mg_per_point = 28.7;
constexpr double normal_quantile = 1.959963984540054;

// What the days say of one date: the red cells' mean, and its error in percentage points without
// laboratory and offset.
struct Remembered {
    double mean = 0;
    double variance = 0;  // points squared
    int days = 0;
    double weight = 0;
};

double sampling_sd(std::span<const DayMean> days) {
    std::vector<double> values;
    std::vector<SeriesStep> steps;
    for (std::size_t i = 0; i < days.size(); ++i) {
        const int gap = i == 0 ? 1 : static_cast<int>((days[i].date - days[i - 1].date).count());
        steps.push_back({i == 0, gap});
        values.push_back(days[i].mg_per_dl);
    }
    const auto half = ar1_mean(values, steps).interval(0.682689492137086);
    return (half[1] - half[0]) / 2;
}

std::span<const DayMean> within(std::span<const DayMean> days, CivilDate from, CivilDate to) {
    std::size_t first = 0;
    while (first < days.size() && days[first].date < from) {
        ++first;
    }
    std::size_t last = first;
    while (last < days.size() && days[last].date < to) {
        ++last;
    }
    return days.subspan(first, last - first);
}

// `known`: days that stand for those not seen.
Remembered remembered(std::span<const DayMean> days, std::span<const DayMean> known, CivilDate on,
                      const A1cSettings& settings) {
    const RedCellMemory memory(settings.lifespan_days);
    Remembered result;
    double of_known = 0;
    for (const DayMean& day : known) {
        of_known += day.mg_per_dl / static_cast<double>(known.size());
    }
    for (const DayMean& day : days) {
        const auto ago = static_cast<double>((on - day.date).count());
        const double share = ago < 1 ? 0 : memory.share(ago - 1, ago);
        result.days += share > 0 ? 1 : 0;
        result.weight += share;
        result.mean += share * day.mg_per_dl;
    }
    const double unseen = 1 - result.weight;
    result.mean += unseen * of_known;
    const double unseen_mg = unseen * std::hypot(settings.weeks_unseen_sd, sampling_sd(known));
    const double sensor_mg = settings.sensor_sd * result.mean;
    result.variance = (unseen_mg * unseen_mg + sensor_mg * sensor_mg) / mg_per_point / mg_per_point;
    return result;
}

double laboratory_variance(double percent, const A1cSettings& settings) {
    return std::pow(settings.laboratory_cv * percent, 2);
}

}  // namespace

PersonalOffset personal_offset(std::span<const double> gaps, double people_sd, double pair_sd) {
    PersonalOffset offset;
    offset.pairs = static_cast<int>(gaps.size());
    const double between = people_sd * people_sd;
    if (!gaps.empty()) {
        const auto k = static_cast<double>(gaps.size());
        offset.weight = between / (between + pair_sd * pair_sd / k);
        for (const double gap : gaps) {
            offset.value += offset.weight * gap / k;
        }
    }
    offset.sd = people_sd * std::sqrt(1 - offset.weight);
    return offset;
}

ExpectedA1c expected_a1c(std::span<const DayMean> days, std::span<const A1cResult> past,
                         CivilDate on, CivilDate as_of, const A1cSettings& settings) {
    ExpectedA1c expected;
    expected.on = on;
    const auto lately = within(days, as_of - looked_at, as_of + std::chrono::days{1});
    if (lately.size() < static_cast<std::size_t>(days_needed)) {
        expected.none_because = "fewer than 10 days of readings in the last 60";
        return expected;
    }
    std::vector<double> gaps;
    double pair_variance = 0;
    for (const A1cResult& result : past) {
        const auto before = within(days, result.on - looked_at, result.on);
        if (result.on > as_of || before.size() < static_cast<std::size_t>(days_of_a_pair)) {
            continue;
        }
        const Remembered then =
            remembered(within(days, CivilDate::min(), result.on), before, result.on, settings);
        gaps.push_back(result.percent() - a1c_from_average(then.mean).percent);
        pair_variance += then.variance + laboratory_variance(result.percent(), settings);
    }
    const double pair_sd =
        gaps.empty() ? 0 : std::sqrt(pair_variance / static_cast<double>(gaps.size()));
    expected.offset = personal_offset(gaps, settings.people_sd, pair_sd);
    const Remembered then = remembered(days, lately, on, settings);
    expected.days_seen = then.days;
    expected.weight_seen = then.weight;
    expected.mean_mg_per_dl = then.mean;
    expected.by_line = a1c_from_average(then.mean).percent;
    expected.percent = expected.by_line + expected.offset.value;
    expected.sd = std::sqrt(then.variance + expected.offset.sd * expected.offset.sd +
                            laboratory_variance(expected.percent, settings));
    expected.interval95 = {expected.percent - normal_quantile * expected.sd,
                           expected.percent + normal_quantile * expected.sd};
    return expected;
}

}  // namespace tracewright
