#include "cli/side_by_side.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <mutex>
#include <set>
#include <stdexcept>
#include <thread>
#include <vector>

using namespace tracewright;

TEST(SideBySide, every_number_is_worked_once_whatever_the_jobs) {
    for (const int jobs : {-1, 0, 1, 2, 3, 64}) {
        for (const std::size_t count : {0U, 1U, 2U, 7U, 1000U}) {
            std::vector<int> worked(count, 0);
            side_by_side(count, jobs, [&](std::size_t i) { ++worked[i]; });
            EXPECT_EQ(worked, std::vector<int>(count, 1)) << jobs << " jobs, " << count;
        }
    }
}

TEST(SideBySide, so_many_threads_as_jobs_and_the_calling_one_is_among_them) {
    for (const int jobs : {1, 2, 4}) {
        // Each waits until all have come: with fewer threads than jobs this would never end.
        std::atomic<int> come{0};
        std::mutex lock;
        std::set<std::thread::id> threads;
        side_by_side(static_cast<std::size_t>(jobs), jobs, [&](std::size_t) {
            ++come;
            while (come < jobs) {
                std::this_thread::yield();
            }
            const std::scoped_lock held(lock);
            threads.insert(std::this_thread::get_id());
        });
        EXPECT_EQ(threads.size(), static_cast<std::size_t>(jobs));
        EXPECT_TRUE(threads.contains(std::this_thread::get_id()));
    }
}

TEST(SideBySide, what_the_work_throws_reaches_the_caller_and_begins_nothing_more) {
    std::atomic<int> begun{0};
    const auto work = [&](std::size_t i) {
        ++begun;
        if (i == 3) {
            throw std::runtime_error("three");
        }
    };
    EXPECT_THROW(side_by_side(1000, 1, work), std::runtime_error);
    EXPECT_EQ(begun, 4);
    EXPECT_THROW(side_by_side(1000, 2, work), std::runtime_error);
}
