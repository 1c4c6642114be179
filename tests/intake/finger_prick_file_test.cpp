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

}  // namespace
}  // namespace tracewright
