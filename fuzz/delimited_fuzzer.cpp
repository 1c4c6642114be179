// Any bytes as delimited text: rows come to an end, twice the same, cells lie within the text.
#include "intake/delimited_source.hpp"

#include <cstdint>
#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    DelimitedSource source(std::string(reinterpret_cast<const char*>(data), size), {},
                           std::nullopt);
    std::size_t cells[2] = {0, 0};
    std::size_t bytes[2] = {0, 0};
    for (int pass = 0; pass < 2; ++pass) {
        source.rewind();
        Row row;
        std::uint32_t line = 0;
        while (source.next(row)) {
            if (row.line <= line) {
                std::abort();
            }
            line = row.line;
            for (const Cell& cell : row.cells) {
                ++cells[pass];
                bytes[pass] += cell.text.size();
            }
        }
    }
    if (cells[0] != cells[1] || bytes[0] != bytes[1] || bytes[0] > size) {
        std::abort();
    }
    return 0;
}
