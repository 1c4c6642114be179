// Any bytes become valid UTF-8.
#include "intake/encoding.hpp"

#include <cstdint>
#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto text = decoded(std::string(reinterpret_cast<const char*>(data), size));
    if (!text || !valid_utf8(text->text)) {
        std::abort();
    }
    return 0;
}
