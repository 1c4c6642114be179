// Any bytes as an old workbook: sheets or an error; the library's own crashes stay in its child.
#include "intake/workbook.hpp"

#include <cstdint>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    (void)xls_workbook({reinterpret_cast<const char*>(data), size}, "fuzz");
    return 0;
}
