#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A moment of a clock that never goes back; only differences mean something.
using Tick = std::chrono::steady_clock::time_point;

/// How long a sitting at the page lasts. Ours, no source.
struct SessionTimes {
    std::chrono::seconds idle{std::chrono::minutes{30}};  ///< without a request
    std::chrono::seconds whole{std::chrono::hours{12}};   ///< from sign-in, whatever is done
    std::size_t most_of_one_coach = 16;                   ///< one more ends the oldest
};

/// One coach signed in at one browser.
struct Session {
    std::uint64_t number = 0;  ///< tells sessions apart; no secret
    std::int64_t coach = 0;
    std::string token;  ///< what a change must bear besides the cookie: 64 hexadecimal digits
};

/// Who is signed in. Secrets are 256 bits by lot, kept as their BLAKE2b hash only, in memory only:
/// a restart ends all sessions. For several threads.
class SessionBook {
  public:
    explicit SessionBook(SessionTimes times = {}) : times_(times) {}

    struct Opened {
        std::string secret;  ///< for the cookie: 64 hexadecimal digits
        Session session;
    };
    Opened open(std::int64_t coach, Tick now);
    /// The session of a secret that has not ended; counts as a sign of life.
    std::optional<Session> of(std::string_view secret, Tick now);
    /// The same without a sign of life: an open stream of events keeps nobody signed in.
    bool lasts(std::uint64_t number, Tick now);
    void close(std::uint64_t number);
    /// All of coaches for whom `keeps` is false.
    template <typename Keeps>
    void close_unless(Keeps keeps) {
        const std::scoped_lock lock(mutex_);
        std::erase_if(sessions_, [&](const auto& one) { return !keeps(one.second.session.coach); });
    }

    /// Whether the session has looked at `what` already: the audit holds one line of it.
    bool has_looked(std::uint64_t number, const std::string& what);
    void looked(std::uint64_t number, const std::string& what);
    /// What was brought in since has not been looked at by anyone: `client` is a handle.
    void forget_looks_at(const std::string& client);

  private:
    struct Held {
        Session session;
        Tick opened;
        Tick last_sign;
        std::set<std::string> looks;
    };
    bool ended(const Held& held, Tick now) const;
    Held* held(std::uint64_t number);

    SessionTimes times_;
    std::mutex mutex_;
    std::map<std::string, Held, std::less<>> sessions_;  ///< by the secret's hash
    std::uint64_t last_number_ = 0;
};

/// 256 bits by lot, as 64 hexadecimal digits.
std::string drawn_secret();

/// Whether two secrets are equal, in a time that does not tell how far.
bool same_secret(std::string_view a, std::string_view b);

}  // namespace tracewright
