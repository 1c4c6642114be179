#include "measures/day_intervals.hpp"

#include "inference/day_blocks.hpp"
#include "trace/days_for_an_interval.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::size_t draws = 1999;
constexpr double level_low = 0.025;
constexpr double level_high = 0.975;
// ln 20: how many random stretches must be expected for one to be seen with a chance of 95 %.
constexpr double expected_if_missed = 2.995732273553991;
constexpr double hour_of_day_percent = 100.0 / 24;
// What n counts on the logit: hours, so that a sensor's interval moves no interval of ours. Counted
// finer, a day at the edge lies so far out that its one half decides, and of rare lows (0.8 to 2 %
// of 28 days) intervals covered 64 to 79 %; by hours 93 %.
constexpr double hour = 3600;

double logit(double share) {
    return std::log(share / (1 - share));
}

double expit(double x) {
    return 1 / (1 + std::exp(-x));
}

// Whether two ends lie further apart than rounding: days that do not differ have no interval.
bool differ(double low, double high) {
    constexpr double rounding = 1e-9;
    return high - low > rounding * std::max(1.0, std::max(std::abs(low), std::abs(high)));
}

// The value at a share of an unsorted sample.
double at_share(std::vector<double>& values, double p) {
    const auto k =
        static_cast<std::ptrdiff_t>(std::lround(p * static_cast<double>(values.size() - 1)));
    std::nth_element(values.begin(), values.begin() + k, values.end());
    return values[static_cast<std::size_t>(k)];
}

}  // namespace

DayIntervals::DayIntervals(std::span<const DayOfTrace> days, std::uint64_t seed) : seed_(seed) {
    for (const DayOfTrace& day : days) {
        if (!day.valid) {
            continue;
        }
        SeriesStep step{valid_.empty(), 1};
        if (!valid_.empty()) {
            step.gap = static_cast<int>((day.date - valid_.back()->date).count());
        }
        steps_.push_back(step);
        valid_.push_back(&day);
    }
    if (this->days() < days_for_an_interval) {
        none_because_ = "fewer than 3 days with at least 70 % of their readings";
    }
}

std::optional<std::array<double, 2>> DayIntervals::of_mean(double value, const DayValue& day_value,
                                                           std::optional<double> least) const {
    std::vector<double> values;
    std::vector<SeriesStep> steps;
    int gap = 0;
    for (std::size_t i = 0; i < valid_.size(); ++i) {
        gap += steps_[i].gap;
        if (const auto v = day_value(*valid_[i])) {
            steps.push_back({values.empty(), gap});
            values.push_back(*v);
            gap = 0;
        }
    }
    if (values.size() < days_for_an_interval) {
        return std::nullopt;
    }
    const auto [smallest, largest] = std::minmax_element(values.begin(), values.end());
    if (!differ(*smallest, *largest)) {
        return std::nullopt;
    }
    const TMixture mean = ar1_mean(values, steps);
    const double shift = value - mean.mean();
    auto interval = mean.interval();
    for (double& end : interval) {
        end += shift;
        end = least ? std::max(*least, end) : end;
    }
    return interval;
}

std::optional<std::array<double, 2>> DayIntervals::of_share(double percent,
                                                            const DayValue& day_percent) const {
    if (!none_because_.empty()) {
        return std::nullopt;
    }
    std::vector<double> shares;
    for (const DayOfTrace* day : valid_) {
        shares.push_back(*day_percent(*day) / 100);
    }
    const auto all = [&](double share) {
        return std::all_of(shares.begin(), shares.end(), [&](double s) { return s == share; });
    };
    const double missed = expected_if_missed / static_cast<double>(days()) * hour_of_day_percent;
    if (all(0)) {
        return std::array{0.0, std::max(percent, std::min(100.0, missed))};
    }
    if (all(1)) {
        return std::array{std::min(percent, std::max(0.0, 100 - missed)), 100.0};
    }
    // One day of many at 0 or 100 % says no more of the others than one near it.
    if (const auto plain = of_mean(percent, day_percent);
        plain && (*plain)[0] > 0 && (*plain)[1] < 100) {
        return plain;
    }
    std::vector<double> logits;
    double n = 0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        const double hours = valid_[i]->sums.seconds / hour;
        n = std::max(n, hours);
        logits.push_back(logit((shares[i] * hours + 0.5) / (hours + 1)));
    }
    const auto [smallest, largest] = std::minmax_element(logits.begin(), logits.end());
    if (!differ(*smallest, *largest)) {
        return std::nullopt;
    }
    const TMixture mean = ar1_mean(logits, steps_);
    const double value = logit((percent / 100 * n + 0.5) / (n + 1));
    auto interval = mean.interval();
    // Half an hour was added to each side; where a share is small that alone would lift the lower
    // end up to what was seen. The wider end counts, with it or without.
    for (double& end : interval) {
        end = expit(value + end - mean.mean());
    }
    const auto without = [n](double share) { return ((n + 1) * share - 0.5) / n; };
    const double low = 100 * std::min(interval[0], without(interval[0]));
    const double high = 100 * std::max(interval[1], without(interval[1]));
    interval[0] = std::max(0.0, std::min(low, percent));
    interval[1] = std::min(100.0, std::max(high, percent));
    return interval;
}

void DayIntervals::draw() const {
    if (!totals_.empty()) {
        return;
    }
    const std::size_t n = valid_.size();
    counts_ = block_counts(n, block_length_for(n), draws, seed_);
    totals_.resize(draws);
    std::vector<double> means;
    for (std::size_t d = 0; d < draws; ++d) {
        double sum = 0;
        for (std::size_t i = 0; i < n; ++i) {
            const double times = counts_[d * n + i];
            if (times > 0) {
                totals_[d].add(valid_[i]->sums, times);
                sum += times * valid_[i]->sums.mean(GlucoseUnit::mg_per_dl);
            }
        }
        means.push_back(sum / static_cast<double>(n));
    }
    const auto grid = of_mean(0, [](const DayOfTrace& day) {
        return std::optional{day.sums.mean(GlucoseUnit::mg_per_dl)};
    });
    if (grid) {
        const double low = at_share(means, level_low);
        const double high = at_share(means, level_high);
        widening_ = high > low ? std::max(1.0, ((*grid)[1] - (*grid)[0]) / (high - low)) : 1.0;
    }
}

std::optional<std::array<double, 2>> DayIntervals::widened(double value,
                                                           std::vector<double> sample) const {
    if (sample.empty()) {
        return std::nullopt;
    }
    const double low = at_share(sample, level_low);
    const double high = at_share(sample, level_high);
    if (!differ(low, high)) {
        return std::nullopt;
    }
    return std::array{std::max(0.0, value - widening_ * std::max(0.0, value - low)),
                      value + widening_ * std::max(0.0, high - value)};
}

std::optional<std::array<double, 2>> DayIntervals::of_total(double value,
                                                            const Total& total) const {
    if (!none_because_.empty()) {
        return std::nullopt;
    }
    draw();
    std::vector<double> sample;
    sample.reserve(draws);
    for (const GlucoseSums& sums : totals_) {
        if (const auto v = total(sums)) {
            sample.push_back(*v);
        }
    }
    return widened(value, std::move(sample));
}

std::optional<std::array<double, 2>> DayIntervals::of_median(
    double value, const std::function<double(const Reading&)>& level) const {
    if (!none_because_.empty()) {
        return std::nullopt;
    }
    draw();
    struct Stood {
        double level;
        std::size_t day;
        double time;
    };
    std::vector<Stood> stood;
    for (std::size_t i = 0; i < valid_.size(); ++i) {
        for_each_standing(valid_[i]->view, [&](const Reading& reading, std::chrono::seconds time) {
            stood.push_back({level(reading), i, static_cast<double>(time.count())});
        });
    }
    std::sort(stood.begin(), stood.end(), [](const Stood& a, const Stood& b) {
        return a.level < b.level || (a.level == b.level && a.day < b.day);
    });
    // Time each day had spent at or below each distinct level.
    const std::size_t n = valid_.size();
    std::vector<double> levels;
    std::vector<double> below;  // levels x days
    std::vector<double> so_far(n, 0.0);
    for (std::size_t i = 0; i < stood.size(); ++i) {
        so_far[stood[i].day] += stood[i].time;
        if (i + 1 == stood.size() || stood[i + 1].level > stood[i].level) {
            levels.push_back(stood[i].level);
            below.insert(below.end(), so_far.begin(), so_far.end());
        }
    }
    std::vector<double> sample;
    sample.reserve(draws);
    for (std::size_t d = 0; d < draws; ++d) {
        const std::uint16_t* times = counts_.data() + d * n;
        const auto time_below = [&](std::size_t l) {
            double sum = 0;
            for (std::size_t i = 0; i < n; ++i) {
                sum += times[i] * below[l * n + i];
            }
            return sum;
        };
        const double half = time_below(levels.size() - 1) / 2;
        std::size_t low = 0;
        std::size_t high = levels.size() - 1;
        while (low < high) {
            const std::size_t middle = (low + high) / 2;
            if (time_below(middle) >= half) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        sample.push_back(levels[low]);
    }
    return widened(value, std::move(sample));
}

}  // namespace tracewright
