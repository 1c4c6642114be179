// Times whose distance from UTC a title or a column beside them tells (interchange, section 4.3:
// the client's zone is for times without one). All files are invented.
#include "intake/intake_for_tests.hpp"
#include "intake/offset_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

using std::chrono::seconds;

constexpr Instant morning{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2} + 8h};

const Guess* guess(const Intake& intake, std::string_view what) {
    const auto found = std::ranges::find(intake.guesses, what, &Guess::what);
    return found == intake.guesses.end() ? nullptr : &*found;
}

// Two rows at 08:00 and 08:15 under a title of times.
std::string titled(const std::string& title) {
    return title + ",glucose mg/dL\n2026-03-02 08:00,100\n2026-03-02 08:15,104\n";
}

std::string with_column(const std::string& title, const std::string& first,
                        const std::string& second) {
    return "time," + title + ",glucose mg/dL\n2026-03-02 08:00," + first +
           ",100\n2026-03-02 08:15," + second + ",104\n";
}

}  // namespace

TEST(ToldOffset, in_a_title_holds_for_its_times) {
    const struct {
        const char* title;
        seconds east;
        const char* found;
    } table[] = {{"Time (UTC)", 0s, "UTC"},
                 {"Time GMT", 0s, "UTC"},
                 {"timestamp_utc", 0s, "UTC"},
                 {"UTC time", 0s, "UTC"},
                 {"timeUTC", 0s, "UTC"},
                 {"utcTime", 0s, "UTC"},
                 {"Zeit [UTC]", 0s, "UTC"},
                 {"UTC-Zeit", 0s, "UTC"},
                 {"Time (UTC+1)", 1h, "UTC+01:00"},
                 {"Time (GMT-05:00)", -5h, "UTC-05:00"}};
    for (const auto& [title, east, found] : table) {
        for (const bool fast : {true, false}) {
            IntakeOptions options = in_berlin();
            options.fast = fast;
            const Intake intake = read(titled(title), options);
            ASSERT_EQ(intake.readings.size(), 2U) << title;
            EXPECT_EQ(intake.readings[0].at, morning - east) << title;
            ASSERT_TRUE(guess(intake, "times")) << title;
            EXPECT_EQ(guess(intake, "times")->found, found);
            EXPECT_EQ(guess(intake, "times")->sure, "certain");
            EXPECT_EQ(guess(intake, "time zone")->found, "Europe/Berlin");
        }
    }
    for (const char* title : {"time", "Time (local)", "Zeit", "Time by a Dutch clock"}) {
        const Intake intake = read(titled(title), in_berlin());
        EXPECT_EQ(intake.readings.at(0).at, morning - 1h) << title;
        EXPECT_FALSE(guess(intake, "times")) << title;
    }
}

TEST(ToldOffset, in_a_title_without_a_zone_is_as_if_the_rows_told_it) {
    EXPECT_TRUE(read(titled("Time (UTC)")).in_utc);
    const Intake east = read(titled("Time (UTC+2)"));
    EXPECT_EQ(east.stands_at, seconds{2h});
    EXPECT_EQ(east.readings.at(0).at, morning);  // by the clock that the rows show
    IntakeOptions options;
    options.without_zone = WithoutZone::ask;
    EXPECT_TRUE(asks(read(titled("Time (UTC)"), options), "zone"));
}

TEST(ToldOffset, of_a_row_itself_comes_before_that_of_the_title) {
    const Intake intake =
        read("Time (UTC),glucose mg/dL\n2026-03-02 08:00,100\n2026-03-02T09:15:00+01:00,104\n",
             in_berlin());
    ASSERT_EQ(intake.readings.size(), 2U);
    EXPECT_EQ(intake.readings[1].at - intake.readings[0].at, 15min);
}

TEST(ToldOffset, in_the_titles_of_dates_and_clocks_is_the_same) {
    for (const char* titles : {"Date,Time (UTC)", "Date (UTC),Time (UTC)", "Date UTC,Time UTC"}) {
        const Intake intake =
            read(std::string(titles) + ",glucose mg/dL\n2026-03-02,08:00,100\n", in_berlin());
        ASSERT_EQ(intake.readings.size(), 1U) << titles;
        EXPECT_EQ(intake.readings[0].at, morning) << titles;
    }
    const Intake cell = read(
        "Date,Time,glucose mg/dL\n2026-03-02,08:00Z,100\n2026-03-02,08:15Z,100\n", in_berlin());
    ASSERT_EQ(cell.readings.size(), 2U);
    EXPECT_EQ(cell.readings[0].at, morning);
}

TEST(ToldOffset, holds_for_the_end_of_a_night_as_well) {
    const Intake intake = read(
        "Bedtime (UTC),Wake time (UTC)\n2026-03-01 22:00,2026-03-02 06:00\n"
        "2026-03-02 22:00,2026-03-03 06:00\n",
        in_berlin());
    ASSERT_EQ(intake.diary.size(), 2U);
    EXPECT_EQ(intake.diary[0].at, morning - 10h);
    EXPECT_EQ(intake.diary[0].until, morning - 2h);
}

TEST(ToldOffset, gives_way_to_a_column_of_the_local_clock) {
    for (const char* titles : {"UTC time,Local time", "Time (UTC),Time (local)",
                               "Timestamp UTC,Local time", "GMT time,lokale Zeit"}) {
        const Intake intake = read(std::string(titles) +
                                       ",glucose mg/dL\n2026-03-02 07:00,2026-03-02 "
                                       "08:00,100\n2026-03-02 07:15,2026-03-02 "
                                       "08:15,101\n",
                                   in_berlin());
        ASSERT_EQ(intake.readings.size(), 2U) << titles;
        EXPECT_EQ(intake.readings[0].at, morning - 1h) << titles;
        EXPECT_EQ(intake.columns[0].role, "ignored") << titles;
    }
}

TEST(ToldOffset, in_a_column_holds_row_by_row) {
    const struct {
        const char* title;
        const char* first;
        const char* second;
        seconds east;
    } table[] = {{"UTC offset", "-05:00", "-05:00", -5h},
                 {"utc_offset", "+0530", "+0530", 5h + 30min},
                 {"Time zone", "UTC+1", "GMT+0100", 1h},
                 {"Zeitzone", "+2", "+02:00", 2h},
                 {"tz offset", "3", "3", 3h},
                 {"timezone", "UTC", "Z", 0h},
                 {"what this is nobody knows", "-03:00", "-03:00", -3h}};
    for (const auto& [title, first, second, east] : table) {
        const Intake intake = read(with_column(title, first, second), in_berlin());
        ASSERT_EQ(intake.readings.size(), 2U) << title;
        EXPECT_EQ(intake.readings[0].at, morning - east) << title;
        EXPECT_EQ(intake.readings[1].at, morning + 15min - east) << title;
        EXPECT_EQ(intake.columns[1].role, "offset") << title;
        EXPECT_EQ(code(intake, "offset_not_applied"), 0U) << title;
        ASSERT_TRUE(guess(intake, "times")) << title;
        EXPECT_THAT(guess(intake, "times")->why, HasSubstr(title));
    }
    const Intake set_back = read(with_column("UTC offset", "+02:00", "+01:00"), in_berlin());
    ASSERT_EQ(set_back.readings.size(), 2U);
    EXPECT_EQ(set_back.readings[1].at - set_back.readings[0].at, 75min);
    EXPECT_EQ(read(with_column("UTC offset", "-05:00", "-05:00")).stands_at, seconds{-5h});
}

TEST(ToldOffset, in_a_column_beside_times_in_utc_is_that_of_the_clock) {
    const Intake intake =
        read("Time (UTC),UTC offset,glucose mg/dL\n2026-03-02 08:00,-05:00,100\n");
    ASSERT_EQ(intake.readings.size(), 1U);
    EXPECT_EQ(intake.stands_at, seconds{-5h});
    EXPECT_EQ(intake.readings[0].at, morning - 5h);
}

TEST(ToldOffset, that_can_not_be_applied_is_told) {
    for (const char* zone : {"America/New_York", "EST", "-300", "summer"}) {
        const Intake intake = read(with_column("Time zone", zone, zone), in_berlin());
        EXPECT_EQ(intake.readings.at(0).at, morning - 1h) << zone;
        EXPECT_EQ(code(intake, "offset_not_applied"), 1U) << zone;
        const RowNote& told = note(intake, "offset_not_applied");
        EXPECT_EQ(told.line, 2U);
        EXPECT_EQ(told.column, 18U);  // behind 'YYYY-MM-DD HH:MM,'
        EXPECT_THAT(told.found, HasSubstr(zone));
        EXPECT_THAT(told.found, HasSubstr("2 rows"));
        expect_sums(intake);
    }
    const Intake partly = read(with_column("UTC offset", "+01:00", ""), in_berlin());
    EXPECT_EQ(partly.readings.size(), 2U);
    EXPECT_EQ(note(partly, "offset_not_applied").line, 3U);
    EXPECT_THAT(note(partly, "offset_not_applied").found, HasSubstr("nothing"));
    // The zone asked for says the same, and an empty column nothing.
    for (const char* zone : {"Europe/Berlin", ""}) {
        const Intake intake = read(with_column("Time zone", zone, zone), in_berlin());
        EXPECT_EQ(code(intake, "offset_not_applied"), 0U) << zone;
    }
}

TEST(ToldOffset, is_read_from_a_cell_or_not_at_all) {
    const struct {
        const char* text;
        std::optional<seconds> east;
    } table[] = {{"+01:00", 1h},
                 {"-0530", -(5h + 30min)},
                 {"UTC", 0s},
                 {"gmt+1", 1h},
                 {"UTC -05:00", -5h},
                 {"Z", 0s},
                 {"1", 1h},
                 {"05:30", 5h + 30min},
                 {"+15:59", 15h + 59min},
                 {"+16:00", {}},
                 {"+01:60", {}},
                 {"-300", {}},
                 {"3600", 1h},  // seconds
                 {"-18000", -5h},
                 {"19800", 5h + 30min},
                 {"3601", {}},
                 {"61200", {}},
                 {"+01:0", {}},
                 {"UTCX", {}},
                 {"CET", {}},
                 {"", {}},
                 {"+", {}},
                 {"UTC+", {}},
                 {"+01:00 Berlin", {}}};
    for (const auto& [text, east] : table) {
        const auto offset = offset_in_cell(text);
        EXPECT_EQ(offset.has_value(), east.has_value()) << text;
        EXPECT_EQ(offset ? offset->east : 0s, east.value_or(0s)) << text;
    }
    EXPECT_TRUE(offset_in_cell("-00:00")->utc);
    EXPECT_FALSE(offset_in_cell("+00:00")->utc);
}
