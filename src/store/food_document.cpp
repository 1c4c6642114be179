#include "store/food_document.hpp"

#include <nlohmann/json.hpp>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

struct Nutrient {
    const char* key;
    std::optional<double> FoodFacts::*value;
};
constexpr Nutrient nutrients[] = {{"energy_kcal", &FoodFacts::energy_kcal},
                                  {"carbohydrate_g", &FoodFacts::carbohydrate_g},
                                  {"fibre_g", &FoodFacts::fibre_g},
                                  {"protein_g", &FoodFacts::protein_g},
                                  {"fat_g", &FoodFacts::fat_g},
                                  {"glycaemic_index", &FoodFacts::glycaemic_index}};

const char* word_of(CarbohydrateBasis basis) {
    return basis == CarbohydrateBasis::total       ? "total"
           : basis == CarbohydrateBasis::available ? "available"
                                                   : "not told";
}

// Nutrients per 100 g.
Json document_of(const FoodFacts& food) {
    Json document = {{"name", food.name}, {"portion", food.portion}, {"portion_g", food.portion_g}};
    for (const Nutrient& one : nutrients) {
        if (food.*one.value) {
            document[one.key] = *(food.*one.value);
        }
    }
    document["carbohydrate"] = word_of(food.basis);
    document["source"] = food.source;
    return document;
}

FoodFacts facts_of(const Json& document) {
    FoodFacts food;
    food.name = document.at("name").get<std::string>();
    food.portion = document.at("portion").get<std::string>();
    food.portion_g = document.at("portion_g").get<double>();
    for (const Nutrient& one : nutrients) {
        if (const auto found = document.find(one.key); found != document.end()) {
            food.*one.value = found->get<double>();
        }
    }
    const std::string basis = document.at("carbohydrate").get<std::string>();
    food.basis = basis == "total"       ? CarbohydrateBasis::total
                 : basis == "available" ? CarbohydrateBasis::available
                                        : CarbohydrateBasis::not_told;
    food.source = document.at("source").get<std::string>();
    return food;
}

ClientFood food_of(const Json& document) {
    FoodFacts facts = facts_of(document.at("food"));
    const std::string kind = document.at("kind").get<std::string>();
    if (kind == "correction") {
        return FoodCorrection{document.at("said").get<std::string>(), std::move(facts)};
    }
    if (kind == "recipe") {
        Recipe recipe{facts.name, document.at("portions").get<double>(), {}, facts};
        for (const Json& part : document.at("parts")) {
            recipe.parts.push_back(
                {part.at("food").get<std::string>(), part.at("grams").get<double>()});
        }
        return recipe;
    }
    return facts;
}

}  // namespace

std::string food_document(const ClientFood& food) {
    Json document;
    if (const auto* correction = std::get_if<FoodCorrection>(&food)) {
        document = {{"kind", "correction"}, {"said", correction->said}};
        document["food"] = document_of(correction->food);
    } else if (const auto* recipe = std::get_if<Recipe>(&food)) {
        document = {{"kind", "recipe"}, {"portions", recipe->portions}};
        document["parts"] = Json::array();
        for (const Recipe::Part& part : recipe->parts) {
            document["parts"].push_back({{"food", part.food}, {"grams", part.grams}});
        }
        document["food"] = document_of(recipe->facts);
    } else {
        document = {{"kind", "food"}};
        document["food"] = document_of(std::get<FoodFacts>(food));
    }
    return document.dump(-1, ' ', false, Json::error_handler_t::replace);
}

tl::expected<ClientFood, std::string> food_read(std::string_view document) {
    try {
        return food_of(Json::parse(document));
    } catch (const Json::exception&) {
        return tl::make_unexpected(std::string(
            "found a client's food that does not read, expected one as it was written"));
    }
}

}  // namespace tracewright
