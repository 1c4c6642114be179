#include "findings/meal_report.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <map>

namespace tracewright {

namespace {

using Eigen::Index;

constexpr double assumed_within = 25;  // mg/dL
constexpr double least_within_freedom = 6;
constexpr double largest_between = 60;  // mg/dL
constexpr double sure_pair = 0.985;

// Adjusted means of the foods by least squares, adjusters centred.
struct Means {
    std::vector<std::string> foods;
    std::vector<int> times;
    std::vector<GroupMean> means;
    double within = 0;
    bool assumed = false;
};

// Columns that do not vary within foods tell nothing beside the foods: the fit passes over them by
// its least-norm solution.
Means means_of(std::span<const FoodResponse> responses, std::size_t adjusters) {
    std::map<std::string, Index> numbers;
    for (const FoodResponse& one : responses) {
        numbers.try_emplace(one.food, 0);
    }
    Means result;
    for (auto& [food, number] : numbers) {
        number = static_cast<Index>(result.foods.size());
        result.foods.push_back(food);
    }
    const auto foods = static_cast<Index>(result.foods.size());
    const auto rows = static_cast<Index>(responses.size());
    const auto extra = static_cast<Index>(adjusters);
    Eigen::MatrixXd x = Eigen::MatrixXd::Zero(rows, foods + extra);
    Eigen::VectorXd y(rows);
    result.times.assign(result.foods.size(), 0);
    for (Index i = 0; i < rows; ++i) {
        const FoodResponse& one = responses[static_cast<std::size_t>(i)];
        x(i, numbers[one.food]) = 1;
        ++result.times[static_cast<std::size_t>(numbers[one.food])];
        for (Index a = 0; a < extra; ++a) {
            x(i, foods + a) = one.adjusters[static_cast<std::size_t>(a)];
        }
        y(i) = one.response;
    }
    for (Index a = foods; a < foods + extra; ++a) {
        x.col(a).array() -= x.col(a).mean();
    }
    const Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> fit(x);
    const Eigen::VectorXd b = fit.solve(y);
    const auto freedom = static_cast<double>(rows - fit.rank());
    result.assumed = freedom < least_within_freedom;
    result.within =
        result.assumed ? assumed_within : std::sqrt((y - x * b).squaredNorm() / freedom);
    const Eigen::MatrixXd inverse = fit.pseudoInverse();
    const Eigen::MatrixXd covariance = inverse * inverse.transpose();
    for (Index food = 0; food < foods; ++food) {
        result.means.push_back(
            {b(food), std::max(1e-6, result.within * std::sqrt(covariance(food, food)))});
    }
    return result;
}

// Foods in order; those whose rank intervals overlap, at first or second hand, are one group.
void set_groups(std::vector<FoodStanding>& foods) {
    std::vector<std::size_t> order(foods.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return foods[a].ranks80 < foods[b].ranks80; });
    int group = 0;
    int reach = 0;
    for (const std::size_t i : order) {
        if (foods[i].ranks80[0] > reach) {
            ++group;
        }
        reach = std::max(reach, foods[i].ranks80[1]);
        foods[i].group = group;
    }
}

}  // namespace

FoodComparison compare_foods(std::span<const FoodResponse> responses,
                             std::vector<std::string> adjuster_names, std::uint64_t seed) {
    FoodComparison result;
    std::map<std::string, int> times;
    for (const FoodResponse& one : responses) {
        ++times[one.food];
    }
    std::vector<FoodResponse> repeated;
    for (const FoodResponse& one : responses) {
        if (times[one.food] > 1) {
            repeated.push_back(one);
        }
    }
    for (const auto& [food, count] : times) {
        if (count == 1) {
            result.seen_once.push_back(food);
        }
    }
    const auto foods = static_cast<std::size_t>(std::count_if(
        times.begin(), times.end(), [](const auto& entry) { return entry.second > 1; }));
    if (foods < 3) {
        result.none_because = "fewer than three foods were eaten twice or more";
        return result;
    }
    const Means means = means_of(repeated, adjuster_names.size());
    const Shrinkage fit(means.means, largest_between);
    const Shrinkage::Ranks ranks = fit.ranks(0.8, 3, seed);
    result.within = means.within;
    result.within_assumed = means.assumed;
    result.between = fit.spread_quantile(0.5);
    result.adjusted_for = std::move(adjuster_names);
    for (std::size_t j = 0; j < means.foods.size(); ++j) {
        result.foods.push_back({means.foods[j], means.times[j], means.means[j].mean, fit.mean(j),
                                fit.interval(j, 0.8), ranks.interval[j], ranks.in_top[j], 0});
    }
    set_groups(result.foods);
    for (std::size_t a = 0; a < means.foods.size(); ++a) {
        for (std::size_t b = 0; b < means.foods.size(); ++b) {
            const double p = a == b ? 0 : fit.probability_above(a, b);
            if (p >= sure_pair) {
                result.different.push_back({means.foods[a], means.foods[b], p});
            }
        }
    }
    std::stable_sort(result.foods.begin(), result.foods.end(),
                     [](const FoodStanding& a, const FoodStanding& b) { return a.mean > b.mean; });
    std::vector<int> counts = means.times;
    std::nth_element(counts.begin(), counts.begin() + static_cast<long>(counts.size() / 2),
                     counts.end());
    const double typical = means.within / std::sqrt(counts[counts.size() / 2]);
    if (result.between < typical / 3) {
        result.none_because = "meals differ less than one meal differs from itself";
        result.different.clear();
    }
    return result;
}

std::vector<std::string> food_sentences(const FoodComparison& foods, GlucoseUnit unit) {
    const auto words = [&](double mg) {
        return glucose_words(converted(mg, GlucoseUnit::mg_per_dl, unit), unit);
    };
    std::vector<std::string> sentences;
    if (!foods.none_because.empty()) {
        sentences.push_back("These data can't tell the meals apart: " + foods.none_because + ".");
    }
    for (const FoodStanding& food : foods.foods) {
        std::string smaller;
        for (const FoodPair& pair : foods.different) {
            if (pair.larger == food.food) {
                smaller += fmt::format("{}\"{}\"", smaller.empty() ? "" : ", ", pair.smaller);
            }
        }
        if (!smaller.empty()) {
            sentences.push_back(
                fmt::format("After \"{}\" glucose rose more than after {}.", food.food, smaller));
        }
    }
    if (foods.none_because.empty() && foods.different.empty()) {
        sentences.emplace_back("No two meals can be told apart with enough certainty.");
    }
    if (!foods.foods.empty()) {
        sentences.push_back(fmt::format(
            "The same meal eaten again differs by {} (SD{}); meals differ from each other by {}.",
            words(foods.within), foods.within_assumed ? ", assumed: too few repeats" : "",
            words(foods.between)));
    }
    for (const std::string& food : foods.seen_once) {
        sentences.push_back(fmt::format("\"{}\": seen once, can't tell.", food));
    }
    return sentences;
}

}  // namespace tracewright
