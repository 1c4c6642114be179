#include "cli/eaten_json.hpp"

#include <fmt/format.h>

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

template <typename Carbohydrate>
std::string words_of(const std::optional<Carbohydrate>& carbohydrate) {
    if (!carbohydrate) {
        return "not known";
    }
    return carbohydrate->half_width >= 0.5
               ? fmt::format("{:.0f} g give or take {:.0f}", carbohydrate->grams,
                             carbohydrate->half_width)
               : fmt::format("{:.0f} g", carbohydrate->grams);
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

void print_food(const EatenFood& food, const std::string& indent, std::ostream& out) {
    if (food.denied) {
        out << indent << "'" << food.written << "': not eaten\n";
    } else if (food.candidates.empty() || food.confidence == 0) {
        out << indent << "'" << food.written << "': ?\n";
    } else {
        out << indent
            << fmt::format("'{}': {}, {:.0f} g{}{}\n", food.written,
                           food.candidates.front().food.name, food.portion.grams,
                           food.counted ? "" : " (not counted)",
                           food.sure() ? "" : fmt::format(" (? {:.1f})", food.confidence));
    }
    for (const Doubt& doubt : food.doubts) {
        out << indent << "  ? " << name_of(doubt.about) << ": " << doubt.sentence << "\n";
    }
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

void print_eaten(const EatenText& eaten, const std::string& indent, std::ostream& out) {
    for (const EatenFood& food : eaten.foods) {
        print_food(food, indent, out);
    }
    if (!eaten.found_all()) {
        out << indent
            << (eaten.foods.empty() ? "No food is named.\n"
                                    : "Not worked out: not every food was found.\n");
        return;
    }
    out << indent
        << fmt::format(
               "carbohydrate with fibre {}, without {}; fibre {}, energy {}\n",
               words_of(eaten.total), words_of(eaten.available),
               eaten.fibre_g ? fmt::format("{:.1f} g", *eaten.fibre_g) : "not known",
               eaten.energy_kcal ? fmt::format("{:.0f} kcal", *eaten.energy_kcal) : "not known");
}

}  // namespace tracewright
