#include "measures/shown_range.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

using namespace testing;

struct Row {
    Glucose glucose;
    const char* part;
};

std::string part_of(const Glucose& glucose, const ShownRange& range) {
    const std::vector<Reading> readings{{midnight, glucose, std::chrono::minutes{5}}};
    const TimeByRange time =
        time_by_range({readings, midnight, midnight + std::chrono::minutes{5}}, range);
    return time.very_low.count() > 0    ? "very low"
           : time.low.count() > 0       ? "low"
           : time.in_range.count() > 0  ? "in range"
           : time.high.count() > 0      ? "high"
           : time.very_high.count() > 0 ? "very high"
                                        : "none";
}

// Source: Battelino et al. 2019, Diabetes Care 42:1593, 10.2337/dci19-0028, targets in pregnancy.
TEST(ShownRange, in_pregnancy_is_63_to_140_both_ends_in_by_the_unit_reported) {
    const ShownRange range = shown_range(consensus_goals(GoalKind::pregnancy));
    EXPECT_EQ(range, (ShownRange{63, 140}));
    const auto mg_ = [](int hundredths) { return Glucose{hundredths, GlucoseUnit::mg_per_dl}; };
    const auto mmol_ = [](int hundredths) { return Glucose{hundredths, GlucoseUnit::mmol_per_l}; };
    for (const Row& row :
         {Row{mg_(5300), "very low"}, Row{mg_(5400), "low"}, Row{mg_(6200), "low"},
          Row{mg_(6300), "in range"}, Row{mg_(14000), "in range"}, Row{mg_(14100), "high"},
          Row{mg_(26000), "high"}, Row{mmol_(290), "very low"}, Row{mmol_(340), "low"},
          Row{mmol_(350), "in range"}, Row{mmol_(780), "in range"}, Row{mmol_(790), "high"}}) {
        EXPECT_EQ(part_of(row.glucose, range), row.part) << row.glucose.hundredths;
    }
}

TEST(ShownRange, otherwise_the_parts_are_the_consensus_bands) {
    const ShownRange range = shown_range(consensus_goals(GoalKind::adults));
    std::vector<Reading> readings;
    for (int i = 0; i < 300; ++i) {
        readings.push_back({midnight + std::chrono::minutes{5 * i},
                            Glucose{3'000 + 100 * i, GlucoseUnit::mg_per_dl},
                            std::chrono::minutes{5}});
    }
    const TraceView view{readings, midnight, midnight + std::chrono::minutes{1500}};
    const TimeByRange time = time_by_range(view, range);
    const TimeInBands bands = time_in_bands(view);
    EXPECT_EQ(time.very_low, bands.in(Band::very_low));
    EXPECT_EQ(time.low, bands.in(Band::low));
    EXPECT_EQ(time.in_range, bands.in(Band::in_range));
    EXPECT_EQ(time.high, bands.in(Band::high));
    EXPECT_EQ(time.very_high, bands.in(Band::very_high));
    EXPECT_EQ(time.sensed(), bands.sensed());
}

}  // namespace
}  // namespace tracewright
