// Any target and any Cookie header: what is read leads nowhere else and is text.
#include "serve/request.hpp"

#include <cstdint>
#include <cstdlib>
#include <string_view>

using namespace tracewright;

namespace {

void must(bool holds) {
    if (!holds) {
        std::abort();
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    if (const auto target = target_of(text)) {
        for (const std::string& segment : target->segments) {
            must(segment.find_first_of(std::string_view("/\\\0\n\r", 5)) == std::string::npos);
            must(segment != "." && segment != "..");
        }
        must(target->path().front() == '/');
        target->asked("from");
    }
    if (const auto value = cookie_called("session", text)) {
        must(value->find(';') == std::string::npos && text.find(*value) != std::string_view::npos);
    }
    return 0;
}
