#pragma once

#include "access/coach.hpp"
#include "access/coach_lock.hpp"
#include "access/practice_key.hpp"
#include "store/store_error.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// What can be read of a coach before the practice is open: how they may open it.
class PracticeDoor {
  public:
    /// `not_found` where there is no practice. A coach who is not here, or who left, has a door
    /// too: it never opens and takes as long to say so.
    static Stored<PracticeDoor> of_coach(const std::string& path, std::string_view handle);

    std::int64_t coach() const { return coach_; }
    /// By the coach's own passphrase. An owner without one opens by the practice's; others need
    /// their own. Error: a sentence that does not tell whether there is such a coach.
    tl::expected<SecretKey, std::string> opened(std::string_view passphrase) const;

  private:
    explicit PracticeDoor(LockedPracticeKey practice) : practice_(std::move(practice)) {}

    LockedPracticeKey practice_;
    std::int64_t coach_ = 0;
    bool may_by_practice_ = false;
    std::optional<CoachLock> own_;
};

}  // namespace tracewright
