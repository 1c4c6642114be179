#pragma once

#include "access/sealing.hpp"

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A practice's data key, locked by one coach's own passphrase. Bound to that coach: laid in
/// another's place it does not open. Safe to store beside the data and in every backup.
class CoachLock {
  public:
    /// Error: no memory for argon2id.
    static tl::expected<CoachLock, std::string> locked(const SecretKey& key, std::int64_t coach,
                                                       std::string_view passphrase,
                                                       PassphraseWork work);
    /// As stored. Error: not such bytes.
    static tl::expected<CoachLock, std::string> read(std::span<const std::uint8_t> stored);

    /// Error: another passphrase or another coach's lock; a sentence without either.
    tl::expected<SecretKey, std::string> opened(std::int64_t coach,
                                                std::string_view passphrase) const;

    std::vector<std::uint8_t> stored() const;

  private:
    CoachLock() = default;

    PassphraseWork work_ = PassphraseWork::moderate;
    std::array<std::uint8_t, 16> salt_{};
    std::vector<std::uint8_t> sealed_;
};

}  // namespace tracewright
