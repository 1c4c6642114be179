// Any bytes as a workbook: sheets or an error.
#include "intake/workbook.hpp"

#include <cstdint>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto workbook = xlsx_workbook({reinterpret_cast<const char*>(data), size}, "fuzz");
    if (workbook) {
        if (auto sheet = SheetSource::of(std::move(*workbook), "fuzz", std::nullopt)) {
            Row row;
            while (sheet->next(row)) {
            }
        }
    }
    return 0;
}
