// Any bytes as a client's facts or as a change of them: refused with a sentence, or facts that are
// written and read again as they were.
#include "store/client_document.hpp"

#include <cstdlib>
#include <string_view>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const auto& facts : {client_facts_read(text), client_facts_changed({}, text)}) {
        if (!facts) {
            if (facts.error().empty()) {
                std::abort();
            }
            continue;
        }
        const std::string written = client_document(*facts);
        const auto again = client_facts_read(written);
        if (!again || client_document(*again) != written) {
            std::abort();
        }
    }
    return 0;
}
