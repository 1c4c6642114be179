#include "access/practice_key.hpp"

#include "access/recovery_key.hpp"

#include <sodium.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::uint8_t version = 1;
constexpr std::size_t locked_bytes = 24 + SecretKey::bytes + 16;
constexpr std::size_t stored_bytes = 2 + 16 + 2 * locked_bytes;
constexpr std::string_view passphrase_place = "practice key by passphrase";
constexpr std::string_view recovery_place = "practice key by recovery key";

std::string_view text_of(const SecretKey& key) {
    return {reinterpret_cast<const char*>(key.view().data()), SecretKey::bytes};
}

// Empty where the lock does not open.
tl::expected<SecretKey, std::string> unlocked(std::span<const std::uint8_t> locked,
                                              const SecretKey& by, std::string_view place,
                                              const char* why_not) {
    auto text = Seal(by).opened(locked, place);
    if (!text || text->size() != SecretKey::bytes) {
        return tl::make_unexpected(std::string(why_not));
    }
    SecretKey key = SecretKey::from(std::span<const std::uint8_t, SecretKey::bytes>(
        reinterpret_cast<const std::uint8_t*>(text->data()), SecretKey::bytes));
    sodium_memzero(text->data(), text->size());
    return key;
}

bool same(const SecretKey& a, const SecretKey& b) {
    return sodium_memcmp(a.view().data(), b.view().data(), SecretKey::bytes) == 0;
}

}  // namespace

tl::expected<LockedPracticeKey, std::string> LockedPracticeKey::locked(const SecretKey& key,
                                                                       std::string_view passphrase,
                                                                       const SecretKey& recovery,
                                                                       PassphraseWork work) {
    LockedPracticeKey result;
    result.work_ = work;
    auto with = result.with_passphrase(key, passphrase);
    return with ? with->with_recovery(key, recovery) : with;
}

// A recovery key that was never tried is a hope: read it back as the coach will type it.
tl::expected<LockedPracticeKey, std::string> LockedPracticeKey::with_recovery(
    const SecretKey& key, const SecretKey& recovery) const {
    LockedPracticeKey result = *this;
    result.by_recovery_ = Seal(recovery).sealed(text_of(key), recovery_place);
    if (const auto typed = recovery_key_read(written_recovery_key(recovery))) {
        if (const auto opened = result.opened_by_recovery(*typed); opened && same(*opened, key)) {
            return result;
        }
    }
    return tl::make_unexpected(
        std::string("found that the recovery key does not open the practice; nothing was made"));
}

tl::expected<LockedPracticeKey, std::string> LockedPracticeKey::with_passphrase(
    const SecretKey& key, std::string_view passphrase) const {
    LockedPracticeKey result = *this;
    randombytes_buf(result.salt_.data(), result.salt_.size());
    const auto by = SecretKey::of_passphrase(passphrase, result.salt_, work_);
    if (!by) {
        return tl::make_unexpected(by.error());
    }
    result.by_passphrase_ = Seal(*by).sealed(text_of(key), passphrase_place);
    return result;
}

tl::expected<SecretKey, std::string> LockedPracticeKey::opened_by_passphrase(
    std::string_view passphrase) const {
    const auto by = SecretKey::of_passphrase(passphrase, salt_, work_);
    if (!by) {
        return tl::make_unexpected(by.error());
    }
    return unlocked(by_passphrase_, *by, passphrase_place,
                    "found a passphrase that does not open this practice, expected the one it was "
                    "made with; the recovery key opens it too");
}

tl::expected<SecretKey, std::string> LockedPracticeKey::opened_by_recovery(
    const SecretKey& recovery) const {
    return unlocked(by_recovery_, recovery, recovery_place,
                    "found a recovery key that does not open this practice, expected the one "
                    "printed when it was made");
}

std::vector<std::uint8_t> LockedPracticeKey::stored() const {
    std::vector<std::uint8_t> bytes{version, static_cast<std::uint8_t>(work_)};
    for (const std::span<const std::uint8_t> part :
         {std::span<const std::uint8_t>(salt_), std::span<const std::uint8_t>(by_passphrase_),
          std::span<const std::uint8_t>(by_recovery_)}) {
        bytes.insert(bytes.end(), part.begin(), part.end());
    }
    return bytes;
}

tl::expected<LockedPracticeKey, std::string> LockedPracticeKey::read(
    std::span<const std::uint8_t> stored) {
    if (stored.size() != stored_bytes || stored[0] != version || stored[1] > 2) {
        return tl::make_unexpected(
            std::string("found no locked key of a known kind, expected the one written when the "
                        "practice was made"));
    }
    LockedPracticeKey result;
    result.work_ = static_cast<PassphraseWork>(stored[1]);
    const auto parts = stored.subspan(2);
    std::ranges::copy(parts.first(16), result.salt_.begin());
    const auto first = parts.subspan(16, locked_bytes);
    const auto second = parts.subspan(16 + locked_bytes, locked_bytes);
    result.by_passphrase_.assign(first.begin(), first.end());
    result.by_recovery_.assign(second.begin(), second.end());
    return result;
}

}  // namespace tracewright
