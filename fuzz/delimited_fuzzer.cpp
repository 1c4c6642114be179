// Any bytes as delimited text: rows come to an end, twice the same, cells lie within the text; as a
// table of foods no share is outside 0 to 100 g in 100 g.
#include "intake/delimited_source.hpp"
#include "intake/food_table_file.hpp"

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
    FoodTableOptions options;
    options.basis = CarbohydrateBasis::total;
    const auto table =
        food_table_bytes(std::string(reinterpret_cast<const char*>(data), size), "foods", options);
    if (!table) {
        return 0;
    }
    for (const FoodFacts& food : table->foods) {
        const double grams = food.carbohydrate_g.value_or(0);
        if (food.name.empty() || !(food.portion_g > 0) || !(grams >= 0 && grams <= 100.5)) {
            std::abort();
        }
    }
    return 0;
}
