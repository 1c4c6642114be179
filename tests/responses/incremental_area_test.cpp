// The rows of tests/data/glycaemia-checks.csv on areas after a meal. Sources stand in the rows:
// FAO/WHO 1998, Food and Nutrition Paper 66; Brouns et al. 2005, 10.1079/NRR2005100; Wolever 2004.
#include "responses/incremental_area.hpp"

#include "measures/check_table.hpp"
#include "responses/meal_response.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <functional>
#include <map>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

using Curve = std::vector<CurvePoint>;

Curve curve_of(const CheckRow& row) {
    const auto minutes = row.list("t_min");
    const auto levels =
        row.input.find("mmoll=") != std::string::npos ? row.list("mmoll") : row.list("mgdl");
    Curve curve;
    for (std::size_t i = 0; i < minutes.size(); ++i) {
        curve.push_back({minutes[i], levels[i]});
    }
    return curve;
}

using Handler = std::function<std::vector<double>(const Curve&)>;

const std::map<std::string, Handler>& handlers() {
    static const std::map<std::string, Handler> table = {
        {"iauc", [](const Curve& c) { return std::vector{incremental_area(c, c[0].level)}; }},
        {"iauc_segments",
         [](const Curve& c) { return incremental_area_by_segment(c, c[0].level); }},
        {"net_incremental_auc",
         [](const Curve& c) { return std::vector{net_incremental_area(c, c[0].level)}; }},
        {"auc_until_first_cut_of_baseline",
         [](const Curve& c) { return std::vector{area_until_first_return(c, c[0].level)}; }},
        {"auc_above_minimum", [](const Curve& c) { return std::vector{area_above_minimum(c)}; }},
        {"total_auc", [](const Curve& c) { return std::vector{total_area(c)}; }},
        {"iauc_per_hour",
         [](const Curve& c) { return std::vector{incremental_area(c, c[0].level) / 60}; }},
        {"peak;time_to_peak;rise;at60;at120",
         [](const Curve& c) {
             const MealResponse r = response_of_curve(c, c[0].level);
             return std::vector{r.peak, r.minutes_to_peak, r.rise, *r.at_1h, *r.at_2h};
         }},
    };
    return table;
}

}  // namespace

TEST(IncrementalArea, every_row_of_the_check_table_is_met) {
    int met = 0;
    for (const CheckRow& row :
         check_rows(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/data/glycaemia-checks.csv")) {
        if (!row.id.starts_with("iauc-")) {
            continue;
        }
        ++met;
        const Curve curve = curve_of(row);
        const auto expected = CheckRow::numbers(row.expected);
        if (row.id == "iauc-clampbug") {
            EXPECT_GT(std::abs(incremental_area(curve, curve[0].level) - expected[0]), 1);
            continue;
        }
        const auto found = handlers().at(row.measure)(curve);
        ASSERT_EQ(found.size(), expected.size()) << row.id;
        for (std::size_t i = 0; i < found.size(); ++i) {
            EXPECT_NEAR(found[i], expected[i], row.within() + 1e-9) << row.id << " " << row.source;
        }
    }
    EXPECT_EQ(met, 13);
}

TEST(IncrementalArea, of_fewer_than_two_points_is_nothing) {
    EXPECT_EQ(incremental_area({}, 5), 0);
    EXPECT_EQ(total_area(Curve{{0, 5}}), 0);
    EXPECT_EQ(area_above_minimum({}), 0);
}

// The naive second way: a thousand thin strips to each line.
RC_GTEST_PROP(IncrementalArea, agrees_with_thin_strips, ()) {
    const auto levels = *rc::gen::container<std::vector<int>>(7, rc::gen::inRange(40, 200));
    Curve curve;
    for (std::size_t i = 0; i < levels.size(); ++i) {
        curve.push_back({15.0 * static_cast<double>(i), static_cast<double>(levels[i])});
    }
    double strips = 0;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        for (int s = 0; s < 1000; ++s) {
            const double share = (s + 0.5) / 1000;
            const double level = curve[i - 1].level + share * (curve[i].level - curve[i - 1].level);
            strips += std::max(0.0, level - curve[0].level) * 15 / 1000;
        }
    }
    RC_ASSERT(std::abs(strips - incremental_area(curve, curve[0].level)) < 0.05);
}
