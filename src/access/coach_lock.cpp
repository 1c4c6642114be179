#include "access/coach_lock.hpp"

#include <sodium.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::uint8_t version = 1;
constexpr std::size_t sealed_bytes = 24 + SecretKey::bytes + 16;
constexpr std::size_t stored_bytes = 2 + 16 + sealed_bytes;

std::string place_of(std::int64_t coach) {
    return "practice key by coach " + std::to_string(coach);
}

}  // namespace

tl::expected<CoachLock, std::string> CoachLock::locked(const SecretKey& key, std::int64_t coach,
                                                       std::string_view passphrase,
                                                       PassphraseWork work) {
    CoachLock lock;
    lock.work_ = work;
    randombytes_buf(lock.salt_.data(), lock.salt_.size());
    const auto by = SecretKey::of_passphrase(passphrase, lock.salt_, work);
    if (!by) {
        return tl::make_unexpected(by.error());
    }
    lock.sealed_ = Seal(*by).sealed(
        {reinterpret_cast<const char*>(key.view().data()), SecretKey::bytes}, place_of(coach));
    return lock;
}

tl::expected<SecretKey, std::string> CoachLock::opened(std::int64_t coach,
                                                       std::string_view passphrase) const {
    const auto by = SecretKey::of_passphrase(passphrase, salt_, work_);
    if (!by) {
        return tl::make_unexpected(by.error());
    }
    auto text = Seal(*by).opened(sealed_, place_of(coach));
    if (!text || text->size() != SecretKey::bytes) {
        return tl::make_unexpected(
            std::string("found a passphrase that is not this coach's own, expected that one"));
    }
    SecretKey key = SecretKey::from(std::span<const std::uint8_t, SecretKey::bytes>(
        reinterpret_cast<const std::uint8_t*>(text->data()), SecretKey::bytes));
    sodium_memzero(text->data(), text->size());
    return key;
}

std::vector<std::uint8_t> CoachLock::stored() const {
    std::vector<std::uint8_t> bytes(stored_bytes);
    bytes[0] = version;
    bytes[1] = static_cast<std::uint8_t>(work_);
    std::ranges::copy(salt_, bytes.begin() + 2);
    std::ranges::copy(sealed_, bytes.begin() + 18);
    return bytes;
}

tl::expected<CoachLock, std::string> CoachLock::read(std::span<const std::uint8_t> stored) {
    if (stored.size() != stored_bytes || stored[0] != version || stored[1] > 2) {
        return tl::make_unexpected(
            std::string("found no coach's lock of a known kind, expected one as it was written"));
    }
    CoachLock lock;
    lock.work_ = static_cast<PassphraseWork>(stored[1]);
    std::ranges::copy(stored.subspan(2, 16), lock.salt_.begin());
    const auto sealed = stored.subspan(18);
    lock.sealed_.assign(sealed.begin(), sealed.end());
    return lock;
}

}  // namespace tracewright
