// Tasks beside each other: one that throws is its own failure alone.
#include "serve/desk.hpp"

#include <gtest/gtest.h>

#include <future>
#include <stdexcept>

namespace tracewright::testing {
namespace {

TEST(Desk, a_task_that_throws_fails_alone) {
    Desk desk(1, 8);
    std::promise<bool> failed;
    std::promise<bool> next;
    ASSERT_TRUE(desk.give([](std::size_t) { throw std::invalid_argument("invented"); },
                          [&] { failed.set_value(true); }));
    ASSERT_TRUE(desk.give([&](std::size_t) { next.set_value(true); }, [] {}));
    EXPECT_TRUE(failed.get_future().get());
    EXPECT_TRUE(next.get_future().get());
}

}  // namespace
}  // namespace tracewright::testing
