#include "store/trace_block.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>

namespace tracewright {
namespace {

constexpr UtcDay day = UtcDay{std::chrono::days{20'000}};

Reading reading_at(int second, std::int32_t hundredths, int interval = 300,
                   GlucoseUnit unit = GlucoseUnit::mg_per_dl, Limit limit = Limit::none) {
    return {Instant{day} + std::chrono::seconds{second}, Glucose{hundredths, unit},
            std::chrono::seconds{interval}, limit};
}

std::vector<Reading> day_of_readings(int interval) {
    std::vector<Reading> readings;
    std::mt19937 draw(7);
    int level = 12'000;
    for (int second = 17; second < 86'400; second += interval) {
        level = std::clamp(level + (static_cast<int>(draw() % 9) - 4) * 100, 4'000, 39'000);
        readings.push_back(reading_at(second, level, interval));
    }
    return readings;
}

std::vector<Reading> unpacked(const Bytes& block) {
    std::vector<Reading> readings;
    const auto done = unpack_trace_block(block, day, readings);
    EXPECT_TRUE(done) << done.error();
    return readings;
}

TEST(TraceBlock, a_day_comes_back_as_it_was) {
    for (const int interval : {1, 60, 300, 900}) {
        const auto readings = day_of_readings(interval);
        EXPECT_EQ(unpacked(trace_block(day, readings)), readings) << interval;
    }
}

TEST(TraceBlock, units_limits_and_changed_intervals_in_one_day_come_back) {
    std::vector<Reading> readings{
        reading_at(0, 4'000, 300, GlucoseUnit::mg_per_dl, Limit::below),
        reading_at(86'000, 550, 60, GlucoseUnit::mmol_per_l),
        reading_at(86'001, 2'780, 900, GlucoseUnit::mmol_per_l, Limit::above),
        reading_at(86'399, 0, 1)};
    readings[3] = Reading(readings[3].at, readings[3].value(), std::chrono::seconds{64'800},
                          Limit::none, true);
    EXPECT_EQ(unpacked(trace_block(day, readings)), readings);
}

TEST(TraceBlock, a_day_of_five_minutes_takes_less_than_a_byte_a_reading) {
    const auto readings = day_of_readings(300);
    EXPECT_LT(trace_block(day, readings).size(), readings.size());
}

TEST(TraceBlock, every_flipped_bit_is_noticed) {
    const Bytes block = trace_block(day, day_of_readings(300));
    for (std::size_t i = 0; i < block.size(); ++i) {
        for (const unsigned bit : {0U, 3U, 7U}) {
            Bytes changed = block;
            changed[i] = static_cast<std::uint8_t>(changed[i] ^ (1U << bit));
            std::vector<Reading> readings{reading_at(1, 1)};
            EXPECT_FALSE(unpack_trace_block(changed, day, readings)) << i << " " << bit;
            EXPECT_EQ(readings.size(), 1U);
        }
    }
}

TEST(TraceBlock, a_block_cut_short_or_of_another_day_is_refused) {
    const Bytes block = trace_block(day, day_of_readings(900));
    std::vector<Reading> readings;
    for (std::size_t size = 0; size < block.size(); ++size) {
        EXPECT_FALSE(unpack_trace_block(std::span(block).first(size), day, readings)) << size;
    }
    const auto other = unpack_trace_block(block, day + std::chrono::days{1}, readings);
    ASSERT_FALSE(other);
    EXPECT_NE(other.error().find("another day"), std::string::npos);
}

TEST(TraceBlock, readings_out_of_order_or_of_another_day_are_a_mistake_of_the_caller) {
    const std::vector<Reading> twice{reading_at(5, 1), reading_at(5, 2)};
    EXPECT_THROW(trace_block(day, twice), std::invalid_argument);
    const std::vector<Reading> late{reading_at(86'400, 1)};
    EXPECT_THROW(trace_block(day, late), std::invalid_argument);
    EXPECT_THROW(trace_block(day, {}), std::invalid_argument);
}

RC_GTEST_PROP(TraceBlock, whatever_the_readings_they_come_back, ()) {
    const auto seconds =
        *rc::gen::nonEmpty(rc::gen::unique<std::vector<int>>(rc::gen::inRange(0, 86'400)));
    auto sorted = seconds;
    std::sort(sorted.begin(), sorted.end());
    std::vector<Reading> readings;
    for (const int second : sorted) {
        readings.emplace_back(
            Instant{day} + std::chrono::seconds{second},
            Glucose{*rc::gen::arbitrary<std::int32_t>(),
                    *rc::gen::element(GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l)},
            std::chrono::seconds{*rc::gen::inRange(0, 65'536)},
            *rc::gen::element(Limit::none, Limit::below, Limit::above),
            *rc::gen::arbitrary<bool>());
    }
    RC_ASSERT(unpacked(trace_block(day, readings)) == readings);
}

RC_GTEST_PROP(TraceBlock, any_bytes_are_refused_or_read_without_harm, ()) {
    auto bytes = *rc::gen::arbitrary<std::vector<std::uint8_t>>();
    bytes.insert(bytes.begin(), 1);
    std::vector<Reading> readings;
    RC_ASSERT(!unpack_trace_block(bytes, day, readings) || !readings.empty());
}

}  // namespace
}  // namespace tracewright
