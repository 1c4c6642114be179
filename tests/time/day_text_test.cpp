#include "time/day_text.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

// The years are ours, no source: a client's life and a plan's end lie between them.
TEST(DayText, is_one_form_of_a_day_that_there_is) {
    for (const char* text : {"1900-01-01", "2026-03-02", "2024-02-29", "2100-12-31"}) {
        const auto day = day_of_text(text);
        ASSERT_TRUE(day) << text;
        EXPECT_EQ(day_text(*day), text);
    }
    for (const char* text :
         {"", "2026-2-3", "-2026-01-01", "2026-03-02 ", " 2026-03-02", "+2026-3-02", "2026-02-30",
          "2025-02-29", "2026-13-01", "2026-00-10", "2026-01-00", "1899-12-31", "2101-01-01",
          "02026-03-02", "2026/03/02", "2026-03-02T00:00", "20260302", "2026-03-0x"}) {
        EXPECT_FALSE(day_of_text(text)) << text;
    }
}

}  // namespace
}  // namespace tracewright
