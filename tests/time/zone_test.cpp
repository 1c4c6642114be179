#include "time/zone.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace std::chrono;

namespace {

WallTime wall(int y, unsigned m, unsigned d, int hh, int mm) {
    return local_days{year{y} / static_cast<int>(m) / static_cast<int>(d)} + hours{hh} +
           minutes{mm};
}

Instant utc(int y, unsigned m, unsigned d, int hh, int mm) {
    return sys_days{year{y} / static_cast<int>(m) / static_cast<int>(d)} + hours{hh} + minutes{mm};
}

}  // namespace

TEST(Zone, what_is_no_zone_is_refused_with_what_was_found) {
    for (const char* name :
         {"Europe/Nowhere", "CET", "IST", "EST", "", "../etc/passwd", "Berlin"}) {
        const auto zone = Zone::named(name);
        ASSERT_FALSE(zone.has_value()) << name;
        EXPECT_NE(zone.error().find("found zone '" + std::string(name) + "'"), std::string::npos);
    }
}

TEST(Zone, a_link_is_followed_to_its_canonical_name) {
    EXPECT_EQ(Zone::named("Asia/Calcutta")->name(), "Asia/Kolkata");
}

// Transitions as computed in RFC 8536 zone data; the half-hour one of Lord Howe is the odd case.
TEST(Zone, the_repeated_hour_has_two_moments_and_the_skipped_one_none) {
    struct Row {
        const char* zone;
        WallTime wall;
        WallResolution::Kind kind;
        Instant first, second;
    };
    using Kind = WallResolution::Kind;
    const Row rows[] = {
        {"Europe/Berlin", wall(2025, 10, 26, 2, 30), Kind::repeated, utc(2025, 10, 26, 0, 30),
         utc(2025, 10, 26, 1, 30)},
        {"Europe/Berlin", wall(2025, 10, 26, 1, 59), Kind::unique, utc(2025, 10, 25, 23, 59),
         utc(2025, 10, 25, 23, 59)},
        {"Europe/Berlin", wall(2025, 10, 26, 3, 0), Kind::unique, utc(2025, 10, 26, 2, 0),
         utc(2025, 10, 26, 2, 0)},
        {"Europe/Berlin", wall(2025, 3, 30, 2, 30), Kind::skipped, utc(2025, 3, 30, 1, 0),
         utc(2025, 3, 30, 1, 0)},
        {"America/New_York", wall(2025, 11, 2, 1, 30), Kind::repeated, utc(2025, 11, 2, 5, 30),
         utc(2025, 11, 2, 6, 30)},
        {"Australia/Lord_Howe", wall(2025, 4, 6, 1, 45), Kind::repeated, utc(2025, 4, 5, 14, 45),
         utc(2025, 4, 5, 15, 15)},
    };
    for (const Row& row : rows) {
        const WallResolution found = Zone::named(row.zone)->resolve(row.wall);
        EXPECT_EQ(found.kind, row.kind) << row.zone;
        EXPECT_EQ(found.first, row.first) << row.zone;
        EXPECT_EQ(found.second, row.second) << row.zone;
    }
}

TEST(Zone, a_floating_clock_takes_wall_time_for_utc_and_says_it_floats) {
    const Zone zone = Zone::floating();
    EXPECT_TRUE(zone.is_floating());
    EXPECT_EQ(zone.resolve(wall(2025, 10, 26, 2, 30)).first, utc(2025, 10, 26, 2, 30));
    EXPECT_EQ(zone.wall_time(utc(2025, 10, 26, 2, 30)), wall(2025, 10, 26, 2, 30));
}

TEST(Zone, a_fixed_offset_is_named_by_itself) {
    EXPECT_EQ(Zone::fixed(hours{5} + minutes{30}).name(), "UTC+05:30");
    EXPECT_EQ(Zone::fixed(-hours{3}).name(), "UTC-03:00");
    EXPECT_EQ(Zone::fixed(hours{2}).resolve(wall(2026, 1, 1, 2, 0)).first, utc(2026, 1, 1, 0, 0));
}

TEST(Zone, zone_data_tell_their_version) {
    EXPECT_TRUE(zone_data_version().starts_with("20")) << zone_data_version();
}
