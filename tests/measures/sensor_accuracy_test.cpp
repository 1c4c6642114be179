// Sensor against blood: differences, agreement, the regulation's yardstick, error-grid letters.
// Rows and their sources: tests/data/glycaemia-checks.csv.
#include "measures/sensor_accuracy.hpp"

#include "inference/share_bounds.hpp"
#include "measures/check_table.hpp"
#include "measures/error_grid.hpp"
#include "measures/sensor_yardstick.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

std::vector<CheckRow> rows_from(const std::string& start) {
    std::vector<CheckRow> found;
    for (const CheckRow& row :
         check_rows(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/data/glycaemia-checks.csv")) {
        if (row.id.starts_with(start)) {
            found.push_back(row);
        }
    }
    return found;
}

CheckRow row_of(const std::string& id) {
    const auto rows = rows_from(id);
    return rows.at(0);
}

std::vector<AccuracyPair> pairs_of(const CheckRow& row, const std::string& other = "cgm") {
    const auto reference = row.list("ref");
    const auto sensor = row.list(other);
    std::vector<AccuracyPair> pairs;
    for (std::size_t i = 0; i < reference.size(); ++i) {
        pairs.push_back({Instant{std::chrono::minutes{i}}, reference[i], sensor[i]});
    }
    return pairs;
}

std::string zones_of(ErrorGrid grid, const CheckRow& row) {
    std::string zones;
    for (const std::string& pair : CheckRow::split(row.text("ref_test"), ';')) {
        const auto slash = pair.find('/');
        zones += zones.empty() ? "" : ";";
        zones +=
            error_zone(grid, std::stod(pair.substr(0, slash)), std::stod(pair.substr(slash + 1)));
    }
    return zones;
}

}  // namespace

TEST(SensorAccuracy, mard_1_and_the_limits_beside_it) {
    const CheckRow row = row_of("mard-1");
    const SensorAccuracy found = sensor_accuracy(pairs_of(row));
    const auto expected = CheckRow::numbers(row.expected);
    EXPECT_NEAR(found.mard, expected[0], row.within());
    EXPECT_NEAR(found.median_ard, expected[1], row.within());
    EXPECT_NEAR(found.mean_absolute, expected[2], row.within());
    EXPECT_NEAR(found.bias, expected[3], row.within());
    EXPECT_NEAR(found.mean_relative, expected[4], row.within());
    const auto limits = CheckRow::numbers(row_of("ba-1").expected);
    ASSERT_TRUE(found.limits);
    EXPECT_NEAR(found.limits->sd, limits[1], 1e-4);
    EXPECT_NEAR(found.limits->limits[0], limits[2], 1e-4);
    EXPECT_NEAR(found.limits->limits[1], limits[3], 1e-4);
    EXPECT_EQ(found.carry, PairsCarry::nothing);
    EXPECT_EQ(sensor_accuracy({}).pairs, 0U);
}

TEST(SensorAccuracy, agreement_by_the_cut_of_100_and_of_70) {
    for (const auto& [id, cut] : {std::pair{"agree-100", 100.0}, {"agree-70", 70.0}}) {
        const CheckRow row = row_of(id);
        const SensorAccuracy found = sensor_accuracy(pairs_of(row), cut);
        const auto expected = CheckRow::numbers(row.expected);
        for (std::size_t i = 0; i < 4; ++i) {
            EXPECT_NEAR(found.agreeing[i], expected[i], row.within()) << id << i;
        }
        EXPECT_EQ(found.carry, PairsCarry::description);
    }
}

TEST(SensorAccuracy, iso_15197_counts_the_edge_in) {
    const CheckRow row = row_of("iso15197");
    const auto expected = row.expected_texts();
    const auto pairs = pairs_of(row, "meter");
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        EXPECT_EQ(within_iso_15197(pairs[i].reference, pairs[i].sensor), expected[i] == "yes") << i;
    }
}

TEST(SensorAccuracy, finger_pricks_pair_with_the_nearest_reading_and_only_once) {
    std::vector<Reading> readings;
    for (int i = 0; i < 12; ++i) {
        readings.emplace_back(Instant{std::chrono::minutes{5 * i}},
                              Glucose{(100 + i) * 100, GlucoseUnit::mg_per_dl},
                              std::chrono::minutes{5}, i == 8 ? Limit::above : Limit::none);
    }
    Diary diary;
    for (const int minute : {6, 8, 40, 300}) {
        DiaryEntry entry;
        entry.kind = DiaryKind::finger_prick;
        entry.at = Instant{std::chrono::minutes{minute}};
        entry.glucose = Glucose{11000, GlucoseUnit::mg_per_dl};
        diary.push_back(entry);
    }
    const auto pairs = finger_prick_pairs_with(
        {readings, readings.front().at, readings.back().at + std::chrono::minutes{5}}, diary);
    ASSERT_EQ(pairs.size(), 1U);  // 8 is the same blood again, 40 meets HIGH, 300 nothing
    EXPECT_EQ(pairs[0].sensor, 101);
    EXPECT_EQ(pairs[0].reference, 110);
}

TEST(SensorYardstick, icgm_rules_are_those_of_the_table) {
    for (const YardstickRule& rule : yardstick_rules()) {
        const CheckRow row = row_of(std::string("icgm-") + rule.letter);
        EXPECT_EQ(rule.bound_above, std::stod(row.expected)) << rule.letter;
        EXPECT_EQ(row.text("tolerance"), std::to_string(static_cast<int>(rule.tolerance)) +
                                             (rule.in_percent ? " %" : " mg/dL"));
        const std::string stratum = rule.from > 100    ? ">180"
                                    : rule.up_to < 70  ? "<70"
                                    : rule.up_to < 200 ? "70-180"
                                                       : "all";
        EXPECT_EQ(row.text("stratum"), stratum) << rule.letter;
    }
    EXPECT_EQ(row_of("icgm-H").expected, "0");
    EXPECT_EQ(row_of("icgm-I").expected, "0");
}

TEST(SensorYardstick, counts_by_the_sensors_value_and_needs_enough_pairs) {
    std::vector<AccuracyPair> pairs(18, {{}, 60, 62});
    EXPECT_FALSE(sensor_yardstick(pairs).results[0].met);  // 18 of 18 can't show 85 %
    pairs.push_back({{}, 60, 62});
    EXPECT_TRUE(sensor_yardstick(pairs).results[0].met);  // 19 can: lb-min-n
    pairs.push_back({{}, 200, 60});
    const Yardstick found = sensor_yardstick(pairs);
    EXPECT_EQ(found.results[0].pairs, 20);  // reference 200, but the sensor said 60
    EXPECT_EQ(found.sensor_low_reference_high, 1);
    EXPECT_EQ(found.sensor_high_reference_low, 0);
}

TEST(ShareBounds, lb_rows_by_the_exact_bound) {
    for (const CheckRow& row : rows_from("lb-")) {
        if (row.id == "lb-min-n") {
            const double shares[] = {0.70, 0.80, 0.85, 0.87, 0.98, 0.99};
            const auto expected = CheckRow::numbers(row.expected);
            for (std::size_t i = 0; i < 6; ++i) {
                EXPECT_EQ(looks_needed(shares[i]), expected[i]);
            }
            continue;
        }
        EXPECT_NEAR(lower_bound_of_share(static_cast<int>(row.number("k")),
                                         static_cast<int>(row.number("n"))),
                    CheckRow::numbers(row.expected)[0], row.within())
            << row.id;  // the first of three; Wilson's and the normal one are not used
    }
}

TEST(ErrorGrid, parkes_and_clarke_letters_of_the_table) {
    EXPECT_EQ(zones_of(ErrorGrid::consensus_type_1, row_of("parkes-1")),
              row_of("parkes-1").expected);
    EXPECT_EQ(zones_of(ErrorGrid::consensus_type_2, row_of("parkes-2")),
              row_of("parkes-2").expected);
    EXPECT_EQ(zones_of(ErrorGrid::clarke, row_of("clarke")), row_of("clarke").expected);
    const auto edge = CheckRow::numbers(row_of("parkes-edge").expected);
    EXPECT_NEAR(upper_line_of_zone_b(ErrorGrid::consensus_type_1, 240), edge[0], 0.001);
    EXPECT_NEAR(upper_line_of_zone_b(ErrorGrid::consensus_type_2, 240), edge[1], 0.001);
}

// Whatever the vertices: nested, zones only one apart from neighbours, the diagonal all A.
TEST(ErrorGrid, consensus_zones_grow_worse_one_by_one_away_from_the_diagonal) {
    for (const ErrorGrid grid : {ErrorGrid::consensus_type_1, ErrorGrid::consensus_type_2}) {
        for (int x = 1; x <= 600; ++x) {
            EXPECT_EQ(error_zone(grid, x, x), 'A');
            char last = 'A';
            for (double y = x; y <= 700; y += 0.25) {
                const char zone = error_zone(grid, x, y);
                ASSERT_GE(zone, last) << x << "/" << y;
                last = zone;
            }
            last = 'A';
            for (double y = x; y >= 0; y -= 0.25) {
                const char zone = error_zone(grid, x, y);
                ASSERT_GE(zone, last) << x << "/" << y;
                ASSERT_NE(zone, 'E');  // none below in either
                last = zone;
            }
        }
    }
}
