#pragma once

#include "diary/food_table.hpp"
#include "intake/open_source.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What the user knows of a table of foods.
struct FoodTableOptions {
    SourceOptions source;
    /// "food=Name", "carbohydrate=4": a column by title or 1-based number, for one of food,
    /// portion, portion_g, energy_kcal, energy_kj, carbohydrate, fibre, protein, fat, gi, source.
    std::vector<std::string> columns;
    std::optional<CarbohydrateBasis> basis;
    std::optional<char> decimal_mark;
};

/// A table of foods as it was understood. Every row below the titles is a food or is told.
struct FoodTableFile {
    std::vector<FoodFacts> foods;
    std::vector<std::string> taken_as;  ///< "food: column 1, 'Name'", in order of columns
    std::vector<std::string> not_read;  ///< line, column, what was found and what was expected
};

/// Reads a delimited text or workbook whose first row with words bears the titles, nutrients per
/// 100 g, energy in kcal or kJ (4.184 kJ a kcal). Columns by declaration, else by their titles. An
/// empty cell, "-" or "N" is not measured; "tr" is a trace, 0. Shares outside 0 to 100 g and energy
/// above 950 kcal are told and left out, as is a row without a food. Without a portion column it is
/// 100 g. Error, a sentence: no file, no food or no nutrient column, a column that is not there, or
/// carbohydrate of which neither option nor title ("available", "total", "by difference") tells
/// whether the fibre is in it: the two are never mixed, so it is not guessed.
tl::expected<FoodTableFile, std::string> food_table_file(const std::string& path,
                                                         const FoodTableOptions& options);
/// The same of bytes in memory.
tl::expected<FoodTableFile, std::string> food_table_bytes(std::string bytes,
                                                          const std::string& name,
                                                          const FoodTableOptions& options);

}  // namespace tracewright
