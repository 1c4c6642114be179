// Finger-pricks in a file's own column: what the meter showed instead of a number.
#include "diary/finger_prick.hpp"
#include "intake/intake_for_tests.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace tracewright {
namespace {

using testing::read;

const std::string rows =
    "time,glucose mg/dL,finger-prick mg/dL\n"
    "2026-03-02 08:00,120,112\n2026-03-02 08:15,121,LO\n2026-03-02 08:30,122,HI\n"
    "2026-03-02 08:45,123,<20\n2026-03-02 09:00,124,>600\n2026-03-02 09:15,125,\n";

// Safety rule 2: a LOW of unknown floor counts as very low; a HI is never read as nought.
TEST(FingerPrickFile, a_meter_that_shows_no_number_is_beyond_its_limit) {
    const Intake intake = read(rows);
    ASSERT_FALSE(intake.error);
    ASSERT_EQ(intake.diary.size(), 5U);
    constexpr std::array limits = {MeterLimit::none, MeterLimit::shows_low, MeterLimit::shows_high,
                                   MeterLimit::below_level, MeterLimit::above_level};
    for (std::size_t i = 0; i < limits.size(); ++i) {
        const DiaryEntry& entry = intake.diary[i];
        ASSERT_EQ(entry.kind, DiaryKind::finger_prick) << i;
        EXPECT_EQ(meter_limit(entry), limits[i]) << i;
        EXPECT_EQ(has_measured_level(entry), limits[i] == MeterLimit::none) << i;
        ASSERT_TRUE(entry.glucose) << i;
        const bool very_low = entry.glucose->in(GlucoseUnit::mg_per_dl) < 54;
        EXPECT_EQ(very_low, i == 1 || i == 3) << i;
        EXPECT_EQ(entry.glucose->in(GlucoseUnit::mg_per_dl) > 300, i == 2 || i == 4) << i;
    }
}

// Interchange 4.4 row 17: where a kind separates sensor and finger-prick, both are stored.
TEST(FingerPrickFile, a_kind_separates_a_meters_level_from_the_sensors) {
    struct Case {
        const char* header;
        const char* sensor;  // before its value
        const char* meter;
    };
    constexpr std::array cases = {
        Case{"time,type,glucose (mg/dL)", "sensor", "finger-prick"},
        Case{"time,source,glucose (mg/dL)", "sensor", "meter"},
        Case{"time,kind,value mg/dL", "sensor", "calibration"},
        Case{"time,type,value mg/dL", "CGM", "BGM"},
        Case{"time,type,value mg/dL", "sensor glucose", "blood glucose"},
        Case{"Zeit,Art,Glukose mg/dL", "Sensor", "Blutzucker"},
    };
    for (const Case& one : cases) {
        SCOPED_TRACE(one.header + std::string(" ") + one.meter);
        std::string text = one.header + std::string("\n");
        for (int i = 10; i < 40; ++i) {
            text += "2026-03-02 14:" + std::to_string(i) + "," + one.sensor + "," +
                    std::to_string(100 + i) + "\n";
        }
        text += std::string("2026-03-02 14:20,") + one.meter + ",47\n";
        const Intake intake = read(text);
        ASSERT_FALSE(intake.error);
        EXPECT_EQ(intake.readings.size(), 30U);
        EXPECT_TRUE(intake.held.empty());
        ASSERT_EQ(intake.diary.size(), 1U);
        EXPECT_EQ(intake.diary[0].kind, DiaryKind::finger_prick);
        ASSERT_TRUE(intake.diary[0].glucose);
        EXPECT_EQ(intake.diary[0].glucose->hundredths, 4700);
    }
}

TEST(FingerPrickFile, blood_glucose_alone_among_the_kinds_is_the_trace) {
    const Intake intake = read(
        "time,type,value mg/dL\n2026-03-02 14:00,blood glucose,100\n"
        "2026-03-02 14:05,blood glucose,104\n2026-03-02 14:10,meal,\n");
    ASSERT_FALSE(intake.error);
    EXPECT_EQ(intake.readings.size(), 2U);
    EXPECT_EQ(intake.diary.size(), 1U);
}

TEST(FingerPrickFile, an_event_of_the_sensor_without_a_level_stays_one) {
    const Intake intake = read(
        "time,type,glucose (mg/dL),note\n2026-03-02 14:00,sensor,100,\n"
        "2026-03-02 14:05,sensor,104,\n2026-03-02 14:10,sensor,,changed\n");
    ASSERT_FALSE(intake.error);
    EXPECT_EQ(intake.readings.size(), 2U);
    ASSERT_EQ(intake.diary.size(), 1U);
    EXPECT_EQ(intake.diary[0].kind, DiaryKind::sensor);
}

// Read as mg/dL, 6.2 mmol/L is a very low that nobody had.
TEST(FingerPrickFile, the_unit_that_no_title_tells_is_told_by_the_levels) {
    const auto first_level = [](const std::string& text) {
        const Intake intake = read(text);
        EXPECT_FALSE(intake.error) << text;
        return intake.diary.empty() || !intake.diary[0].glucose ? Glucose{}
                                                                : *intake.diary[0].glucose;
    };
    const Glucose mmol{620, GlucoseUnit::mmol_per_l};
    const std::string two = "2026-03-02 08:00,6.2\n2026-03-02 13:00,8.2\n";
    EXPECT_EQ(first_level("time,finger-prick\n" + two), mmol);
    EXPECT_EQ(first_level("time,kind,value\n2026-03-02 08:00,finger-prick,6.2\n"
                          "2026-03-02 13:00,finger-prick,8.2\n"),
              mmol);
    EXPECT_EQ(first_level("time,sensor glucose (mg/dL),finger-prick\n2026-03-02 08:00,110,6.2\n"
                          "2026-03-02 08:15,120,\n2026-03-02 08:30,121,\n"),
              mmol);
    // 20 can be shown in either unit: it stays in the sensor's, and very low leads.
    EXPECT_EQ(first_level("time,sensor glucose (mg/dL),finger-prick\n2026-03-02 08:00,60,20\n"
                          "2026-03-02 08:15,66,\n2026-03-02 08:30,72,\n"),
              (Glucose{2000, GlucoseUnit::mg_per_dl}));
    EXPECT_TRUE(read("time,finger-prick\n2026-03-02 08:00,30\n").error);
}

}  // namespace
}  // namespace tracewright
