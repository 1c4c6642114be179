#pragma once

#include "diary/diary_entry.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A food with its nutrients per 100 g. An empty value was not measured: it is not zero.
struct FoodFacts {
    std::string name;
    std::string portion;  ///< a household portion: "1 cup"
    double portion_g = 0;
    std::optional<double> energy_kcal;
    std::optional<double> carbohydrate_g;
    std::optional<double> fibre_g;
    std::optional<double> protein_g;
    std::optional<double> fat_g;
    std::optional<double> glycaemic_index;  ///< glucose = 100; never predicts a client's curve
    std::string source;
    CarbohydrateBasis basis = CarbohydrateBasis::total;

    /// Carbohydrate less fibre per 100 g where the table's is total and both are known; the table's
    /// own where it is available already. Source: AOAC (glycaemia 5.3).
    std::optional<double> available_carbohydrate_g() const;
};

/// What a portion of so many grams holds.
struct FoodPortion {
    double grams = 0;
    std::optional<double> energy_kcal, carbohydrate_g, available_carbohydrate_g, fibre_g, protein_g,
        fat_g;
};
FoodPortion portion_of(const FoodFacts& food, double grams);

/// The foods that ship with the program; their carbohydrate is total and includes fibre.
const std::vector<FoodFacts>& shipped_foods();
/// The same of a table's text: RFC 4180, columns food, portion, portion_g, energy_kcal,
/// carbohydrate_g, fibre_g, protein_g, fat_g, gi, gi_source, source in that order. Rows of another
/// shape are passed over: tables from outside are read by the intake.
std::vector<FoodFacts> foods_in(std::string_view csv, CarbohydrateBasis basis);

/// How well a food's name meets what was typed: 1 where every word is there, less where words of
/// the food were not asked for; only those above 0, best first, equal ones by name.
struct FoodFound {
    const FoodFacts* food = nullptr;
    double match = 0;
};
std::vector<FoodFound> foods_called(std::string_view typed, std::span<const FoodFacts> foods);

// Glycaemic index and load: labels for foods, nothing about a client (glycaemia 5.3).

/// Grams. Source: Salmeron 1997.
double glycaemic_load(double index, double available_carbohydrate_g);
/// Weighted by carbohydrate; 0 without any. Source: FAO/WHO 1998.
double meal_index(std::span<const double> index, std::span<const double> carbohydrate_g);
/// 100 x area / mean of the same person's reference areas. Source: ISO 26642:2010.
double index_from_areas(double area, std::span<const double> reference_areas);
/// "low", "medium", "high"; ISO 26642 calls 70 medium, many tables call it high.
const char* index_class(double index, bool seventy_is_high = false);

}  // namespace tracewright
