#include "coaching/client_clock.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

WallTime noon_of(std::chrono::sys_days day) {
    return WallTime{day.time_since_epoch()} + std::chrono::hours{12};
}

// Stored before it was refused: no look at the client may end in a fault.
TEST(ClientClock, passes_over_a_change_of_zone_before_there_were_zones) {
    using namespace std::chrono;
    ClientFacts facts;
    facts.zones = {{"Europe/Berlin", {}},
                   {"America/New_York", noon_of(sys_days{year{1} / 1 / 1}) - hours{12}},
                   {"Europe/London", noon_of(sys_days{year{2026} / 3 / 20})}};
    const ZoneHistory clock = client_clock(facts);
    const Instant before{sys_days{year{2026} / 3 / 1}};
    EXPECT_EQ(clock.zone_at(before).name(), "Europe/Berlin");
    EXPECT_EQ(clock.zone_at(before + days{60}).name(), "Europe/London");
}

}  // namespace
}  // namespace tracewright
