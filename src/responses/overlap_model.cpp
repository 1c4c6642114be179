#include "responses/overlap_model.hpp"

#include "inference/non_negative.hpp"
#include "responses/overlap_days.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace tracewright {

namespace {

using Eigen::Index;

// What is being tried, and what came of it.
struct Trial {
    double peak = 0;
    double correlation = 0;
    double deviation = 0;  // of amplitudes about their mean
    double noise = 0;      // deviation of the errors
    double score = -std::numeric_limits<double>::infinity();
    Eigen::VectorXd baseline;
    std::vector<std::vector<double>> amplitudes;  // by day
    std::vector<double> means;                    // by group
};

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

class Search {
  public:
    Search(std::span<const EatingOccasion> occasions, std::vector<OverlapDay> days,
           std::size_t wears)
        : days_(std::move(days)), wears_(wears), groups_(groups_of(occasions)) {
        for (const std::size_t group : groups_) {
            group_count_ = std::max(group_count_, group + 1);
        }
    }

    const std::vector<OverlapDay>& days() const { return days_; }

    // All ridges at one kernel and correlation: the sums are made once.
    Trial best_at(double peak, double correlation, std::span<const double> deviations) const {
        std::vector<DayNormals> sums;
        for (const OverlapDay& day : days_) {
            sums.push_back(day_normals(day, wears_, peak, correlation));
        }
        Trial best;
        for (const double deviation : deviations) {
            Trial trial{peak, correlation, deviation, 0, 0, {}, {}, {}};
            fit(trial, sums);
            trial.score = left_out_score(trial, sums);
            if (trial.score > best.score) {
                best = std::move(trial);
            }
        }
        return best;
    }

    // The amplitudes of one day, the baseline given: ridged, not negative.
    std::vector<double> amplitudes(const DayNormals& day, const OverlapDay& of,
                                   const Trial& trial) const {
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

    double mean_for(const OverlapDay& day, std::size_t meal, const Trial& trial) const {
        return trial.means[groups_[day.occasions[meal]]];
    }

    // Squared misfit of the whitened rows.
    static double misfit(const DayNormals& day, const Eigen::VectorXd& b,
                         const std::vector<double>& amplitudes) {
        const auto a = Eigen::Map<const Eigen::VectorXd>(amplitudes.data(),
                                                         static_cast<Index>(amplitudes.size()));
        return day.yy - 2 * b.dot(day.by) - 2 * a.dot(day.ay) + b.dot(day.bb * b) +
               a.dot(day.aa * a) + 2 * a.dot(day.ab * b);
    }

  private:
    std::vector<OverlapDay> days_;
    std::size_t wears_;
    std::vector<std::size_t> groups_;
    std::size_t group_count_ = 0;

    // Baseline, amplitudes, means and noise in turn, until they rest.
    void fit(Trial& trial, const std::vector<DayNormals>& sums) const {
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
    Eigen::VectorXd baseline_without(const Trial& trial, const std::vector<DayNormals>& sums,
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

    std::vector<double> means_without(const Trial& trial, std::size_t left_out) const {
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
    double left_out_score(const Trial& trial, const std::vector<DayNormals>& sums) const {
        double score = 0;
        for (std::size_t d = 0; d < days_.size(); ++d) {
            Trial other = trial;
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

    // Of one day whose amplitudes are drawn about what is expected of them with the trial's
    // deviation: the meals' own variance is integrated out.
    static double density(const DayNormals& day, const Trial& trial,
                          const std::vector<double>& expected) {
        const double s2 = trial.noise * trial.noise;
        const double t2 = trial.deviation * trial.deviation;
        const Index meals = day.aa.rows();
        const auto mu = Eigen::Map<const Eigen::VectorXd>(expected.data(), meals);
        const double plain = misfit(day, trial.baseline, expected);
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
};

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

Trial searched(const Search& search, const OverlapSettings& settings) {
    Trial best;
    const auto take = [&](double peak, double correlation, std::span<const double> deviations) {
        Trial trial = search.best_at(peak, correlation, deviations);
        if (trial.score > best.score) {
            best = std::move(trial);
        }
    };
    // One line through the grid at a time, then halfway about what was found.
    const double middle = settings.peaks[settings.peaks.size() / 2];
    for (const double correlation : settings.correlations) {
        take(middle, correlation, settings.amplitude_deviations);
    }
    for (const double peak : settings.peaks) {
        take(peak, best.correlation, settings.amplitude_deviations);
    }
    for (const double peak : halfway_about(settings.peaks, best.peak)) {
        take(peak, best.correlation, settings.amplitude_deviations);
    }
    for (const double correlation : settings.correlations) {
        if (correlation != best.correlation) {
            take(best.peak, correlation, settings.amplitude_deviations);
        }
    }
    for (const double correlation : halfway_about(settings.correlations, best.correlation)) {
        take(best.peak, correlation, settings.amplitude_deviations);
    }
    return best;
}

// mg/dL: so wide a deviation that nothing is drawn to a mean, and two meals at once still solvable.
constexpr double not_drawn = 1000;

constexpr std::array<double, 9> shifts = {0, -5, 5, -10, 10, -15, 15, -20, 20};

// The meals of one day, each one's shift gone through with the others at their best so far.
class DayReport {
  public:
    DayReport(const Search& search, const OverlapDay& day, const Trial& trial, std::size_t wears,
              double shift_deviation)
        : search_(search),
          day_(day),
          trial_(trial),
          wears_(wears),
          shift_deviation_(shift_deviation),
          shift_(day.occasions.size(), 0) {}

    void tell(std::vector<MealAmplitude>& meals) {
        for (int pass = 0; pass < 2; ++pass) {
            for (std::size_t m = 0; m < day_.occasions.size(); ++m) {
                meals[day_.occasions[m]] = with_best_shift(m);
            }
        }
        const DayNormals sums = sums_at(shift_);
        Trial loose = trial_;
        loose.deviation = not_drawn;
        const std::vector<double> own = search_.amplitudes(sums, day_, loose);
        for (std::size_t m = 0; m < own.size(); ++m) {
            meals[day_.occasions[m]].own = own[m];
        }
        neighbours(meals);
    }

  private:
    const Search& search_;
    const OverlapDay& day_;
    const Trial& trial_;
    std::size_t wears_;
    double shift_deviation_;
    std::vector<double> shift_;

    DayNormals sums_at(const std::vector<double>& shift) const {
        return day_normals(day_, wears_, trial_.peak, trial_.correlation, shift);
    }

    Eigen::MatrixXd covariance(const DayNormals& sums) const {
        Eigen::MatrixXd inner = sums.aa / (trial_.noise * trial_.noise);
        inner.diagonal().array() += 1 / (trial_.deviation * trial_.deviation);
        return inner.inverse();
    }

    MealAmplitude with_best_shift(std::size_t m) {
        struct Tried {
            double shift, amplitude, variance, log_weight;
        };
        std::vector<Tried> tried;
        for (const double shift : shifts) {
            std::vector<double> all = shift_;
            all[m] = shift;
            const DayNormals sums = sums_at(all);
            const std::vector<double> a = search_.amplitudes(sums, day_, trial_);
            double cost = Search::misfit(sums, trial_.baseline, a) / (trial_.noise * trial_.noise);
            for (std::size_t i = 0; i < a.size(); ++i) {
                const double off = (a[i] - search_.mean_for(day_, i, trial_)) / trial_.deviation;
                cost += off * off;
            }
            const double clock = shift / shift_deviation_;
            const auto at = static_cast<Index>(m);
            tried.push_back({shift, a[m], covariance(sums)(at, at), -0.5 * (cost + clock * clock)});
        }
        double largest = tried[0].log_weight;
        for (const Tried& t : tried) {
            if (t.log_weight > largest) {
                largest = t.log_weight;
                shift_[m] = t.shift;
            }
        }
        if (largest == tried[0].log_weight) {
            shift_[m] = 0;
        }
        double weight = 0, mean = 0, square = 0, shift_mean = 0, shift_square = 0;
        for (const Tried& t : tried) {
            const double w = std::exp(t.log_weight - largest);
            weight += w;
            mean += w * t.amplitude;
            square += w * (t.amplitude * t.amplitude + t.variance);
            shift_mean += w * t.shift;
            shift_square += w * t.shift * t.shift;
        }
        MealAmplitude result;
        result.readable = true;
        result.amplitude = mean / weight;
        result.standard_error =
            std::sqrt(std::max(0.0, square / weight - result.amplitude * result.amplitude));
        result.shift_minutes = shift_mean / weight;
        result.shift_deviation = std::sqrt(
            std::max(0.0, shift_square / weight - result.shift_minutes * result.shift_minutes));
        return result;
    }

    void neighbours(std::vector<MealAmplitude>& meals) const {
        const Eigen::MatrixXd v = covariance(sums_at(shift_));
        for (std::size_t m = 1; m < day_.occasions.size(); ++m) {
            const auto i = static_cast<Index>(m);
            const double r = v(i - 1, i) / std::sqrt(v(i - 1, i - 1) * v(i, i));
            MealAmplitude& before = meals[day_.occasions[m - 1]];
            MealAmplitude& after = meals[day_.occasions[m]];
            before.correlation_after = r;
            after.correlation_before = r;
            if (day_.eaten[m] - day_.eaten[m - 1] < 90) {
                before.shares_uncertain = true;
                after.shares_uncertain = true;
            }
        }
    }
};

}  // namespace

OverlapModel overlap_model(std::span<const EatingOccasion> occasions, const CountedTrace& trace,
                           const ZoneHistory& zones, const OverlapSettings& settings) {
    OverlapModel model;
    model.meals.resize(occasions.size());
    std::vector<OverlapDay> days = overlap_days(occasions, trace, zones);
    const auto with_meals = std::count_if(
        days.begin(), days.end(), [](const OverlapDay& day) { return !day.occasions.empty(); });
    model.days = static_cast<int>(days.size());
    if (with_meals < 3) {
        model.none_because = "fewer than three days with readings and a written meal";
        return model;
    }
    std::size_t wears = 0;
    for (const std::size_t wear : trace.wear_of) {
        wears = std::max(wears, wear + 1);
    }
    const Search search(occasions, std::move(days), wears);
    const Trial best = searched(search, settings);
    model.peak_minutes = best.peak;
    model.correlation_5min = best.correlation;
    model.noise_deviation = best.noise;
    model.amplitude_deviation = best.deviation;
    model.left_out_score = best.score;
    for (const OverlapDay& day : search.days()) {
        DayReport(search, day, best, wears, settings.shift_deviation).tell(model.meals);
    }
    return model;
}

}  // namespace tracewright
