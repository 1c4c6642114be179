#include "findings/meal_report.hpp"
#include "findings/question_words.hpp"
#include "findings/wording.hpp"
#include "inference/shrinkage.hpp"

#include <fmt/format.h>

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tracewright {

namespace {

using Eigen::Index;

constexpr double assumed_within = 25;  // mg/dL
constexpr double least_within_freedom = 6;
constexpr double largest_between = 60;  // mg/dL
constexpr double sure_pair = 0.985;

// Meals of the foods eaten twice or more.
struct Table {
    std::vector<std::string> foods;
    std::vector<int> times;
    std::vector<std::set<MealSlot>> slots;
    std::vector<std::size_t> food_of;  // one for each meal
    std::vector<double> responses;
    Eigen::MatrixXd equal;        // what is held equal: a column for each slot, then the adjusters
    std::vector<double> told_at;  // the usual slots and adjusters
};

// Of the columns those that no earlier ones make up.
std::vector<Index> independent(const Eigen::MatrixXd& x) {
    std::vector<Index> kept;
    Eigen::MatrixXd basis(x.rows(), 0);
    for (Index column = 0; column < x.cols(); ++column) {
        Eigen::VectorXd rest = x.col(column);
        rest -= basis * (basis.transpose() * rest);
        rest -= basis * (basis.transpose() * rest);
        const double size = rest.norm();
        if (size > 1e-8 * std::max(1.0, x.col(column).norm())) {
            basis.conservativeResize(Eigen::NoChange, basis.cols() + 1);
            basis.col(basis.cols() - 1) = rest / size;
            kept.push_back(column);
        }
    }
    return kept;
}

Table table_of(std::span<const FoodResponse> responses, std::size_t adjusters) {
    Table table;
    std::map<std::string, std::size_t> numbers;
    std::map<MealSlot, Index> slots;
    for (const FoodResponse& one : responses) {
        numbers.try_emplace(one.food, 0);
        slots.try_emplace(one.slot, 0);
    }
    for (auto& [food, number] : numbers) {
        number = table.foods.size();
        table.foods.push_back(food);
    }
    Index columns = 0;
    for (auto& [slot, column] : slots) {
        column = columns++;
    }
    table.times.assign(table.foods.size(), 0);
    table.slots.resize(table.foods.size());
    Eigen::MatrixXd x = Eigen::MatrixXd::Zero(static_cast<Index>(responses.size()),
                                              columns + static_cast<Index>(adjusters));
    for (std::size_t i = 0; i < responses.size(); ++i) {
        const FoodResponse& one = responses[i];
        const std::size_t food = numbers[one.food];
        ++table.times[food];
        table.slots[food].insert(one.slot);
        table.food_of.push_back(food);
        table.responses.push_back(one.response);
        const auto row = static_cast<Index>(i);
        x(row, slots[one.slot]) = 1;
        for (std::size_t a = 0; a < adjusters; ++a) {
            x(row, columns + static_cast<Index>(a)) = one.adjusters[a];
        }
    }
    for (Index a = columns; a < x.cols(); ++a) {
        x.col(a).array() -= x.col(a).mean();
    }
    table.equal = x(Eigen::all, independent(x)).eval();
    for (Index column = 0; column < table.equal.cols(); ++column) {
        table.told_at.push_back(table.equal.col(column).mean());
    }
    return table;
}

struct Within {
    double deviation = assumed_within;
    bool assumed = true;
};

// By how much one food differs from itself once slot and adjusters are taken off.
Within within_foods(const Table& table) {
    const auto rows = static_cast<Index>(table.responses.size());
    const auto foods = static_cast<Index>(table.foods.size());
    Eigen::MatrixXd x = Eigen::MatrixXd::Zero(rows, foods + table.equal.cols());
    for (Index i = 0; i < rows; ++i) {
        x(i, static_cast<Index>(table.food_of[static_cast<std::size_t>(i)])) = 1;
    }
    x.rightCols(table.equal.cols()) = table.equal;
    const Eigen::Map<const Eigen::VectorXd> y(table.responses.data(), rows);
    const Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> fit(x);
    const auto freedom = static_cast<double>(rows - fit.rank());
    if (freedom < least_within_freedom) {
        return {};
    }
    const double least = value_error_of(OutcomeUnit::glucose).least_sd;
    return {std::max(least, std::sqrt((y - x * fit.solve(y)).squaredNorm() / freedom)), false};
}

Shrinkage shrunken(const Table& table, double within) {
    std::vector<GroupValue> values;
    for (std::size_t i = 0; i < table.responses.size(); ++i) {
        const Eigen::VectorXd equal = table.equal.row(static_cast<Index>(i));
        values.push_back(
            {table.food_of[i], table.responses[i], within, {equal.begin(), equal.end()}});
    }
    return {values, table.told_at, largest_between};
}

// A food of breakfasts and one of dinners: between them stands the slot as well as the food.
bool share_a_slot(const Table& table, std::size_t a, std::size_t b) {
    return std::ranges::any_of(table.slots[a],
                               [&](MealSlot slot) { return table.slots[b].contains(slot); });
}

bool any_share_a_slot(const Table& table) {
    for (std::size_t a = 0; a < table.foods.size(); ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            if (share_a_slot(table, a, b)) {
                return true;
            }
        }
    }
    return false;
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
    const Table table = table_of(repeated, adjuster_names.size());
    const Within within = within_foods(table);
    const Shrinkage fit = shrunken(table, within.deviation);
    const Shrinkage::Ranks ranks = fit.ranks(0.8, 3, seed);
    result.within = within.deviation;
    result.within_assumed = within.assumed;
    result.between = fit.spread_quantile(0.5);
    result.adjusted_for = std::move(adjuster_names);
    result.adjusted_for.emplace_back("slot (breakfast, lunch, dinner or other)");
    for (std::size_t j = 0; j < table.foods.size(); ++j) {
        result.foods.push_back({table.foods[j], table.times[j], fit.own_mean(j), fit.mean(j),
                                fit.interval(j, 0.8), ranks.interval[j], ranks.in_top[j], 0});
    }
    set_groups(result.foods);
    for (std::size_t a = 0; a < table.foods.size(); ++a) {
        for (std::size_t b = 0; b < table.foods.size(); ++b) {
            const bool fair = a != b && share_a_slot(table, a, b);
            const double p = fair ? fit.probability_above(a, b) : 0;
            if (p >= sure_pair) {
                result.different.push_back({table.foods[a], table.foods[b], p});
            }
        }
    }
    std::stable_sort(result.foods.begin(), result.foods.end(),
                     [](const FoodStanding& a, const FoodStanding& b) { return a.mean > b.mean; });
    std::vector<int> counts = table.times;
    std::nth_element(counts.begin(), counts.begin() + static_cast<long>(counts.size() / 2),
                     counts.end());
    const double typical = within.deviation / std::sqrt(counts[counts.size() / 2]);
    if (!any_share_a_slot(table)) {
        result.none_because =
            "each was eaten at a time of day of its own (breakfast, lunch, dinner or other)";
    } else if (result.between < typical / 3) {
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
