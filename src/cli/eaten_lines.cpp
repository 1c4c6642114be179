#include "cli/eaten_lines.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

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
