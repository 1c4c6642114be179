#pragma once

#include <tl/expected.hpp>

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What argon2id is asked to spend on each try of a passphrase. `interactive` and `moderate` are
/// libsodium's own names and sizes (64 MiB, 256 MiB); `least` is for tests only.
enum class PassphraseWork : std::uint8_t { least = 0, interactive = 1, moderate = 2 };

/// A secret of 32 bytes: wiped when it goes, never copied by accident, not printed.
class SecretKey {
  public:
    static constexpr std::size_t bytes = 32;

    /// By lot, from the system's source.
    static SecretKey drawn();
    static SecretKey from(std::span<const std::uint8_t, bytes> key);
    /// From a passphrase by argon2id. Error: no memory for it.
    static tl::expected<SecretKey, std::string> of_passphrase(
        std::string_view passphrase, std::span<const std::uint8_t, 16> salt, PassphraseWork work);

    SecretKey(const SecretKey&) = delete;
    SecretKey& operator=(const SecretKey&) = delete;
    SecretKey(SecretKey&&) noexcept = default;
    SecretKey& operator=(SecretKey&&) noexcept = default;
    ~SecretKey();

    SecretKey copy() const { return from(view()); }
    /// Another key for another purpose, of which this one can't be learnt. `purpose` of 8 letters.
    SecretKey derived(std::uint64_t number, std::string_view purpose) const;
    std::span<const std::uint8_t, bytes> view() const {
        return std::span<const std::uint8_t, bytes>(*key_);
    }

  private:
    SecretKey();
    std::unique_ptr<std::array<std::uint8_t, bytes>> key_;
};

/// Seals and opens texts under one key (XChaCha20-Poly1305, a nonce by lot before each). `place`
/// says where the text belongs ("client 7 name"): sealed text moved elsewhere does not open.
class Seal {
  public:
    explicit Seal(const SecretKey& key);

    std::vector<std::uint8_t> sealed(std::string_view text, std::string_view place) const;
    /// Error: a sentence without any of the text.
    tl::expected<std::string, std::string> opened(std::span<const std::uint8_t> sealed,
                                                  std::string_view place) const;
    /// 16 bytes that tell equal texts without telling the text: keyed BLAKE2b.
    std::array<std::uint8_t, 16> fingerprint(std::string_view text) const;

  private:
    SecretKey text_key_;
    SecretKey fingerprint_key_;
};

}  // namespace tracewright
