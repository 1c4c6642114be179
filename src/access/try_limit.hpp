#pragma once

#include "access/session_book.hpp"

#include <chrono>
#include <deque>
#include <map>
#include <mutex>
#include <optional>
#include <string>

namespace tracewright {

/// How often a passphrase may be tried in vain. Ours, no source.
struct TryRules {
    std::size_t of_one = 5;   ///< for one coach's handle
    std::size_t of_all = 30;  ///< for all handles together, those that do not exist among them
    std::chrono::seconds within{std::chrono::minutes{5}};
};

/// Counts sign-ins that failed and says when the next may be tried. For several threads.
class TryLimit {
  public:
    explicit TryLimit(TryRules rules = {}) : rules_(rules) {}

    /// How long to wait, at least a second; empty: try now.
    std::optional<std::chrono::seconds> wait(const std::string& handle, Tick now);
    void failed(const std::string& handle, Tick now);
    void succeeded(const std::string& handle);

  private:
    using Times = std::deque<Tick>;
    std::optional<std::chrono::seconds> wait_of(Times& times, std::size_t most, Tick now) const;

    TryRules rules_;
    std::mutex mutex_;
    Times all_;
    std::map<std::string, Times> of_;
};

}  // namespace tracewright
