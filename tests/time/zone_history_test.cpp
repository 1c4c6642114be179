#include "time/zone_history.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;
using namespace std::chrono;

namespace {

CivilDate on(int y, int m, int d) {
    return local_days{year{y} / m / d};
}

Instant utc(int y, int m, int d, int hh = 0, int mm = 0) {
    return sys_days{year{y} / m / d} + hours{hh} + minutes{mm};
}

ZoneHistory berlin() {
    return ZoneHistory{*Zone::named("Europe/Berlin")};
}

ZoneHistory new_york_then_berlin() {
    ZoneHistory zones{*Zone::named("America/New_York")};
    zones.change(utc(2026, 5, 10, 16), *Zone::named("Europe/Berlin"));  // noon in New York
    return zones;
}

}  // namespace

// Clock changes of the European Union: last Sundays of March and October at 01:00 UTC.
TEST(ZoneHistory, a_day_has_23_or_25_hours_across_a_clock_change) {
    EXPECT_EQ(berlin().day_of(on(2025, 10, 26)).length(), 25h);
    EXPECT_EQ(berlin().day_of(on(2026, 3, 29)).length(), 23h);
    EXPECT_EQ(berlin().day_of(on(2026, 3, 30)).length(), 24h);
}

TEST(ZoneHistory, the_weeks_of_the_clock_changes_have_169_and_167_hours) {
    const auto week = [](CivilDate from) {
        seconds total{0};
        for (int i = 0; i < 7; ++i) {
            total += berlin().day_of(from + days{i}).length();
        }
        return total;
    };
    EXPECT_EQ(week(on(2025, 10, 20)), 169h);
    EXPECT_EQ(week(on(2026, 3, 23)), 167h);
}

TEST(ZoneHistory, a_day_of_travel_east_is_as_short_as_it_was) {
    const ZoneHistory zones = new_york_then_berlin();
    EXPECT_EQ(zones.day_of(on(2026, 5, 10)).length(), 18h);
    EXPECT_EQ(zones.day_of(on(2026, 5, 9)).length(), 24h);
    EXPECT_EQ(zones.day_of(on(2026, 5, 11)).length(), 24h);
    EXPECT_EQ(zones.travel_days({utc(2026, 5, 1), utc(2026, 5, 20)}),
              std::vector<CivilDate>{on(2026, 5, 10)});
    EXPECT_EQ(zones.zones_in({utc(2026, 5, 1), utc(2026, 5, 20)}).size(), 2U);
    EXPECT_EQ(zones.zones_in({utc(2026, 5, 12), utc(2026, 5, 20)}).size(), 1U);
}

TEST(ZoneHistory, breakfast_the_next_morning_is_by_the_new_clock) {
    const ZoneHistory zones = new_york_then_berlin();
    EXPECT_EQ(zones.wall_time(utc(2026, 5, 11, 6)), local_days{year{2026} / 5 / 11} + 8h);
}

TEST(ZoneHistory, a_flight_back_across_midnight_does_not_bring_back_the_day_before) {
    ZoneHistory zones{*Zone::named("Europe/Berlin")};
    zones.change(utc(2026, 5, 10, 23), *Zone::named("America/New_York"));  // 01:00 on the 11th
    EXPECT_EQ(zones.date_at(utc(2026, 5, 10, 22, 30)), on(2026, 5, 11));
    EXPECT_EQ(zones.date_at(utc(2026, 5, 10, 23, 30)), on(2026, 5, 11));  // clock shows the 10th
    EXPECT_EQ(zones.day_of(on(2026, 5, 11)).length(), 30h);
}

TEST(ZoneHistory, changes_out_of_order_are_a_programmers_mistake) {
    ZoneHistory zones = new_york_then_berlin();
    EXPECT_THROW(zones.change(utc(2026, 5, 1), Zone::floating()), std::invalid_argument);
}

TEST(ZoneHistory, a_clock_window_lasts_as_long_as_it_lasted) {
    struct Row {
        const char* what;
        CivilDate day;
        hours begin, end;
        seconds length;
    };
    const Row rows[] = {
        {"a night of autumn has seven hours", on(2025, 10, 26), 0h, 6h, 7h},
        {"a night of spring has five", on(2026, 3, 29), 0h, 6h, 5h},
        {"the repeated hour lasts two", on(2025, 10, 26), 2h, 3h, 2h},
        {"the hour before it one", on(2025, 10, 26), 1h, 2h, 1h},
        {"the skipped hour none", on(2026, 3, 29), 2h, 3h, 0h},
        {"an afternoon is left alone", on(2026, 3, 29), 12h, 18h, 6h},
        {"the whole day is the day", on(2026, 3, 29), 0h, 24h, 23h},
    };
    for (const Row& row : rows) {
        const ZoneHistory zones = berlin();
        EXPECT_EQ(zones.clock_window(zones.day_of(row.day), row.begin, row.end).length(),
                  row.length)
            << row.what;
    }
}

TEST(ZoneHistory, hours_that_travel_jumped_over_are_empty) {
    const ZoneHistory zones = new_york_then_berlin();
    const CivilDay day = zones.day_of(on(2026, 5, 10));
    EXPECT_EQ(zones.clock_window(day, 12h, 18h).length(), 0h);
    EXPECT_EQ(zones.clock_window(day, 11h, 12h).length(), 1h);
    EXPECT_EQ(zones.clock_window(day, 18h, 24h).length(), 6h);
}

TEST(ZoneHistory, an_empty_window_has_no_days) {
    EXPECT_TRUE(berlin().days({utc(2026, 1, 2), utc(2026, 1, 2)}).empty());
}

RC_GTEST_PROP(ZoneHistory, the_hours_of_any_day_add_up_to_the_day, ()) {
    const char* const places[] = {"Europe/Berlin", "America/New_York", "Australia/Lord_Howe",
                                  "Asia/Kolkata", "America/St_Johns"};
    ZoneHistory zones{*Zone::named(places[*rc::gen::inRange(0, 5)])};
    const Instant start = utc(2020, 1, 1) + hours{*rc::gen::inRange(0, 40000)};
    if (*rc::gen::arbitrary<bool>()) {
        zones.change(start + hours{*rc::gen::inRange(1, 100)},
                     *Zone::named(places[*rc::gen::inRange(0, 5)]));
    }
    Instant reached = zones.days({start, start + 120h}).front().from;
    for (const CivilDay& day : zones.days({start, start + 120h})) {
        RC_ASSERT(day.from == reached);
        for (int h = 0; h < 24; ++h) {
            const Interval hour = zones.clock_window(day, hours{h}, hours{h + 1});
            RC_ASSERT(hour.length().count() == 0 || hour.from == reached);
            reached = std::max(reached, hour.to);
        }
        RC_ASSERT(reached == day.to);
    }
}

RC_GTEST_PROP(ZoneHistory, every_moment_lies_in_the_day_that_bears_its_date, ()) {
    ZoneHistory zones{*Zone::named("America/New_York")};
    zones.change(utc(2026, 5, 10, 16), *Zone::named("Europe/Berlin"));
    zones.change(utc(2026, 11, 20, 2), *Zone::named("America/New_York"));
    const Instant at = utc(2026, 1, 1) + minutes{*rc::gen::inRange(0, 600000)};
    const CivilDay day = zones.day_of(zones.date_at(at));
    RC_ASSERT(day.interval().contains(at));
}
