// Any bytes as a typed recovery key, a stored lock, a sealed text or an encrypted stream: refused,
// or (a recovery key) written again as the same key.
#include "access/practice_key.hpp"
#include "access/recovery_key.hpp"
#include "access/sealed_stream.hpp"

#include <algorithm>
#include <cstdlib>
#include <string_view>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::span<const std::uint8_t> bytes(data, size);
    if (const auto key = recovery_key_read({reinterpret_cast<const char*>(data), size})) {
        const auto again = recovery_key_read(written_recovery_key(*key));
        if (!again || !std::ranges::equal(again->view(), key->view())) {
            std::abort();
        }
    }
    if (const auto lock = LockedPracticeKey::read(bytes); lock && lock->stored().size() != size) {
        std::abort();
    }
    std::array<std::uint8_t, SecretKey::bytes> zero{};
    const SecretKey key = SecretKey::from(zero);
    if (Seal(key).opened(bytes, "place") || opened_stream(bytes, key, {})) {
        std::abort();  // without the key nobody makes one
    }
    return 0;
}
