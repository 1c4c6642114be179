#pragma once

#include "serve/reply.hpp"

#include <cstdint>
#include <list>
#include <map>
#include <mutex>
#include <optional>
#include <string>

namespace tracewright {

/// Counts the changes of each client's data, so that what was made of them is known to hold still.
/// For several threads.
class ChangeBook {
  public:
    /// Grows with every change of this client's data or of all.
    std::uint64_t version_of(const std::string& client);
    void changed(const std::string& client);
    void all_changed();

  private:
    std::mutex mutex_;
    std::uint64_t all_ = 0;
    std::map<std::string, std::uint64_t> of_;
};

/// Replies made of a client's data, whole, for as long as the version they were made of holds; what
/// was not asked for longest goes first. For several threads.
class KeptReplies {
  public:
    explicit KeptReplies(std::size_t most_bytes) : most_bytes_(most_bytes) {}

    std::optional<Reply> of(const std::string& what, std::uint64_t version);
    void keep(const std::string& what, std::uint64_t version, const Reply& reply);
    void forget_all();

  private:
    struct Kept {
        std::string what;
        std::uint64_t version;
        Reply reply;
    };
    using Place = std::list<Kept>::iterator;
    void drop(Place place);

    std::size_t most_bytes_;
    std::mutex mutex_;
    std::list<Kept> kept_;  ///< asked for last first
    std::map<std::string, Place, std::less<>> place_of_;
    std::size_t bytes_ = 0;
};

}  // namespace tracewright
