#include "diary/client_foods.hpp"

#include "diary/written_words.hpp"

#include <optional>
#include <utility>

namespace tracewright {

namespace {

// Per 100 g of the whole; empty where a part's is not known.
template <typename Per100>
std::optional<double> mean_of(std::span<const FoodAmount> parts, double grams, Per100 per_100) {
    double sum = 0;
    for (const FoodAmount& part : parts) {
        const std::optional<double> one = per_100(part.food);
        if (!one) {
            return std::nullopt;
        }
        sum += *one * part.grams;
    }
    return sum / grams;
}

}  // namespace

std::string called(const ClientFood& food) {
    if (const auto* correction = std::get_if<FoodCorrection>(&food)) {
        return "correction " + small_letters(correction->said);
    }
    if (const auto* recipe = std::get_if<Recipe>(&food)) {
        return "recipe " + small_letters(recipe->name);
    }
    return "food " + small_letters(std::get<FoodFacts>(food).name);
}

void ClientFoods::add(ClientFood food) {
    if (auto* correction = std::get_if<FoodCorrection>(&food)) {
        corrections.push_back(std::move(*correction));
    } else if (auto* recipe = std::get_if<Recipe>(&food)) {
        recipes.push_back(std::move(*recipe));
    } else {
        usual.push_back(std::move(std::get<FoodFacts>(food)));
    }
}

FoodFacts recipe_facts(const std::string& name, std::span<const FoodAmount> parts,
                       double portions) {
    FoodFacts facts;
    facts.name = name;
    facts.portion = "1 portion";
    facts.source = "the client's recipe";
    facts.basis = CarbohydrateBasis::not_told;
    double grams = 0;
    for (const FoodAmount& part : parts) {
        grams += part.grams;
    }
    if (!(grams > 0) || !(portions > 0)) {
        return facts;
    }
    facts.portion_g = grams / portions;
    const auto of = [&](auto per_100) { return mean_of(parts, grams, per_100); };
    facts.energy_kcal = of([](const FoodFacts& food) { return food.energy_kcal; });
    facts.fibre_g = of([](const FoodFacts& food) { return food.fibre_g; });
    facts.protein_g = of([](const FoodFacts& food) { return food.protein_g; });
    facts.fat_g = of([](const FoodFacts& food) { return food.fat_g; });
    const auto total = of([](const FoodFacts& food) {
        return food.basis == CarbohydrateBasis::total ? food.carbohydrate_g : std::nullopt;
    });
    const auto available =
        of([](const FoodFacts& food) { return food.available_carbohydrate_g(); });
    if (total) {
        facts.carbohydrate_g = total;
        facts.basis = CarbohydrateBasis::total;
    } else if (available) {
        facts.carbohydrate_g = available;
        facts.basis = CarbohydrateBasis::available;
    }
    return facts;
}

}  // namespace tracewright
