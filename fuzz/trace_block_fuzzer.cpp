// Any bytes as a block of readings: refused, or readings that pack to a block which gives them
// back.
#include "store/trace_block.hpp"

#include <sodium.h>

#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    constexpr UtcDay day{std::chrono::days{20'000}};
    // With a right checksum, so that what lies behind it is reached.
    Bytes block(data, data + size);
    std::uint8_t hash[crypto_generichash_BYTES_MIN];
    crypto_generichash(hash, sizeof hash, block.data(), block.size(), nullptr, 0);
    block.insert(block.end(), hash, hash + 4);
    std::vector<Reading> readings;
    if (!unpack_trace_block(block, day, readings)) {
        return readings.empty() ? 0 : (std::abort(), 0);
    }
    std::vector<Reading> again;
    if (!unpack_trace_block(trace_block(day, readings), day, again) || again != readings) {
        std::abort();
    }
    return 0;
}
