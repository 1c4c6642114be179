#include "access/sealing.hpp"

#include <sodium.h>

#include <algorithm>
#include <stdexcept>

namespace tracewright {

namespace {

// Once for the program; libsodium says it may be called again and from several threads.
void start_library() {
    if (sodium_init() < 0) {
        throw std::runtime_error("the encryption library can't start");
    }
}

const std::uint8_t* bytes_of(std::string_view text) {
    return reinterpret_cast<const std::uint8_t*>(text.data());
}

constexpr std::size_t nonce_bytes = crypto_aead_xchacha20poly1305_ietf_NPUBBYTES;
constexpr std::size_t tag_bytes = crypto_aead_xchacha20poly1305_ietf_ABYTES;

}  // namespace

SecretKey::SecretKey() : key_(std::make_unique<std::array<std::uint8_t, bytes>>()) {
    start_library();
}

SecretKey::~SecretKey() {
    if (key_) {
        sodium_memzero(key_->data(), key_->size());
    }
}

SecretKey SecretKey::drawn() {
    SecretKey key;
    randombytes_buf(key.key_->data(), bytes);
    return key;
}

SecretKey SecretKey::from(std::span<const std::uint8_t, bytes> given) {
    SecretKey key;
    std::ranges::copy(given, key.key_->begin());
    return key;
}

tl::expected<SecretKey, std::string> SecretKey::of_passphrase(
    std::string_view passphrase, std::span<const std::uint8_t, 16> salt, PassphraseWork work) {
    static_assert(crypto_pwhash_SALTBYTES == 16);
    struct Cost {
        unsigned long long operations;
        std::size_t memory;
    };
    const Cost cost =
        work == PassphraseWork::moderate
            ? Cost{crypto_pwhash_OPSLIMIT_MODERATE, crypto_pwhash_MEMLIMIT_MODERATE}
        : work == PassphraseWork::interactive
            ? Cost{crypto_pwhash_OPSLIMIT_INTERACTIVE, crypto_pwhash_MEMLIMIT_INTERACTIVE}
            : Cost{crypto_pwhash_OPSLIMIT_MIN, crypto_pwhash_MEMLIMIT_MIN};
    SecretKey key;
    if (crypto_pwhash(key.key_->data(), bytes, passphrase.data(), passphrase.size(), salt.data(),
                      cost.operations, cost.memory, crypto_pwhash_ALG_ARGON2ID13) != 0) {
        return tl::make_unexpected(
            std::string("found too little memory to try a passphrase, expected ") +
            std::to_string(cost.memory / (1024 * 1024)) + " MiB free");
    }
    return key;
}

SecretKey SecretKey::derived(std::uint64_t number, std::string_view purpose) const {
    static_assert(crypto_kdf_KEYBYTES == bytes);
    if (purpose.size() != crypto_kdf_CONTEXTBYTES) {
        throw std::invalid_argument("a purpose has 8 letters");
    }
    SecretKey key;
    crypto_kdf_derive_from_key(key.key_->data(), bytes, number, purpose.data(), key_->data());
    return key;
}

Seal::Seal(const SecretKey& key)
    : text_key_(key.derived(1, "sealtext")), fingerprint_key_(key.derived(2, "samehash")) {}

std::vector<std::uint8_t> Seal::sealed(std::string_view text, std::string_view place) const {
    std::vector<std::uint8_t> out(nonce_bytes + text.size() + tag_bytes);
    randombytes_buf(out.data(), nonce_bytes);
    crypto_aead_xchacha20poly1305_ietf_encrypt(out.data() + nonce_bytes, nullptr, bytes_of(text),
                                               text.size(), bytes_of(place), place.size(), nullptr,
                                               out.data(), text_key_.view().data());
    return out;
}

tl::expected<std::string, std::string> Seal::opened(std::span<const std::uint8_t> sealed,
                                                    std::string_view place) const {
    if (sealed.size() >= nonce_bytes + tag_bytes) {
        std::string text(sealed.size() - nonce_bytes - tag_bytes, '\0');
        if (crypto_aead_xchacha20poly1305_ietf_decrypt(
                reinterpret_cast<std::uint8_t*>(text.data()), nullptr, nullptr,
                sealed.data() + nonce_bytes, sealed.size() - nonce_bytes, bytes_of(place),
                place.size(), sealed.data(), text_key_.view().data()) == 0) {
            return text;
        }
    }
    return tl::make_unexpected("found sealed text (" + std::string(place) +
                               ") that this practice's key does not open, expected it as written");
}

std::array<std::uint8_t, 16> Seal::fingerprint(std::string_view text) const {
    std::array<std::uint8_t, 16> hash{};
    crypto_generichash(hash.data(), hash.size(), bytes_of(text), text.size(),
                       fingerprint_key_.view().data(), SecretKey::bytes);
    return hash;
}

}  // namespace tracewright
