#include "responses/overlap_search.hpp"

#include "inference/non_negative.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace tracewright {

namespace {

using Eigen::Index;

// Which mean each occasion is drawn towards: its food's if eaten twice or more, else its slot's.
std::vector<std::size_t> groups_of(std::span<const EatingOccasion> occasions) {
    std::map<std::string, int> eaten;
    for (const EatingOccasion& occasion : occasions) {
        ++eaten[food_key(occasion.text())];
    }
    std::map<std::string, std::size_t> numbers;
    std::vector<std::size_t> groups;
    for (const EatingOccasion& occasion : occasions) {
        const std::string food = food_key(occasion.text());
        const std::string name = !food.empty() && eaten[food] > 1
                                     ? "food " + food
                                     : std::string("slot ") + name_of(occasion.slot);
        groups.push_back(numbers.try_emplace(name, numbers.size()).first->second);
    }
    return groups;
}

// Of one day whose amplitudes are drawn about what is expected of them with the trial's
// deviation: the meals' own variance is integrated out.
double density(const DayNormals& day, const OverlapTrial& trial,
               const std::vector<double>& expected) {
    const double s2 = trial.noise * trial.noise;
    const double t2 = trial.deviation * trial.deviation;
    const Index meals = day.aa.rows();
    const auto mu = Eigen::Map<const Eigen::VectorXd>(expected.data(), meals);
    const double plain = OverlapSearch::misfit(day, trial.baseline, expected);
    double explained = 0;
    double log_determinant = 0;
    if (meals > 0) {
        const Eigen::VectorXd pull = day.ay - day.ab * trial.baseline - day.aa * mu;
        Eigen::MatrixXd inner = day.aa / s2;
        inner.diagonal().array() += 1 / t2;
        const Eigen::LDLT<Eigen::MatrixXd> factor(inner);
        explained = pull.dot(factor.solve(pull)) / (s2 * s2);
        log_determinant =
            factor.vectorD().array().log().sum() + static_cast<double>(meals) * std::log(t2);
    }
    return -0.5 * (day.rows * std::log(s2) + plain / s2 - explained + log_determinant) -
           day.log_scale;
}

// Neighbours halfway between the best and the next on either side.
std::vector<double> halfway_about(const std::vector<double>& grid, double best) {
    std::vector<double> found;
    for (std::size_t i = 0; i < grid.size(); ++i) {
        if (grid[i] == best) {
            if (i > 0) {
                found.push_back((grid[i - 1] + best) / 2);
            }
            if (i + 1 < grid.size()) {
                found.push_back((grid[i + 1] + best) / 2);
            }
        }
    }
    return found;
}

}  // namespace

OverlapSearch::OverlapSearch(std::span<const EatingOccasion> occasions,
                             std::vector<OverlapDay> days, std::size_t wears)
    : days_(std::move(days)), wears_(wears), groups_(groups_of(occasions)) {
    for (const std::size_t group : groups_) {
        group_count_ = std::max(group_count_, group + 1);
    }
}

OverlapTrial OverlapSearch::best(const OverlapSettings& settings) const {
    OverlapTrial found;
    const auto take = [&](double peak, double correlation, std::span<const double> deviations) {
        OverlapTrial trial = best_at(peak, correlation, deviations);
        if (trial.score > found.score) {
            found = std::move(trial);
        }
    };
    // One line through the grid at a time, then halfway about what was found.
    const double middle = settings.peaks[settings.peaks.size() / 2];
    for (const double correlation : settings.correlations) {
        take(middle, correlation, settings.amplitude_deviations);
    }
    for (const double peak : settings.peaks) {
        take(peak, found.correlation, settings.amplitude_deviations);
    }
    for (const double peak : halfway_about(settings.peaks, found.peak)) {
        take(peak, found.correlation, settings.amplitude_deviations);
    }
    for (const double correlation : settings.correlations) {
        if (correlation != found.correlation) {
            take(found.peak, correlation, settings.amplitude_deviations);
        }
    }
    for (const double correlation : halfway_about(settings.correlations, found.correlation)) {
        take(found.peak, correlation, settings.amplitude_deviations);
    }
    return found;
}

OverlapTrial OverlapSearch::best_at(double peak, double correlation,
                                    std::span<const double> deviations) const {
    std::vector<DayNormals> sums;
    for (const OverlapDay& day : days_) {
        sums.push_back(day_normals(day, wears_, peak, correlation));
    }
    OverlapTrial best;
    for (const double deviation : deviations) {
        OverlapTrial trial{peak, correlation, deviation, 0, 0, {}, {}, {}};
        fit(trial, sums);
        trial.score = left_out_score(trial, sums);
        if (trial.score > best.score) {
            best = std::move(trial);
        }
    }
    return best;
}

std::vector<double> OverlapSearch::amplitudes(const DayNormals& day, const OverlapDay& of,
                                              const OverlapTrial& trial) const {
    const double ridge = trial.noise * trial.noise / (trial.deviation * trial.deviation);
    const auto meals = day.aa.rows();
    Eigen::MatrixXd gram = day.aa;
    Eigen::VectorXd moment = day.ay - day.ab * trial.baseline;
    for (Index m = 0; m < meals; ++m) {
        gram(m, m) += ridge;
        moment(m) += ridge * mean_for(of, static_cast<std::size_t>(m), trial);
    }
    return non_negative_solution({gram.data(), static_cast<std::size_t>(gram.size())},
                                 {moment.data(), static_cast<std::size_t>(meals)});
}

double OverlapSearch::misfit(const DayNormals& day, const Eigen::VectorXd& baseline,
                             std::span<const double> amplitudes) {
    const Eigen::VectorXd& b = baseline;
    const auto a =
        Eigen::Map<const Eigen::VectorXd>(amplitudes.data(), static_cast<Index>(amplitudes.size()));
    return day.yy - 2 * b.dot(day.by) - 2 * a.dot(day.ay) + b.dot(day.bb * b) + a.dot(day.aa * a) +
           2 * a.dot(day.ab * b);
}

// Baseline, amplitudes, means and noise in turn, until they rest.
void OverlapSearch::fit(OverlapTrial& trial, const std::vector<DayNormals>& sums) const {
    trial.noise = 20;
    trial.means.assign(group_count_, 40);
    trial.baseline = Eigen::VectorXd::Zero(baseline_columns(wears_));
    trial.amplitudes.assign(days_.size(), {});
    for (std::size_t d = 0; d < days_.size(); ++d) {
        trial.amplitudes[d].assign(days_[d].occasions.size(), 40);
    }
    for (int round = 0; round < 12; ++round) {
        trial.baseline = baseline_without(trial, sums, days_.size());
        double squares = 0;
        double rows = 0;
        for (std::size_t d = 0; d < days_.size(); ++d) {
            trial.amplitudes[d] = amplitudes(sums[d], days_[d], trial);
            squares += misfit(sums[d], trial.baseline, trial.amplitudes[d]);
            rows += sums[d].rows;
        }
        trial.noise = std::sqrt(std::max(1e-6, squares / rows));
        trial.means = means_without(trial, days_.size());
    }
}

// `left_out` beyond the days: none.
Eigen::VectorXd OverlapSearch::baseline_without(const OverlapTrial& trial,
                                                const std::vector<DayNormals>& sums,
                                                std::size_t left_out) const {
    const Index base = baseline_columns(wears_);
    // A breath of ridge, for a wear that only the left-out day has.
    Eigen::MatrixXd gram = 1e-9 * Eigen::MatrixXd::Identity(base, base);
    Eigen::VectorXd moment = Eigen::VectorXd::Zero(base);
    for (std::size_t d = 0; d < days_.size(); ++d) {
        if (d == left_out) {
            continue;
        }
        const auto a = Eigen::Map<const Eigen::VectorXd>(
            trial.amplitudes[d].data(), static_cast<Index>(trial.amplitudes[d].size()));
        gram += sums[d].bb;
        moment += sums[d].by - sums[d].ab.transpose() * a;
    }
    return gram.ldlt().solve(moment);
}

std::vector<double> OverlapSearch::means_without(const OverlapTrial& trial,
                                                 std::size_t left_out) const {
    std::vector<double> sum(group_count_, 0);
    std::vector<double> count(group_count_, 0);
    double all = 0;
    double of = 0;
    for (std::size_t d = 0; d < days_.size(); ++d) {
        for (std::size_t m = 0; d != left_out && m < days_[d].occasions.size(); ++m) {
            const std::size_t group = groups_[days_[d].occasions[m]];
            sum[group] += trial.amplitudes[d][m];
            count[group] += 1;
            all += trial.amplitudes[d][m];
            of += 1;
        }
    }
    const double overall = of > 0 ? all / of : 0;
    for (std::size_t g = 0; g < group_count_; ++g) {
        // One meal's worth of the mean of all, so that a food of one eating is no mean of its
        // own.
        sum[g] = (sum[g] + overall) / (count[g] + 1);
    }
    return sum;
}

// Log density of each day with its meals at their group's mean, baseline and means of the
// others.
double OverlapSearch::left_out_score(const OverlapTrial& trial,
                                     const std::vector<DayNormals>& sums) const {
    double score = 0;
    for (std::size_t d = 0; d < days_.size(); ++d) {
        OverlapTrial other = trial;
        other.baseline = baseline_without(trial, sums, d);
        other.means = means_without(trial, d);
        std::vector<double> expected;
        for (std::size_t m = 0; m < days_[d].occasions.size(); ++m) {
            expected.push_back(mean_for(days_[d], m, other));
        }
        score += density(sums[d], other, expected);
    }
    return score;
}

}  // namespace tracewright
