#include "access/try_limit.hpp"

#include <algorithm>

namespace tracewright {

std::optional<std::chrono::seconds> TryLimit::wait_of(Times& times, std::size_t most,
                                                      Tick now) const {
    while (!times.empty() && now - times.front() >= rules_.within) {
        times.pop_front();
    }
    if (times.size() < most) {
        return std::nullopt;
    }
    return std::max(std::chrono::seconds{1},
                    std::chrono::ceil<std::chrono::seconds>(times.front() + rules_.within - now));
}

std::optional<std::chrono::seconds> TryLimit::wait(const std::string& handle, Tick now) {
    const std::scoped_lock lock(mutex_);
    const auto everyone = wait_of(all_, rules_.of_all, now);
    const auto found = of_.find(handle);
    const auto one = found == of_.end() ? std::nullopt : wait_of(found->second, rules_.of_one, now);
    return everyone && one ? std::max(everyone, one) : everyone ? everyone : one;
}

void TryLimit::failed(const std::string& handle, Tick now) {
    const std::scoped_lock lock(mutex_);
    // What can be held is bounded by what all handles together may try.
    std::erase_if(of_, [&](const auto& one) { return now - one.second.back() >= rules_.within; });
    all_.push_back(now);
    of_[handle].push_back(now);
}

void TryLimit::succeeded(const std::string& handle) {
    const std::scoped_lock lock(mutex_);
    of_.erase(handle);
}

}  // namespace tracewright
