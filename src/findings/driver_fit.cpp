#include "findings/driver_fit.hpp"

#include "inference/several_questions.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tracewright {

namespace {

constexpr int least_rows = 10;
constexpr double least_dof = 6;
constexpr std::size_t rows_a_driver = 6;
constexpr int least_of_each = 4;
constexpr double vif_limit = 5;
constexpr double condition_limit = 30;
constexpr double sure = 0.9;
constexpr double level = 0.05;
constexpr int rows_in_reach = 120;
constexpr double z_one_sided_90 = 1.2815515655446004;
constexpr double z_two_sided_90 = 1.6448536269514722;

double value(const DriverRows& rows, std::size_t row, std::size_t driver) {
    return rows.x[row * rows.drivers + driver];
}

std::vector<double> column(const DriverRows& rows, std::size_t driver) {
    std::vector<double> values;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        values.push_back(value(rows, i, driver));
    }
    return values;
}

double mean_of(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double deviation_of(const std::vector<double>& values) {
    if (values.size() < 2) {
        return 0;
    }
    const double mean = mean_of(values);
    double sum = 0;
    for (const double v : values) {
        sum += (v - mean) * (v - mean);
    }
    return std::sqrt(sum / (static_cast<double>(values.size()) - 1));
}

std::vector<double> adjuster_column(const DriverRows& rows, std::size_t adjuster) {
    std::vector<double> values;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        values.push_back(rows.adjuster[i * rows.adjusters + adjuster]);
    }
    return values;
}

// What never varies holds nothing equal.
std::vector<std::size_t> adjusters_that_vary(const DriverRows& rows) {
    std::vector<std::size_t> varying;
    for (std::size_t a = 0; a < rows.adjusters; ++a) {
        if (deviation_of(adjuster_column(rows, a)) > 0) {
            varying.push_back(a);
        }
    }
    return varying;
}

std::size_t wears_of(const DriverRows& rows) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        count += i == 0 || rows.wear[i] != rows.wear[i - 1] ? 1U : 0U;
    }
    return count;
}

// Whether y is the same throughout each wear, but for rounding.
bool is_flat(const DriverRows& rows) {
    for (std::size_t i = 1; i < rows.rows(); ++i) {
        if (rows.wear[i] == rows.wear[i - 1] && std::abs(rows.y[i] - rows.y[i - 1]) > 1e-6) {
            return false;
        }
    }
    return true;
}

// Drivers first, then adjusters that vary, then an intercept for each wear.
struct Design {
    std::vector<double> x;
    std::size_t columns = 0;
    std::vector<SeriesStep> steps;
};

Design design_of(const DriverRows& rows, const std::vector<std::size_t>& drivers) {
    std::vector<std::vector<double>> columns;
    for (const std::size_t driver : drivers) {
        columns.push_back(column(rows, driver));
    }
    for (const std::size_t adjuster : adjusters_that_vary(rows)) {
        columns.push_back(adjuster_column(rows, adjuster));
    }
    for (std::vector<double>& values : columns) {
        const double mean = mean_of(values);
        for (double& v : values) {
            v -= mean;
        }
    }
    const std::size_t wears = wears_of(rows);
    const std::size_t first = columns.size();
    columns.resize(first + wears, std::vector<double>(rows.rows(), 0.0));
    Design design;
    std::size_t wear = 0;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        const bool start = i == 0 || rows.wear[i] != rows.wear[i - 1];
        wear += start && i > 0 ? 1U : 0U;
        columns[first + wear][i] = 1;
        design.steps.push_back({start, start ? 1 : std::max(1, rows.day[i] - rows.day[i - 1])});
    }
    design.columns = columns.size();
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        for (const auto& values : columns) {
            design.x.push_back(values[i]);
        }
    }
    return design;
}

// Two habits of the model that part least: the pair, and the nights on which they do part. One that
// hardly varies is not in the model and widens nothing.
void find_pair(DriverFit& fit, const DriverRows& rows, const std::vector<std::size_t>& asked) {
    for (std::size_t i = 0; i < asked.size(); ++i) {
        for (std::size_t j = i + 1; j < asked.size(); ++j) {
            const double r = correlation(column(rows, asked[i]), column(rows, asked[j]));
            if (std::abs(r) > std::abs(fit.pair_correlation)) {
                fit.pair_correlation = r;
                fit.pair = {asked[i], asked[j]};
            }
        }
    }
    if (fit.pair_correlation == 0) {
        return;
    }
    const auto a = column(rows, fit.pair[0]);
    const auto b = column(rows, fit.pair[1]);
    const double sign = fit.pair_correlation > 0 ? 1 : -1;
    std::vector<std::pair<double, std::size_t>> apart;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        const double za = (a[i] - mean_of(a)) / deviation_of(a);
        const double zb = (b[i] - mean_of(b)) / deviation_of(b);
        apart.emplace_back(std::abs(za - sign * zb), i);
    }
    std::stable_sort(apart.begin(), apart.end(),
                     [](const auto& p, const auto& q) { return p.first > q.first; });
    for (const auto& [distance, row] : apart) {
        if (distance >= 1) {
            fit.parts_them.push_back(row);
        }
    }
}

bool has_contrast(DriverResult& result, const DriverRows& rows, std::size_t driver,
                  const DriverSetting& setting) {
    const std::vector<double> values = column(rows, driver);
    result.spread = deviation_of(values);
    if (setting.yes_no) {
        result.yes = static_cast<int>(
            std::count_if(values.begin(), values.end(), [](double v) { return v > 0.5; }));
        return result.yes >= least_of_each &&
               static_cast<int>(values.size()) - result.yes >= least_of_each;
    }
    return result.spread >= std::abs(setting.change) / 4;
}

// A sensor that reads a twentieth high tells every difference a twentieth larger; each wear has a
// sensor of its own.
TMixture with_sensors(const TMixture& posterior, const RowError& error, std::size_t wears) {
    const double sd = error.share * std::abs(posterior.mean());
    return posterior.widened(sd / std::sqrt(static_cast<double>(wears)));
}

void take_posterior(DriverResult& result, const TMixture& posterior, double worth) {
    result.effect = posterior.mean();
    result.interval95 = posterior.interval();
    result.deviation = (posterior.quantile(0.841344746) - posterior.quantile(0.158655254)) / 2;
    result.p = two_sided_p(posterior);
    const double above = posterior.probability_above(worth);
    const double below = posterior.cdf(-worth);
    result.beyond = std::max(above, below);
    result.within = 1 - above - below;
}

std::optional<int> more_rows_needed(const DriverResult& result, double worth, int rows,
                                    std::size_t asked) {
    const double size = std::abs(result.effect);
    double wanted = 0;
    if (size > worth) {
        // Holm's first step at an even chance of being reached; the deviation counts its worth too.
        const double z = boost::math::quantile(boost::math::normal_distribution<double>(),
                                               1 - 0.025 / static_cast<double>(asked));
        wanted = std::min((size - worth) / z_one_sided_90, size / z);
    } else {
        wanted = (worth - size) / z_two_sided_90;
    }
    if (!(wanted > 0)) {
        return std::nullopt;
    }
    const double factor = result.deviation / wanted;
    const double needed = std::ceil(rows * factor * factor) - rows;
    if (needed > rows_in_reach) {
        return std::nullopt;
    }
    return std::max(1, static_cast<int>(needed));
}

void judge(DriverFit& fit, const std::vector<std::size_t>& asked, double worth,
           std::size_t asked_besides) {
    std::vector<double> p;
    for (const std::size_t driver : asked) {
        p.push_back(fit.drivers[driver].p);
    }
    p.resize(p.size() + asked_besides, 1.0);
    const std::vector<double> adjusted = holm_adjusted(p);
    for (std::size_t i = 0; i < asked.size(); ++i) {
        DriverResult& result = fit.drivers[asked[i]];
        result.p_adjusted = adjusted[i];
        if (result.beyond >= sure && result.p_adjusted <= level) {
            result.answer = Answer::yes;
        } else if (result.within >= sure) {
            result.answer = Answer::no_difference_worth_acting_on;
        } else {
            result.more_rows = more_rows_needed(result, worth, fit.rows, p.size());
        }
    }
}

// All drivers that can't be told apart moved together, one SD each to both sides.
void tell_jointly(DriverFit& fit, const DriverRows& rows, const std::vector<std::size_t>& asked,
                  const std::vector<DriverSetting>& settings, const RowError& error) {
    // Identical drivers leave the fit without an answer: then the sum of them is the one driver.
    DriverRows one = rows;
    one.drivers = 1;
    one.x.clear();
    const double towards = settings[asked[0]].change > 0 ? 1 : -1;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        double sum = 0;
        for (const std::size_t driver : asked) {
            const auto values = column(rows, driver);
            const double sign =
                correlation(values, column(rows, asked[0])) >= 0 ? towards : -towards;
            sum += sign * (value(rows, i, driver) - mean_of(values)) / deviation_of(values) /
                   static_cast<double>(asked.size());
        }
        one.x.push_back(sum);
    }
    const Design design = design_of(one, {0});
    const Ar1Grid grid(one.y, design.x, design.columns, design.steps, error.least_sd);
    std::vector<double> weights(design.columns, 0.0);
    weights[0] = 2;
    const TMixture posterior = with_sensors(grid.contrast(weights), error, wears_of(rows));
    fit.joint = posterior.mean();
    fit.joint95 = posterior.interval();
    fit.correlation = grid.median_correlation();
}

}  // namespace

double two_sided_p(const TMixture& posterior) {
    const double below = posterior.cdf(0);
    return 2 * std::min(below, 1 - below);
}

std::vector<std::size_t> accounted_for(const DriverFit& fit, std::size_t driver) {
    std::vector<std::size_t> others;
    for (std::size_t other = 0; other < fit.drivers.size(); ++other) {
        if (other != driver && fit.drivers[driver].gate == DriverGate::open &&
            fit.drivers[other].gate == DriverGate::open) {
            others.push_back(other);
        }
    }
    return others;
}

DriverFit driver_fit(const DriverRows& rows, const std::vector<DriverSetting>& settings,
                     double worth, std::size_t asked_besides, const RowError& error) {
    DriverFit fit;
    fit.rows = static_cast<int>(rows.rows());
    fit.drivers.resize(rows.drivers);
    const auto close_all = [&](DriverGate gate) {
        fit.gate = gate;
        for (DriverResult& result : fit.drivers) {
            result.gate = gate;
        }
    };
    const std::size_t columns = rows.drivers + rows.adjusters + wears_of(rows);
    fit.dof = static_cast<double>(rows.rows()) - static_cast<double>(columns);
    if (fit.rows < least_rows || fit.dof < least_dof) {
        close_all(DriverGate::too_few);
        return fit;
    }
    if (rows.drivers * rows_a_driver > rows.rows()) {
        close_all(DriverGate::too_many_drivers);
        return fit;
    }
    if (is_flat(rows)) {
        close_all(DriverGate::flat_outcome);
        return fit;
    }
    std::vector<std::size_t> asked;
    for (std::size_t driver = 0; driver < rows.drivers; ++driver) {
        if (has_contrast(fit.drivers[driver], rows, driver, settings[driver])) {
            asked.push_back(driver);
        } else {
            fit.drivers[driver].gate = DriverGate::no_contrast;
        }
    }
    if (asked.empty()) {
        fit.gate = DriverGate::no_contrast;
        return fit;
    }
    find_pair(fit, rows, asked);
    fit.adjusters = adjusters_that_vary(rows);
    std::vector<double> x;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        for (const std::size_t driver : asked) {
            const auto values = fit.drivers[driver];
            x.push_back((value(rows, i, driver)) / values.spread);
        }
    }
    std::vector<double> centred = x;
    for (std::size_t j = 0; j < asked.size(); ++j) {
        double mean = 0;
        for (std::size_t i = 0; i < rows.rows(); ++i) {
            mean += x[i * asked.size() + j] / static_cast<double>(rows.rows());
        }
        for (std::size_t i = 0; i < rows.rows(); ++i) {
            centred[i * asked.size() + j] -= mean;
        }
    }
    const Collinearity alike = collinearity(centred, asked.size());
    fit.largest_condition_index = alike.condition_indices.back();
    bool separable = fit.largest_condition_index < condition_limit;
    for (std::size_t j = 0; j < asked.size(); ++j) {
        fit.drivers[asked[j]].vif = alike.vif[j];
        separable = separable && alike.vif[j] < vif_limit;
    }
    fit.shares = variance_shares(rows.y, x, asked.size());
    if (!separable) {
        fit.gate = DriverGate::inseparable;
        for (const std::size_t driver : asked) {
            fit.drivers[driver].gate = DriverGate::inseparable;
        }
        tell_jointly(fit, rows, asked, settings, error);
        return fit;
    }
    const Design design = design_of(rows, asked);
    const Ar1Grid grid(rows.y, design.x, design.columns, design.steps, error.least_sd);
    fit.dof = grid.dof();
    fit.correlation = grid.median_correlation();
    for (std::size_t j = 0; j < asked.size(); ++j) {
        std::vector<double> weights(design.columns, 0.0);
        weights[j] = settings[asked[j]].change;
        take_posterior(fit.drivers[asked[j]],
                       with_sensors(grid.contrast(weights), error, wears_of(rows)), worth);
    }
    judge(fit, asked, worth, asked_besides);
    return fit;
}

}  // namespace tracewright
