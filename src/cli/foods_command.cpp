#include "cli/foods_command.hpp"

#include "cli/json_text.hpp"
#include "diary/food_table.hpp"

#include <fmt/format.h>

#include <fstream>
#include <ostream>
#include <sstream>

namespace tracewright {

namespace {

constexpr int foods_json_version = 1;

std::string number_words(const std::optional<double>& value, const char* unit, int decimals) {
    return value ? fmt::format("{:.{}f} {}", *value, decimals, unit) : "not measured";
}

Json or_null(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json json_of(const FoodFound& found, const FoodPortion& portion) {
    const FoodFacts& food = *found.food;
    return {{"food", food.name},
            {"match", found.match},
            {"household_portion", food.portion},
            {"household_portion_g", food.portion_g},
            {"grams", portion.grams},
            {"energy_kcal", or_null(portion.energy_kcal)},
            {"carbohydrate_g", or_null(portion.carbohydrate_g)},
            {"carbohydrate_basis",
             food.basis == CarbohydrateBasis::total ? "total, with fibre" : "available"},
            {"available_carbohydrate_g", or_null(portion.available_carbohydrate_g)},
            {"fibre_g", or_null(portion.fibre_g)},
            {"source", food.source}};
}

void print(const FoodFound& found, const FoodPortion& portion, bool household, std::ostream& out) {
    const FoodFacts& food = *found.food;
    out << fmt::format("{} ({}{:g} g)\n", food.name, household ? food.portion + ", " : "",
                       portion.grams);
    out << fmt::format("  energy {}, carbohydrate {} ({}), fibre {}",
                       number_words(portion.energy_kcal, "kcal", 0),
                       number_words(portion.carbohydrate_g, "g", 1),
                       food.basis == CarbohydrateBasis::total ? "total, with fibre" : "available",
                       number_words(portion.fibre_g, "g", 1));
    if (food.basis == CarbohydrateBasis::total) {
        out << ", available " << number_words(portion.available_carbohydrate_g, "g", 1);
    }
    out << "\n  " << food.source << "\n";
}

}  // namespace

Exit foods(const FoodsOptions& options, const Streams& streams) {
    std::vector<FoodFacts> own;
    Exit exit = Exit::done;
    if (!options.table.empty()) {
        std::ifstream file(options.table, std::ios::binary);
        std::ostringstream text;
        text << file.rdbuf();
        own = foods_in(text.str(),
                       options.available ? CarbohydrateBasis::available : CarbohydrateBasis::total);
        for (const std::string& fault : food_rows_not_read(text.str())) {
            streams.err << options.table << ": " << fault << "; left out\n";
            exit = Exit::bad_input;
        }
        if (own.empty()) {
            streams.err << options.table
                        << ": found no food, expected rows of food, portion, portion_g, "
                           "energy_kcal, carbohydrate_g, fibre_g, protein_g, fat_g, gi, gi_source, "
                           "source\n";
            return Exit::bad_input;
        }
    }
    if (options.grams && !(*options.grams > 0)) {
        streams.err << "tracewright: found --grams that is not above 0, expected a weight\n";
        return Exit::wrong_usage;
    }
    std::string typed;
    for (const std::string& word : options.words) {
        typed += (typed.empty() ? "" : " ") + word;
    }
    const std::vector<FoodFacts>& table = options.table.empty() ? shipped_foods() : own;
    std::vector<FoodFound> found = foods_called(typed, table);
    if (found.size() > static_cast<std::size_t>(options.most)) {
        found.resize(static_cast<std::size_t>(options.most));
    }
    Json json = {{"version", foods_json_version}, {"asked", typed}, {"foods", Json::array()}};
    for (const FoodFound& one : found) {
        const FoodPortion portion =
            portion_of(*one.food, options.grams.value_or(one.food->portion_g));
        if (options.json) {
            json["foods"].push_back(json_of(one, portion));
        } else {
            print(one, portion, !options.grams, streams.out);
        }
    }
    if (options.json) {
        streams.out << dumped(json);
    } else if (found.empty()) {
        streams.out << "No food of this name is in the table.\n";
    }
    return exit == Exit::done && found.empty() ? Exit::cannot_answer : exit;
}

}  // namespace tracewright
