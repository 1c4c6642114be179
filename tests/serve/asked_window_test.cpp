// A window that is asked for: both days or neither, and no more than can be worked out. Everybody
// is invented; own rule, no source.
#include "serve/served_practice.hpp"

#include <gtest/gtest.h>

namespace tracewright::testing {
namespace {

constexpr const char* places[] = {"/review", "/review.html", "/measures", "/trace", "/trust"};

// One day alone was a window up to the year 10000: half a minute and 3.5 GB for one request.
TEST(AskedWindow, is_refused_without_its_other_day) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const char* place : places) {
        const std::string path = std::string("/api/clients/c1") + place;
        EXPECT_EQ(served.get(path + "?from=2026-02-26", who).code(), "half_a_window") << place;
        EXPECT_EQ(served.get(path + "?to=2026-02-26", who).code(), "half_a_window") << place;
    }
}

TEST(AskedWindow, is_of_93_days_at_most) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const char* place : places) {
        const std::string path = std::string("/api/clients/c1") + place;
        EXPECT_EQ(served.get(path + "?from=2026-01-01&to=2026-04-04", who).code(),
                  "window_too_long")
            << place;
        EXPECT_EQ(served.get(path + "?from=2026-01-01&to=2026-04-03", who).status, 200) << place;
    }
}

}  // namespace
}  // namespace tracewright::testing
