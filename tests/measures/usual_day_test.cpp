#include "measures/usual_day.hpp"

#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

const ZoneHistory floating{Zone::floating()};

std::vector<Reading> same_days(int days, double low, double high) {
    std::vector<double> values;
    for (int d = 0; d < days; ++d) {
        for (int i = 0; i < 96; ++i) {
            values.push_back(i < 48 ? low : high);
        }
    }
    return every(15min, values);
}

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

}  // namespace

TEST(UsualDay, lines_are_drawn_from_five_seven_and_ten_days_on) {
    struct Row {
        int days;
        bool median, inner, outer, dashed;
    };
    const Row rows[] = {{4, false, false, false, true},
                        {5, true, false, false, true},
                        {7, true, true, false, true},
                        {10, true, true, true, true},
                        {14, true, true, true, false}};
    for (const Row& row : rows) {
        const auto readings = same_days(row.days, 100, 150);
        const UsualDay usual = usual_day(view_of(readings), floating, GlucoseUnit::mg_per_dl);
        EXPECT_EQ(usual.bin[10].percentiles[2].has_value(), row.median) << row.days;
        EXPECT_EQ(usual.bin[10].percentiles[1].has_value(), row.inner) << row.days;
        EXPECT_EQ(usual.bin[10].percentiles[0].has_value(), row.outer) << row.days;
        EXPECT_EQ(usual.outer_dashed, row.dashed) << row.days;
        EXPECT_EQ(usual.bin[10].days, row.days);
    }
}

// Type 7 of 14 days in one bin: Hyndman & Fan 1996, 10.1080/00031305.1996.10473566.
TEST(UsualDay, a_bin_holds_the_published_percentiles_of_fourteen_days) {
    const std::vector<double> day_levels = {92,  95,  101, 104, 108, 112, 115,
                                            121, 126, 133, 140, 152, 168, 190};
    std::vector<double> values;
    for (const double level : day_levels) {
        values.insert(values.end(), 96, level);
    }
    const auto readings = every(15min, values);
    const UsualDay usual = usual_day(view_of(readings), floating, GlucoseUnit::mg_per_dl);
    const double expected[] = {93.95, 105.0, 118.0, 138.25, 175.7};
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_NEAR(*usual.bin[33].raw[i], expected[i], 1e-9);
        EXPECT_NEAR(*usual.bin[33].percentiles[i], expected[i],
                    1e-6);  // flat: smoothing changes nothing
    }
}

TEST(UsualDay, hours_not_seen_stay_empty) {
    auto readings = same_days(14, 100, 150);
    std::erase_if(readings, [](const Reading& r) {
        const auto hour = (r.at - midnight) % 24h;
        return hour >= 2h && hour < 4h;
    });
    const UsualDay usual = usual_day(view_of(readings), floating, GlucoseUnit::mg_per_dl);
    EXPECT_FALSE(usual.bin[10].percentiles[2].has_value());
    EXPECT_EQ(usual.bin[10].days, 0);
    EXPECT_TRUE(usual.bin[20].percentiles[2].has_value());
    EXPECT_NE(usual.smoothing.find("nothing across hours not seen"), std::string::npos);
}

TEST(UsualDay, bins_are_of_the_clients_clock) {
    const ZoneHistory new_york{*Zone::named("America/New_York")};
    const auto readings = same_days(14, 100, 150);  // changes at noon UTC: 07:00 in New York
    const UsualDay usual = usual_day(view_of(readings), new_york, GlucoseUnit::mg_per_dl);
    EXPECT_NEAR(*usual.bin[24].raw[2], 100, 1e-9);  // 06:00
    EXPECT_NEAR(*usual.bin[40].raw[2], 150, 1e-9);  // 10:00
}

RC_GTEST_PROP(UsualDay, percentiles_stay_in_order_after_smoothing, ()) {
    std::vector<double> values;
    for (int i = 0; i < 14 * 96; ++i) {
        values.push_back(*rc::gen::inRange(50, 350));
    }
    const auto readings = every(15min, values);
    for (const auto& bin : usual_day(view_of(readings), floating, GlucoseUnit::mg_per_dl).bin) {
        for (std::size_t i = 1; i < 5; ++i) {
            RC_ASSERT(*bin.percentiles[i - 1] <= *bin.percentiles[i]);
        }
    }
}
