#include "cli/side_by_side.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace tracewright {

void side_by_side(std::size_t count, int jobs, const std::function<void(std::size_t)>& work) {
    std::atomic<std::size_t> next{0};
    std::exception_ptr thrown;
    std::mutex first_throw;
    const auto take_numbers = [&] {
        try {
            for (std::size_t i = next++; i < count; i = next++) {
                work(i);
            }
        } catch (...) {
            const std::scoped_lock lock(first_throw);
            thrown = thrown ? thrown : std::current_exception();
            next = count;
        }
    };
    const std::size_t wanted =
        jobs > 0 ? static_cast<std::size_t>(jobs) : std::thread::hardware_concurrency();
    {
        std::vector<std::jthread> others;
        for (std::size_t i = 1; i < std::min(wanted, count); ++i) {
            others.emplace_back(take_numbers);
        }
        take_numbers();
    }
    if (thrown) {
        std::rethrow_exception(thrown);
    }
}

}  // namespace tracewright
