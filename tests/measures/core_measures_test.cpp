#include "measures/core_measures.hpp"

#include "measures/measure_set.hpp"
#include "measures/time_in_bands.hpp"
#include "measures/usual_day.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <random>

namespace tracewright {
namespace {

using namespace testing;

const ZoneHistory floating{Zone::floating()};

std::vector<Reading> even(int count, int minutes, GlucoseUnit unit, unsigned seed,
                          int start_minute = 0) {
    std::mt19937 draw(seed);
    std::vector<Reading> readings;
    const int step = unit == GlucoseUnit::mg_per_dl ? 100 : 10;
    int level = unit == GlucoseUnit::mg_per_dl ? 130 : 75;
    for (int i = 0; i < count; ++i) {
        level = std::clamp(level + static_cast<int>(draw() % 15) - 7, 25, 380);
        readings.emplace_back(midnight + std::chrono::minutes{start_minute + i * minutes},
                              Glucose{level * step, unit}, std::chrono::minutes{minutes});
    }
    return readings;
}

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

// The naive second way is the full one: any trace that the quick way takes gives the same numbers.
RC_GTEST_PROP(CoreMeasures, are_those_of_the_full_way, ()) {
    const int minutes = *rc::gen::element(5, 15);
    const auto unit = *rc::gen::element(GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l);
    const auto readings = even(*rc::gen::inRange(1000, 4100), minutes, unit,
                               *rc::gen::arbitrary<unsigned>(), *rc::gen::inRange(0, 1440));
    const TraceView view = view_of(readings);
    const auto core = core_measures(view, floating);
    RC_ASSERT(core.has_value());
    const Measures full = measures_of(view, floating, {unit, false, 1});
    const auto near = [&](double value, const char* name) {
        return std::abs(value - *find(full, name)->value) <= 1e-9 * (1 + std::abs(value));
    };
    RC_ASSERT(near(core->mean, "mean") && near(core->sd, "sd") && near(core->cv, "cv") &&
              near(core->gmi, "gmi") && near(core->lbgi, "lbgi") && near(core->hbgi, "hbgi"));
    for (const Band band :
         {Band::very_low, Band::low, Band::in_range, Band::high, Band::very_high}) {
        RC_ASSERT(near(core->in_band[static_cast<std::size_t>(band)], name_of(band)));
    }
    const UsualDay usual = usual_day(view, floating, unit);
    for (std::size_t q = 0; q < CoreMeasures::quarter_hours; ++q) {
        for (std::size_t line = 0; line < 5; ++line) {
            if (usual.bin[q].raw[line]) {
                RC_ASSERT(std::abs(core->percentiles[q][line] - *usual.bin[q].raw[line]) < 1e-9);
            }
        }
    }
}

TEST(CoreMeasures, a_trace_that_is_not_even_is_left_to_the_full_way) {
    const auto plain = even(2000, 5, GlucoseUnit::mg_per_dl, 1);
    ASSERT_TRUE(core_measures(view_of(plain), floating));
    auto gap = plain;
    gap.erase(gap.begin() + 700);
    EXPECT_FALSE(core_measures(view_of(gap), floating));
    auto mixed = plain;
    mixed[5] = Reading(mixed[5].at, Glucose{550, GlucoseUnit::mmol_per_l}, mixed[5].interval());
    EXPECT_FALSE(core_measures(view_of(mixed), floating));
    auto broken = plain;
    broken[5] = Reading(broken[5].at, mg(999), broken[5].interval(), Limit::none, true);
    EXPECT_FALSE(core_measures(view_of(broken), floating));
    auto fine = plain;
    fine[5] = Reading(fine[5].at, Glucose{10'050, GlucoseUnit::mg_per_dl}, fine[5].interval());
    EXPECT_FALSE(core_measures(view_of(fine), floating));
    EXPECT_FALSE(core_measures({}, floating));
    const auto minutes = even(40'000, 1, GlucoseUnit::mg_per_dl, 1);  // 15 a quarter hour and day
    EXPECT_FALSE(core_measures(view_of(minutes), floating));
    const auto across = even(9'000, 5, GlucoseUnit::mg_per_dl, 1);  // over the clock change
    EXPECT_FALSE(core_measures(view_of(across), ZoneHistory(*Zone::named("Europe/Berlin"))));
}

}  // namespace
}  // namespace tracewright
