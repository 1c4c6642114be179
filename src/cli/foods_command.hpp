#pragma once

#include "cli/streams.hpp"
#include "diary/client_foods.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

struct FoodsOptions {
    std::vector<std::string> words;  ///< what to look for
    std::string eaten;               ///< a diary text to work out instead
    std::string client;              ///< on a practice: whose foods are tried first
    std::optional<double> grams;     ///< else the household portion
    int most = 10;
    std::string table;                 ///< another table; empty: the shipped one
    std::vector<std::string> columns;  ///< its columns, "food=TITLE"
    std::string decimal;               ///< its decimal mark: "point" or "comma"
    bool available = false;            ///< its carbohydrate is without fibre
    bool total = false;                ///< its carbohydrate is with fibre
    bool json = false;
};

inline constexpr int foods_json_version = 1;

/// Looks foods up and works a portion out (energy, carbohydrate, fibre), or a diary text. The
/// client's own foods, where there is a client, are tried first.
Exit foods(const FoodsOptions& options, const Streams& streams,
           const ClientFoods* client = nullptr);

}  // namespace tracewright
