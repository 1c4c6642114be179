#include "access/sealed_stream.hpp"

#include <sodium.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::size_t piece = std::size_t{64} * 1024;
constexpr std::size_t start_bytes = crypto_secretstream_xchacha20poly1305_HEADERBYTES;
constexpr std::size_t tag_bytes = crypto_secretstream_xchacha20poly1305_ABYTES;

}  // namespace

std::vector<std::uint8_t> sealed_stream(std::span<const std::uint8_t> bytes, const SecretKey& key,
                                        std::span<const std::uint8_t> head) {
    const std::size_t pieces = bytes.size() / piece + 1;
    std::vector<std::uint8_t> stream(start_bytes + bytes.size() + pieces * tag_bytes);
    crypto_secretstream_xchacha20poly1305_state state;
    crypto_secretstream_xchacha20poly1305_init_push(&state, stream.data(), key.view().data());
    std::uint8_t* out = stream.data() + start_bytes;
    for (std::size_t i = 0; i < pieces; ++i) {
        const auto part = bytes.subspan(i * piece, std::min(piece, bytes.size() - i * piece));
        const bool last = i + 1 == pieces;
        crypto_secretstream_xchacha20poly1305_push(
            &state, out, nullptr, part.data(), part.size(), head.data(), head.size(),
            last ? crypto_secretstream_xchacha20poly1305_TAG_FINAL
                 : crypto_secretstream_xchacha20poly1305_TAG_MESSAGE);
        out += part.size() + tag_bytes;
    }
    sodium_memzero(&state, sizeof state);
    return stream;
}

tl::expected<std::vector<std::uint8_t>, std::string> opened_stream(
    std::span<const std::uint8_t> stream, const SecretKey& key,
    std::span<const std::uint8_t> head) {
    const auto broken = tl::make_unexpected(
        std::string("found encrypted bytes that were changed, cut short or locked by another key"));
    crypto_secretstream_xchacha20poly1305_state state;
    if (stream.size() < start_bytes + tag_bytes ||
        crypto_secretstream_xchacha20poly1305_init_pull(&state, stream.data(), key.view().data()) !=
            0) {
        return broken;
    }
    std::vector<std::uint8_t> bytes;
    bytes.reserve(stream.size());
    std::vector<std::uint8_t> part(piece);
    bool ended = false;
    for (auto rest = stream.subspan(start_bytes); !rest.empty();) {
        const auto sealed = rest.first(std::min(rest.size(), piece + tag_bytes));
        unsigned long long length = 0;
        std::uint8_t tag = 0;
        if (ended || sealed.size() < tag_bytes ||
            crypto_secretstream_xchacha20poly1305_pull(&state, part.data(), &length, &tag,
                                                       sealed.data(), sealed.size(), head.data(),
                                                       head.size()) != 0) {
            return broken;
        }
        bytes.insert(bytes.end(), part.begin(), part.begin() + static_cast<std::ptrdiff_t>(length));
        ended = tag == crypto_secretstream_xchacha20poly1305_TAG_FINAL;
        rest = rest.subspan(sealed.size());
    }
    sodium_memzero(&state, sizeof state);
    if (!ended) {
        return broken;
    }
    return bytes;
}

}  // namespace tracewright
