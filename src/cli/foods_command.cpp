#include "cli/foods_command.hpp"

#include "cli/eaten_lines.hpp"
#include "cli/json_text.hpp"
#include "diary/food_table.hpp"
#include "intake/food_table_file.hpp"
#include "render/eaten_json.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

std::string number_words(const std::optional<double>& value, const char* unit, int decimals) {
    return value ? fmt::format("{:.{}f} {}", *value, decimals, unit) : "not measured";
}

Json or_null(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

const char* basis_words(CarbohydrateBasis basis) {
    return basis == CarbohydrateBasis::total       ? "total, with fibre"
           : basis == CarbohydrateBasis::available ? "available"
                                                   : "not told";
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
            {"carbohydrate_basis", basis_words(food.basis)},
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
                       number_words(portion.carbohydrate_g, "g", 1), basis_words(food.basis),
                       number_words(portion.fibre_g, "g", 1));
    if (food.basis == CarbohydrateBasis::total) {
        out << ", available " << number_words(portion.available_carbohydrate_g, "g", 1);
    }
    out << "\n  " << food.source << "\n";
}

// The table to look in: the shipped one, or that of a file. Rows that can't be read are told.
struct Table {
    std::vector<FoodFacts> own;
    bool shipped = true;
    Exit exit = Exit::done;

    std::span<const FoodFacts> foods() const {
        return shipped ? std::span<const FoodFacts>(shipped_foods()) : own;
    }
};

tl::expected<Table, Exit> table_of(const FoodsOptions& options, const Streams& streams) {
    Table table;
    if (options.table.empty()) {
        return table;
    }
    table.shipped = false;
    FoodTableOptions how;
    how.columns = options.columns;
    how.basis = options.available ? std::optional(CarbohydrateBasis::available)
                : options.total   ? std::optional(CarbohydrateBasis::total)
                                  : std::nullopt;
    if (!options.decimal.empty()) {
        how.decimal_mark = options.decimal == "comma" ? ',' : '.';
    }
    auto file = food_table_file(options.table, how);
    if (!file) {
        streams.err << file.error() << "\n";
        return tl::make_unexpected(Exit::bad_input);
    }
    for (const std::string& one : file->taken_as) {
        streams.err << options.table << ": " << one << "\n";
    }
    for (const std::string& fault : file->not_read) {
        streams.err << options.table << ": " << fault << "; left out\n";
        table.exit = Exit::bad_input;
    }
    table.own = std::move(file->foods);
    if (table.own.empty()) {
        streams.err << options.table << ": found no food, expected rows of them\n";
        return tl::make_unexpected(Exit::bad_input);
    }
    return table;
}

Exit work_out(const FoodsOptions& options, const KnownFoods& known, const Streams& streams) {
    const EatenText eaten = eaten_text(options.eaten, known);
    if (options.json) {
        Json json = {{"version", foods_json_version}, {"asked", options.eaten}};
        json["foods"] = Json::array();
        json["eaten"] = json_of_eaten(eaten);
        streams.out << dumped(json);
    } else {
        print_eaten(eaten, "", streams.out);
    }
    return eaten.found_all() ? Exit::done : Exit::cannot_answer;
}

// The client's own foods first, each once.
std::vector<FoodFound> looked_up(const std::string& typed, std::span<const FoodFacts> own,
                                 std::span<const FoodFacts> table) {
    std::vector<FoodFound> found = foods_called(typed, own);
    const std::vector<FoodFound> more = foods_called(typed, table);
    found.insert(found.end(), more.begin(), more.end());
    return found;
}

std::vector<FoodFacts> foods_of(const ClientFoods* client) {
    std::vector<FoodFacts> foods;
    if (client != nullptr) {
        foods = client->usual;
        for (const Recipe& recipe : client->recipes) {
            foods.push_back(recipe.facts);
        }
    }
    return foods;
}

}  // namespace

Exit foods(const FoodsOptions& options, const Streams& streams, const ClientFoods* client) {
    const auto wrong = [&](const char* sentence) {
        streams.err << "tracewright: " << sentence << "\n";
        return Exit::wrong_usage;
    };
    if (options.grams && !(*options.grams > 0)) {
        return wrong("found --grams that is not above 0, expected a weight");
    }
    if (options.words.empty() == options.eaten.empty()) {
        return wrong("found neither or both, expected either words to look for or --eaten TEXT");
    }
    const auto table = table_of(options, streams);
    if (!table) {
        return table.error();
    }
    if (!options.eaten.empty()) {
        const Exit exit = work_out(options, {client, table->foods()}, streams);
        return table->exit == Exit::done ? exit : table->exit;
    }
    std::string typed;
    for (const std::string& word : options.words) {
        typed += (typed.empty() ? "" : " ") + word;
    }
    const std::vector<FoodFacts> own = foods_of(client);
    std::vector<FoodFound> found = looked_up(typed, own, table->foods());
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
    json["eaten"] = nullptr;
    if (options.json) {
        streams.out << dumped(json);
    } else if (found.empty()) {
        streams.out << "No food of this name is in the table.\n";
    }
    return table->exit == Exit::done && found.empty() ? Exit::cannot_answer : table->exit;
}

}  // namespace tracewright
