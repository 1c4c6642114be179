// What may stand behind a time to say of which zone it is (interchange, section 4.3: RFC 9557, and
// abbreviations that no zone is stored by). All files are invented.
#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

constexpr Instant morning{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2} + 8h};

Intake with(const std::string& behind) {
    return read("time,glucose mg/dL\n2026-03-02 08:00" + behind + ",100\n2026-03-02 08:15" +
                    behind + ",104\n",
                in_berlin());
}

}  // namespace

TEST(ZoneBehindTime, as_an_offset_is_read) {
    const struct {
        const char* behind;
        std::chrono::seconds east;
    } table[] = {{" UTC+1", 1h},     {" GMT+0100", 1h},
                 {" UTC+01:00", 1h}, {" UTC-5", -5h},
                 {" UTC", 0h},       {" GMT", 0h},
                 {" +0000 UTC", 0h}, {" +0100 CET", 1h},
                 {" AM UTC+1", 1h},  {"[America/New_York]", -5h}};
    for (const auto& [behind, east] : table) {
        const Intake intake = with(behind);
        ASSERT_EQ(intake.readings.size(), 2U) << behind;
        EXPECT_EQ(intake.readings[0].at, morning - east) << behind;
        EXPECT_EQ(intake.readings[1].at - intake.readings[0].at, 15min) << behind;
    }
}

TEST(ZoneBehindTime, as_an_abbreviation_is_refused_by_its_name) {
    for (const char* name : {"CET", "EST", "MEZ", "AEST"}) {
        const Intake intake = with(std::string(" ") + name);
        EXPECT_EQ(count(intake, Fate::rejected), 2U) << name;
        const RowNote& refused = note(intake, "zone_abbreviation");
        EXPECT_EQ(refused.line, 2U);
        EXPECT_EQ(refused.column, 1U);
        EXPECT_THAT(refused.found, HasSubstr(name));
        EXPECT_THAT(refused.expected, HasSubstr("+01:00"));
        EXPECT_THAT(refused.expected, HasSubstr("--zone"));
        expect_sums(intake);
        EXPECT_FALSE(written_time(std::string("2026-03-02 08:00 ") + name)) << name;
    }
}

TEST(ZoneBehindTime, that_contradicts_the_offset_is_told_or_if_critical_rejects) {
    const Intake told = with("+01:00[America/New_York]");
    ASSERT_EQ(told.readings.size(), 2U);
    EXPECT_EQ(told.readings[0].at, morning - 1h);
    EXPECT_EQ(code(told, "zone_contradicts_offset"), 2U);
    EXPECT_THAT(note(told, "zone_contradicts_offset").expected, HasSubstr("UTC-05:00"));
    for (const char* critical : {"+01:00[!America/New_York]", "+01:00[!Nowhere/Land]"}) {
        const Intake intake = with(critical);
        EXPECT_EQ(count(intake, Fate::rejected), 2U) << critical;
        EXPECT_EQ(note(intake, "zone_contradicts_offset").line, 2U);
        EXPECT_EQ(note(intake, "zone_contradicts_offset").column, 1U);
        expect_sums(intake);
    }
    for (const char* agrees : {"+01:00[Europe/Berlin]", "+01:00[!Europe/Berlin]",
                               "Z[!America/New_York]", "+01:00[Europe/Berlin][u-ca=gregory]"}) {
        EXPECT_EQ(with(agrees).readings.size(), 2U) << agrees;
        EXPECT_EQ(code(with(agrees), "zone_contradicts_offset"), 0U) << agrees;
    }
}
