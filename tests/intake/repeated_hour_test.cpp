// The hour that a clock shows twice when it is set back (interchange, section 4.3, "overlap", and
// 4.4, row 32). All files are invented.
#include "intake/repeated_hour.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <random>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

using std::chrono::minutes;
using std::chrono::seconds;

constexpr WallTime two{CivilDate{std::chrono::year{2025} / 10 / 26} + 2h};

// Minutes behind two o'clock.
RepeatedHour hour_of(const std::vector<int>& shown, std::optional<int> before = {},
                     std::optional<int> after = {}) {
    RepeatedHour hour{{}, 1h, {}, {}};
    for (const int minute : shown) {
        hour.walls.push_back(two + minutes{minute});
    }
    hour.before = before ? std::optional{two + minutes{*before}} : std::nullopt;
    hour.after = after ? std::optional{two + minutes{*after}} : std::nullopt;
    return hour;
}

struct Line {
    WallTime wall;
    int level;
    bool operator==(const Line&) const = default;
};

std::string text_of(const std::vector<Line>& lines) {
    std::string text = "time,glucose mg/dL\n";
    for (const auto& [wall, level] : lines) {
        const auto day = std::chrono::floor<std::chrono::days>(wall);
        const std::chrono::year_month_day ymd{day};
        const std::chrono::hh_mm_ss time{wall - day};
        char line[64];
        std::snprintf(line, sizeof line, "%04d-%02u-%02u %02d:%02d,%d\n",
                      static_cast<int>(ymd.year()), static_cast<unsigned>(ymd.month()),
                      static_cast<unsigned>(ymd.day()), static_cast<int>(time.hours().count()),
                      static_cast<int>(time.minutes().count()), level);
        text += line;
    }
    return text;
}

IntakeOptions in(const char* zone) {
    IntakeOptions options;
    options.zones = ZoneHistory{*Zone::named(zone)};
    return options;
}

// Rows of what a clock of the zone shows from `from` on, every row with a level of its own.
std::vector<Line> night(const char* zone, Instant from, minutes length, minutes step) {
    const ZoneHistory zones{*Zone::named(zone)};
    std::vector<Line> lines;
    for (Instant at = from; at < from + length; at += step) {
        lines.push_back({zones.wall_time(at), 70 + static_cast<int>(lines.size())});
    }
    return lines;
}

Instant utc(int month, int day, int hour) {
    return Instant{std::chrono::sys_days{std::chrono::year{2025} / month / day}} +
           std::chrono::hours{hour};
}

void expect_each_of(const std::vector<Line>& lines, Instant from, minutes step,
                    const Intake& intake) {
    EXPECT_EQ(count(intake, Fate::conflict), 0U);
    ASSERT_EQ(intake.readings.size(), lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        EXPECT_EQ(intake.readings[i].at, from + static_cast<int>(i) * step) << i;
        EXPECT_EQ(intake.readings[i].hundredths(), 100 * lines[i].level) << i;
    }
    expect_sums(intake);
}

std::vector<Line> joined(std::vector<Line> first, const std::vector<Line>& second) {
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

std::vector<Line> each_twice(const std::vector<Line>& lines) {
    std::vector<Line> twice;
    for (const Line& line : lines) {
        twice.insert(twice.end(), 2, line);
    }
    return twice;
}

std::vector<Line> backwards(std::vector<Line> lines) {
    std::ranges::reverse(lines);
    return lines;
}

// Rows of the hours away from the clock change in any order, the night itself as it is.
std::vector<Line> shuffled_by_day(std::vector<Line> lines, unsigned seed) {
    std::mt19937 random(seed);
    constexpr std::size_t calm = 36;
    std::ranges::shuffle(std::span(lines).first(calm), random);
    std::ranges::shuffle(std::span(lines).last(calm), random);
    return lines;
}

}  // namespace

TEST(RepeatedHour, is_parted_where_the_clock_was_set_back) {
    const struct {
        const char* what;
        std::vector<int> shown;
        std::optional<std::size_t> second;
    } table[] = {
        {"both showings whole", {0, 15, 30, 45, 0, 15, 30, 45}, 4},
        {"each row twice", {0, 0, 30, 30, 0, 0, 30, 30}, 4},
        {"rows missing before the step back", {0, 5, 10, 15, 20, 25, 0, 5, 10, 15, 20, 25}, 6},
        {"rows missing on both sides of it", {0, 10, 20, 30, 10, 20, 30, 40, 50}, 4},
        {"one row late within the first showing", {0, 10, 5, 15, 40, 55, 0, 5, 10, 40}, 6},
        {"one row late at its end", {0, 5, 15, 35, 45, 10, 0, 5, 10, 15, 35}, 6},
        {"one row late within the second", {0, 20, 40, 0, 40, 20, 50}, 3},
        {"the end of the second pasted once more", {0, 20, 40, 0, 20, 40, 20, 40}, 3},
        {"off the grid", {3, 18, 33, 48, 6, 21, 36, 51}, 4},
        {"two entries of a diary, half an hour back", {40, 10}, 1},
        {"two entries that may just be out of order", {20, 10}, {}},
        {"one row late", {0, 5, 15, 20, 25, 30, 35, 40, 45, 50, 55, 10}, {}},
        {"neighbours changed over", {5, 0, 15, 10, 25, 20, 35, 30}, {}},
        {"in order of the clock", {0, 0, 15, 15, 30, 30, 45, 45}, {}},
        {"one row", {30}, {}},
    };
    for (const auto& [what, shown, second] : table) {
        EXPECT_EQ(second_showing_from(hour_of(shown)), second) << what;
    }
}

TEST(RepeatedHour, shown_once_belongs_to_the_rows_that_it_joins) {
    const std::vector<int> begun{0, 15, 30};
    EXPECT_EQ(second_showing_from(hour_of(begun, -15, 90)), 3U);
    EXPECT_EQ(second_showing_from(hour_of(begun, -15, {})), 3U);
    const std::vector<int> ended{15, 30, 45};
    EXPECT_EQ(second_showing_from(hour_of(ended, {}, 60)), 0U);
    EXPECT_EQ(second_showing_from(hour_of(ended, -60, 60)), 0U);
    const std::vector<int> whole{0, 15, 30, 45};
    EXPECT_FALSE(second_showing_from(hour_of(whole, -15, 60)));
    EXPECT_FALSE(second_showing_from(hour_of(whole, -90, 120)));
    EXPECT_FALSE(second_showing_from(hour_of({10, 20}, 0, {})));  // too few to have a step
}

TEST(RepeatedHour, on_a_grid_of_just_an_hour_is_one_time_shown_twice) {
    EXPECT_EQ(second_showing_from(hour_of({30, 30}, -30, 90)), 1U);
    EXPECT_FALSE(second_showing_from(hour_of({30, 30}, -20, 90)));
}

// Sensors of two kinds in one file: the step of the night is not that of most rows.
TEST(RepeatedHour, after_a_day_of_shorter_steps_is_told_apart_as_ever) {
    for (const auto& [zone, at] : {std::pair{"Europe/Berlin", utc(10, 26, 0)},
                                   std::pair{"America/New_York", utc(11, 2, 5)}}) {
        const auto day = night(zone, at - 24h, 300min, 5min);
        const auto change = night(zone, at - 2h, 300min, 15min);
        const Intake intake = read(text_of(joined(day, change)), in(zone));
        EXPECT_EQ(count(intake, Fate::stored), day.size() + change.size()) << zone;
        EXPECT_EQ(count(intake, Fate::conflict), 0U) << zone;
    }
}

// However rows of a trace are laid, they are its readings.
TEST(RepeatedHour, gives_the_readings_of_the_tidy_file_however_that_was_copied) {
    const struct {
        const char* zone;
        Instant at;
    } changes[] = {{"Europe/Berlin", utc(10, 26, 1)},
                   {"America/New_York", utc(11, 2, 6)},
                   {"Australia/Lord_Howe", utc(4, 5, 15)}};
    for (const auto& [zone, at] : changes) {
        for (const minutes step : {5min, 15min}) {
            const Instant from = at - 150 * step / 2;
            const std::vector<Line> tidy = night(zone, from, 150 * step, step);
            const auto half = static_cast<std::ptrdiff_t>(tidy.size() / 2);
            const std::vector<Line> scans = night(zone, from + 2min, 150 * step, step);
            const auto expect = [&](const char* how, const std::vector<Line>& copied) {
                SCOPED_TRACE(std::string(zone) + ", " + std::to_string(step.count()) + ", " + how);
                expect_each_of(tidy, from, step, read(text_of(copied), in(zone)));
            };
            expect("tidy", tidy);
            expect("backwards", backwards(tidy));
            expect("each row twice", each_twice(tidy));
            expect("each row twice, backwards", backwards(each_twice(tidy)));
            expect("pasted twice", joined(tidy, tidy));
            expect("pasted twice, backwards", backwards(joined(tidy, tidy)));
            expect("forwards and backwards", joined(tidy, backwards(tidy)));
            expect("its first half again", joined(tidy, {tidy.begin(), tidy.begin() + half}));
            for (const unsigned seed : {1U, 2U, 3U}) {
                expect("by day in any order", shuffled_by_day(tidy, seed));
                expect("by day in any order, twice",
                       joined(shuffled_by_day(tidy, seed), shuffled_by_day(tidy, seed + 9)));
            }
            const Intake both = read(text_of(joined(tidy, scans)), in(zone));
            EXPECT_EQ(both.readings.size(), tidy.size() + scans.size()) << zone;
        }
    }
}

TEST(RepeatedHour, of_rows_in_no_order_is_said_to_be_told_apart_by_nothing) {
    std::vector<Line> lines = night("Europe/Berlin", utc(10, 25, 12), 24h, 15min);
    std::mt19937 random(20251026);
    std::ranges::shuffle(lines, random);
    const Intake intake = read(text_of(lines), in_berlin());
    EXPECT_EQ(count(intake, Fate::conflict), 8U);
    EXPECT_EQ(count(intake, Fate::stored), lines.size() - 8);
    EXPECT_EQ(code(intake, "repeated_hour"), 8U);
    EXPECT_THAT(note(intake, "repeated_hour").expected, HasSubstr("by nothing"));
    expect_sums(intake);
}

// A grid that runs through the hour once: the device's clock was not set back, in a file that holds
// each row twice as well.
TEST(RepeatedHour, of_a_clock_that_did_not_change_is_no_hour_shown_twice) {
    std::vector<Line> lines = night("Etc/UTC", utc(10, 24, 0), 24h, 5min);
    const auto change = night("Etc/UTC", utc(10, 25, 20), 10h, 15min);
    lines.insert(lines.end(), change.begin(), change.end());
    for (const auto& copied : {lines, each_twice(lines), joined(lines, lines)}) {
        const Intake intake = read(text_of(copied), in_berlin());
        EXPECT_TRUE(intake.clock_did_not_change);
        EXPECT_EQ(intake.readings.size(), lines.size());
        EXPECT_EQ(code(intake, "repeated_hour"), 0U);
    }
}

// No hour above 12 and a step back: the zone explains both. In a zone whose clock was not set back
// that night, AM and PM are missing as in row 29.
TEST(RepeatedHour, is_no_sign_of_a_twelve_hour_clock) {
    const auto lines = night("Europe/Berlin", utc(10, 25, 23), 4h, 5min);
    for (const auto& copied : {lines, backwards(lines), each_twice(lines)}) {
        EXPECT_EQ(read(text_of(copied), in_berlin()).readings.size(), lines.size());
        EXPECT_TRUE(asks(read(text_of(copied), in("Asia/Tokyo")), "twelve_hour_clock"));
    }
}
