#include "responses/overlap_model.hpp"

#include "responses/overlap_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

using Eigen::Index;

// mg/dL: so wide a deviation that nothing is drawn to a mean, and two meals at once still solvable.
constexpr double not_drawn = 1000;

constexpr std::array<double, 9> shifts = {0, -5, 5, -10, 10, -15, 15, -20, 20};

// The meals of one day, each one's shift gone through with the others at their best so far.
class DayReport {
  public:
    DayReport(const OverlapSearch& search, const OverlapDay& day, const OverlapTrial& trial,
              std::size_t wears, double shift_deviation)
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
        OverlapTrial loose = trial_;
        loose.deviation = not_drawn;
        const std::vector<double> own = search_.amplitudes(sums, day_, loose);
        for (std::size_t m = 0; m < own.size(); ++m) {
            meals[day_.occasions[m]].own = own[m];
        }
        neighbours(meals);
    }

  private:
    const OverlapSearch& search_;
    const OverlapDay& day_;
    const OverlapTrial& trial_;
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
            double cost =
                OverlapSearch::misfit(sums, trial_.baseline, a) / (trial_.noise * trial_.noise);
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
    const OverlapSearch search(occasions, std::move(days), wears);
    const OverlapTrial best = search.best(settings);
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
