#include "access/share_token.hpp"

#include "access/sealing.hpp"

#include <sodium.h>

namespace tracewright {

namespace {

constexpr std::size_t token_letters = 43;
constexpr int variant = sodium_base64_VARIANT_URLSAFE_NO_PADDING;

}  // namespace

std::string drawn_share_token() {
    const SecretKey drawn = SecretKey::drawn();
    std::array<char, token_letters + 1> written{};
    sodium_bin2base64(written.data(), written.size(), drawn.view().data(), SecretKey::bytes,
                      variant);
    std::string token(written.data(), token_letters);
    sodium_memzero(written.data(), written.size());
    return token;
}

std::optional<ShareTokenHash> hash_of_share_token(std::string_view token) {
    std::array<std::uint8_t, SecretKey::bytes> read{};
    std::size_t length = 0;
    if (token.size() != token_letters ||
        sodium_base642bin(read.data(), read.size(), token.data(), token.size(), nullptr, &length,
                          nullptr, variant) != 0 ||
        length != read.size()) {
        return std::nullopt;
    }
    ShareTokenHash hash{};
    crypto_generichash(hash.data(), hash.size(), read.data(), read.size(), nullptr, 0);
    sodium_memzero(read.data(), read.size());
    return hash;
}

bool same_share_token(const ShareTokenHash& one, const ShareTokenHash& other) {
    return sodium_memcmp(one.data(), other.data(), one.size()) == 0;
}

}  // namespace tracewright
