#pragma once

#include "access/sealing.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A practice's data key, locked twice: by the coach's passphrase and by the printed recovery key.
/// Safe to store beside the data and in every backup.
class LockedPracticeKey {
  public:
    /// Locks `key` and tries both ways to open it before it returns. Error: a sentence.
    static tl::expected<LockedPracticeKey, std::string> locked(const SecretKey& key,
                                                               std::string_view passphrase,
                                                               const SecretKey& recovery,
                                                               PassphraseWork work);
    /// As stored. Error: not such bytes.
    static tl::expected<LockedPracticeKey, std::string> read(std::span<const std::uint8_t> stored);

    tl::expected<SecretKey, std::string> opened_by_passphrase(std::string_view passphrase) const;
    tl::expected<SecretKey, std::string> opened_by_recovery(const SecretKey& recovery) const;

    /// The same key under another passphrase; the recovery key stays.
    tl::expected<LockedPracticeKey, std::string> with_passphrase(const SecretKey& key,
                                                                 std::string_view passphrase) const;

    /// The same key under another recovery key, tried as a coach will type it; the passphrase
    /// stays. The one before opens it no more.
    tl::expected<LockedPracticeKey, std::string> with_recovery(const SecretKey& key,
                                                               const SecretKey& recovery) const;

    std::vector<std::uint8_t> stored() const;
    /// What a try of its passphrase costs.
    PassphraseWork work() const { return work_; }

  private:
    LockedPracticeKey() = default;

    PassphraseWork work_ = PassphraseWork::moderate;
    std::array<std::uint8_t, 16> salt_{};
    std::vector<std::uint8_t> by_passphrase_;
    std::vector<std::uint8_t> by_recovery_;
};

}  // namespace tracewright
