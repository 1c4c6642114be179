#include "sensor.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

using namespace tracewright;
using namespace std::chrono_literals;

namespace {

const Instant start{std::chrono::sys_days{std::chrono::year{2026} / 1 / 5}};

std::vector<SensorReading> worn(const std::vector<double>& plasma, const SensorKind& kind,
                                double bias = 1, std::vector<SensorFault> faults = {}) {
    Draws draws(3, "sensor test");
    return sensed(plasma, start, kind, bias, faults, draws);
}

double mean_of(const std::vector<SensorReading>& readings) {
    double sum = 0;
    for (const auto& reading : readings) {
        sum += reading.mg_per_dl;
    }
    return sum / static_cast<double>(readings.size());
}

}  // namespace

TEST(Sensor, reports_at_its_interval_from_one_interval_on) {
    for (const auto& kind : {one_minute_sensor(), five_minute_sensor(), fifteen_minute_sensor()}) {
        const auto readings = worn(std::vector<double>(24 * 60 + 1, 150), kind);
        ASSERT_EQ(readings.size(), static_cast<std::size_t>(1440 / kind.interval.count()));
        EXPECT_EQ(readings.front().at, start + kind.interval);
        EXPECT_EQ(readings.back().at, start + 24h);
    }
    EXPECT_TRUE(worn({}, five_minute_sensor()).empty());
    EXPECT_TRUE(worn({150, 150}, five_minute_sensor()).empty());
}

// The noise that was asked for: SD 6 mg/dL, 0.7 from one five minutes to the next (ours).
TEST(Sensor, adds_noise_of_the_size_and_memory_told) {
    const auto readings = worn(std::vector<double>(200 * 1440, 150), five_minute_sensor());
    const double mean = mean_of(readings);
    double variance = 0;
    double product = 0;
    for (std::size_t i = 0; i + 1 < readings.size(); ++i) {
        const double here = readings[i].mg_per_dl - mean;
        variance += here * here;
        product += here * (readings[i + 1].mg_per_dl - mean);
    }
    EXPECT_NEAR(mean, 150, 0.3);
    EXPECT_NEAR(std::sqrt(variance / static_cast<double>(readings.size())), 6, 0.15);
    EXPECT_NEAR(product / variance, 0.7, 0.02);
}

TEST(Sensor, is_off_by_the_wears_factor) {
    const std::vector<double> plasma(20 * 1440, 150);
    EXPECT_NEAR(mean_of(worn(plasma, five_minute_sensor(), 1.08)), 162, 0.6);
}

TEST(Sensor, is_behind_by_its_lag) {
    // A steady climb of 1 mg/dL a minute is met late by the lag of a first-order follower.
    std::vector<double> climb;
    for (int minute = 0; minute <= 240; ++minute) {
        climb.push_back(100 + minute);
    }
    double behind = 0;
    int seen = 0;
    for (int round = 0; round < 200; ++round) {
        Draws draws(static_cast<std::uint64_t>(round), "lag");
        const auto readings = sensed(climb, start, five_minute_sensor(), 1, {}, draws);
        behind += 340 - readings.back().mg_per_dl;
        ++seen;
    }
    // In steps of a minute the follower of 8 minutes is behind by 7.
    EXPECT_NEAR(behind / seen, 7, 1.5);
}

TEST(Sensor, says_low_and_high_beyond_its_limits) {
    for (const auto& reading : worn(std::vector<double>(300, 10), five_minute_sensor())) {
        EXPECT_EQ(reading.beyond, SensorReading::Beyond::low);
        EXPECT_EQ(reading.mg_per_dl, 40);
    }
    for (const auto& reading : worn(std::vector<double>(300, 450), five_minute_sensor())) {
        EXPECT_EQ(reading.beyond, SensorReading::Beyond::high);
        EXPECT_EQ(reading.mg_per_dl, 400);
    }
    for (const auto& reading : worn(std::vector<double>(300, 450), fifteen_minute_sensor())) {
        EXPECT_EQ(reading.beyond, SensorReading::Beyond::no);
    }
}

TEST(Sensor, is_silent_where_told_and_only_there) {
    const auto readings = worn(std::vector<double>(600, 150), five_minute_sensor(), 1,
                               {{{start + 1h, start + 2h}, 0}});
    for (const auto& reading : readings) {
        EXPECT_FALSE(start + 1h <= reading.at && reading.at < start + 2h);
    }
    EXPECT_EQ(readings.size(), 119U - 12U);
}

// An abrupt fall and an abrupt return, as described by Baysal et al. 2014, J Diabetes Sci Technol
// 8:1091, 10.1177/1932296814553267; depth and ramps are ours.
TEST(Sensor, pressed_on_falls_and_comes_back_within_minutes) {
    const std::vector<double> plasma(600, 150);
    const auto plain = worn(plasma, one_minute_sensor());
    const auto pressed =
        worn(plasma, one_minute_sensor(), 1, {{{start + 1h, start + 1h + 40min}, 45}});
    ASSERT_EQ(plain.size(), pressed.size());
    for (std::size_t i = 0; i < plain.size(); ++i) {
        const auto minute = (plain[i].at - start) / 1min;
        const double fall = plain[i].mg_per_dl - pressed[i].mg_per_dl;
        if (minute <= 60 || minute >= 100) {
            EXPECT_EQ(fall, 0) << minute;
        } else if (minute >= 70 && minute <= 90) {
            EXPECT_NEAR(fall, 45, 1) << minute;
        }
    }
}
