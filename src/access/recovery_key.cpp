#include "access/recovery_key.hpp"

#include <sodium.h>

#include <algorithm>
#include <array>
#include <cctype>

namespace tracewright {

namespace {

constexpr std::string_view letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr std::size_t group = 4;
constexpr std::size_t checksum_bytes = 3;  // 280 bits in all: 56 letters of 5
constexpr std::size_t written_bytes = SecretKey::bytes + checksum_bytes;
constexpr std::size_t letters_in_all = written_bytes * 8 / 5;

using Written = std::array<std::uint8_t, written_bytes>;

void set_checksum(Written& bytes) {
    std::array<std::uint8_t, 16> hash{};
    crypto_generichash(hash.data(), hash.size(), bytes.data(), SecretKey::bytes, nullptr, 0);
    std::copy_n(hash.begin(), checksum_bytes, bytes.begin() + SecretKey::bytes);
}

int value_of(char written) {
    const char capital = static_cast<char>(std::toupper(static_cast<unsigned char>(written)));
    const char plain = capital == 'O' ? '0' : capital == 'I' || capital == 'L' ? '1' : capital;
    const auto at = letters.find(plain);
    return at == std::string_view::npos ? -1 : static_cast<int>(at);
}

tl::unexpected<std::string> not_read(const std::string& why) {
    return tl::make_unexpected("found a recovery key that " + why +
                               ", expected the 14 groups of four as printed");
}

}  // namespace

std::string written_recovery_key(const SecretKey& key) {
    Written bytes{};
    std::ranges::copy(key.view(), bytes.begin());
    set_checksum(bytes);
    std::string text;
    for (std::size_t i = 0; i < letters_in_all; ++i) {
        if (i > 0 && i % group == 0) {
            text += ' ';
        }
        unsigned value = 0;
        for (std::size_t bit = i * 5; bit < i * 5 + 5; ++bit) {
            value = value << 1U | (unsigned{bytes[bit / 8]} >> (7 - bit % 8) & 1U);
        }
        text += letters[value];
    }
    sodium_memzero(bytes.data(), bytes.size());
    return text;
}

tl::expected<SecretKey, std::string> recovery_key_read(std::string_view text) {
    Written bytes{};
    std::size_t count = 0;
    for (const char written : text) {
        if (written == ' ' || written == '-' || written == '\n' || written == '\r' ||
            written == '\t') {
            continue;
        }
        const int value = value_of(written);
        if (value < 0) {
            return not_read("has a sign in group " + std::to_string(count / group + 1) +
                            " that is none of its letters");
        }
        if (count == letters_in_all) {
            return not_read("is too long");
        }
        for (std::size_t bit = 0; bit < 5; ++bit) {
            const std::size_t at = count * 5 + bit;
            bytes[at / 8] = static_cast<std::uint8_t>(
                bytes[at / 8] | ((static_cast<unsigned>(value) >> (4 - bit) & 1U) << (7 - at % 8)));
        }
        ++count;
    }
    if (count != letters_in_all) {
        return not_read("has " + std::to_string(count) + " letters");
    }
    Written right = bytes;
    set_checksum(right);
    if (right != bytes) {
        return not_read("has a letter wrong somewhere");
    }
    SecretKey key = SecretKey::from(
        std::span<const std::uint8_t, SecretKey::bytes>(bytes.data(), SecretKey::bytes));
    sodium_memzero(bytes.data(), bytes.size());
    return key;
}

}  // namespace tracewright
