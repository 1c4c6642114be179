#include "diary/food_table.hpp"

#include "diary/foods_text.hpp"
#include "diary/table_cells.hpp"

#include <algorithm>
#include <charconv>
#include <numeric>

namespace tracewright {

namespace {

std::optional<double> number(const std::string& text) {
    double value = 0;
    const char* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    return error == std::errc{} && stop == end && !text.empty() ? std::optional(value)
                                                                : std::nullopt;
}

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words(1);
    for (char c : text) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        const bool within = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
                            static_cast<unsigned char>(c) >= 0x80;
        if (within) {
            words.back() += c;
        } else if (!words.back().empty()) {
            words.emplace_back();
        }
    }
    if (words.back().empty()) {
        words.pop_back();
    }
    return words;
}

// "potatoes" meets "potato", "rice" meets "rice".
bool meets(const std::string& asked, const std::string& word) {
    return word == asked || (asked.size() >= 3 && word.starts_with(asked)) ||
           (word.size() >= 3 && asked.starts_with(word) && asked.size() - word.size() <= 2);
}

std::optional<double> times(const std::optional<double>& per_100, double grams) {
    return per_100 ? std::optional(*per_100 * grams / 100) : std::nullopt;
}

}  // namespace

std::optional<double> FoodFacts::available_carbohydrate_g() const {
    if (basis == CarbohydrateBasis::available) {
        return carbohydrate_g;
    }
    if (basis != CarbohydrateBasis::total || !carbohydrate_g || !fibre_g) {
        return std::nullopt;
    }
    return std::max(0.0, *carbohydrate_g - *fibre_g);
}

FoodPortion portion_of(const FoodFacts& food, double grams) {
    return {grams,
            times(food.energy_kcal, grams),
            times(food.carbohydrate_g, grams),
            times(food.available_carbohydrate_g(), grams),
            times(food.fibre_g, grams),
            times(food.protein_g, grams),
            times(food.fat_g, grams)};
}

std::vector<FoodFacts> foods_in(std::string_view csv, CarbohydrateBasis basis) {
    std::vector<FoodFacts> foods;
    for (const auto& cells : table_cells(csv)) {
        const auto grams = cells.size() == 11 ? number(cells[2]) : std::nullopt;
        if (grams) {
            foods.push_back({cells[0], cells[1], *grams, number(cells[3]), number(cells[4]),
                             number(cells[5]), number(cells[6]), number(cells[7]), number(cells[8]),
                             cells[10], basis});
        }
    }
    return foods;
}

const std::vector<FoodFacts>& shipped_foods() {
    static const std::vector<FoodFacts> foods = foods_in(foods_csv(), CarbohydrateBasis::total);
    return foods;
}

std::vector<FoodFound> foods_called(std::string_view typed, std::span<const FoodFacts> foods) {
    const std::vector<std::string> asked = words_of(typed);
    std::vector<FoodFound> found;
    for (const FoodFacts& food : foods) {
        const std::vector<std::string> words = words_of(food.name);
        const auto met = std::count_if(asked.begin(), asked.end(), [&](const std::string& word) {
            return std::any_of(words.begin(), words.end(),
                               [&](const std::string& other) { return meets(word, other); });
        });
        if (met == 0 || asked.empty()) {
            continue;
        }
        const double share = static_cast<double>(met) / static_cast<double>(asked.size());
        const double spare = static_cast<double>(words.size()) - static_cast<double>(met);
        found.push_back({&food, share / (1 + 0.05 * std::max(0.0, spare))});
    }
    std::sort(found.begin(), found.end(), [](const FoodFound& a, const FoodFound& b) {
        return a.match != b.match ? a.match > b.match : a.food->name < b.food->name;
    });
    return found;
}

double glycaemic_load(double index, double available_carbohydrate_g) {
    return index * available_carbohydrate_g / 100;
}

double meal_index(std::span<const double> index, std::span<const double> carbohydrate_g) {
    double weighted = 0;
    double sum = 0;
    for (std::size_t i = 0; i < index.size(); ++i) {
        weighted += index[i] * carbohydrate_g[i];
        sum += carbohydrate_g[i];
    }
    return sum > 0 ? weighted / sum : 0;
}

double index_from_areas(double area, std::span<const double> reference_areas) {
    const double sum = std::accumulate(reference_areas.begin(), reference_areas.end(), 0.0);
    return 100 * area * static_cast<double>(reference_areas.size()) / sum;
}

const char* index_class(double index, bool seventy_is_high) {
    if (index <= 55) {
        return "low";
    }
    return index > 70 || (seventy_is_high && index >= 70) ? "high" : "medium";
}

}  // namespace tracewright
