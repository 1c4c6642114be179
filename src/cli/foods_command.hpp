#pragma once

#include "cli/streams.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

struct FoodsOptions {
    std::vector<std::string> words;  ///< what to look for
    std::optional<double> grams;     ///< else the household portion
    int most = 10;
    std::string table;       ///< another table of the same columns; empty: the shipped one
    bool available = false;  ///< that table's carbohydrate is without fibre
    bool json = false;
};

/// Looks foods up and works a portion out: energy, carbohydrate, fibre.
Exit foods(const FoodsOptions& options, const Streams& streams);

}  // namespace tracewright
