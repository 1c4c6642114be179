#include "render/eaten_json.hpp"

namespace tracewright {

namespace {

Json or_null(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

template <typename Carbohydrate>
Json json_of(const std::optional<Carbohydrate>& carbohydrate) {
    return carbohydrate
               ? Json{{"grams", carbohydrate->grams}, {"half_width", carbohydrate->half_width}}
               : Json(nullptr);
}

Json json_of(const EatenFood& food) {
    const bool found = food.confidence > 0 && !food.denied;
    Json json = {{"written", food.written},
                 {"denied", food.denied},
                 {"counted", food.counted},
                 {"confidence", food.confidence},
                 {"food", found ? Json(food.candidates.front().food.name) : Json(nullptr)},
                 {"found_by", found ? Json(name_of(food.candidates.front().by)) : Json(nullptr)},
                 {"grams", found ? Json(food.portion.grams) : Json(nullptr)},
                 {"grams_half_width", found ? Json(food.portion.half_width) : Json(nullptr)},
                 {"total_carbohydrate", json_of(food.total)},
                 {"available_carbohydrate", json_of(food.available)},
                 {"fibre_g", or_null(food.fibre_g)},
                 {"energy_kcal", or_null(food.energy_kcal)}};
    json["others"] = Json::array();
    for (std::size_t i = found ? 1 : 0; i < food.candidates.size(); ++i) {
        json["others"].push_back({{"food", food.candidates[i].food.name},
                                  {"confidence", food.candidates[i].confidence}});
    }
    json["doubts"] = Json::array();
    for (const Doubt& doubt : food.doubts) {
        json["doubts"].push_back({{"about", name_of(doubt.about)}, {"sentence", doubt.sentence}});
    }
    return json;
}

}  // namespace

Json json_of_eaten(const EatenText& eaten) {
    Json json = {{"confidence", eaten.confidence},
                 {"total_carbohydrate", json_of(eaten.total)},
                 {"available_carbohydrate", json_of(eaten.available)},
                 {"fibre_g", or_null(eaten.fibre_g)},
                 {"energy_kcal", or_null(eaten.energy_kcal)}};
    json["foods"] = Json::array();
    for (const EatenFood& food : eaten.foods) {
        json["foods"].push_back(json_of(food));
    }
    return json;
}

}  // namespace tracewright
