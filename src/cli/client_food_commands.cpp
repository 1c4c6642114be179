#include "cli/eaten_lines.hpp"
#include "cli/practice_commands.hpp"
#include "store/foods_of_client.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

Exit wrong(const Streams& streams, const std::string& sentence) {
    streams.err << "tracewright: " << sentence << "\n";
    return Exit::wrong_usage;
}

// One food with its grams out of "1 slice of rye bread": for a correction or a recipe it must be
// found, and its portion written.
tl::expected<std::vector<FoodAmount>, std::string> amounts_of(const std::string& text,
                                                              const ClientFoods& own,
                                                              bool portions_needed) {
    const EatenText eaten = eaten_text(text, {&own});
    std::vector<FoodAmount> amounts;
    for (const EatenFood& food : eaten.foods) {
        if (food.denied || food.alternative || !food.counted) {
            return tl::make_unexpected("found '" + food.written +
                                       "', expected a food of the tables or of the client");
        }
        const bool unwritten =
            std::any_of(food.doubts.begin(), food.doubts.end(), [](const Doubt& doubt) {
                return doubt.about == DoubtAbout::portion || doubt.about == DoubtAbout::eaten;
            });
        if (portions_needed && unwritten) {
            return tl::make_unexpected("found '" + food.written +
                                       "', expected it with its portion, such as '150 g' or '1 "
                                       "slice'");
        }
        amounts.push_back({food.candidates.front().food, food.portion.grams});
    }
    if (amounts.empty()) {
        return tl::make_unexpected("found no food in '" + text + "', expected some");
    }
    return amounts;
}

std::string portion_written(const std::string& text, const FoodFacts& food, double grams) {
    const auto portion = portion_and_name(eaten_words(text)).portion;
    if (portion.told() && portion.measure != nullptr &&
        portion.measure->of != HouseholdMeasure::Of::weight) {
        return fmt::format("{:g} {}", portion.count.value_or(1), portion.measure->name);
    }
    return grams == food.portion_g ? food.portion : fmt::format("{:.0f} g", grams);
}

tl::expected<ClientFood, std::string> correction_of(const PracticeWords& words,
                                                    const ClientFoods& own) {
    return amounts_of(words.is, own, false)
        .and_then(
            [&](const std::vector<FoodAmount>& amounts) -> tl::expected<ClientFood, std::string> {
                if (amounts.size() != 1) {
                    return tl::make_unexpected(
                        std::string("found several foods in --is, expected one (make a recipe of "
                                    "several)"));
                }
                FoodCorrection correction{words.word, amounts.front().food};
                // A portion of several says how much the one word stands for.
                correction.food.portion =
                    portion_written(words.is, correction.food, amounts.front().grams);
                correction.food.portion_g = amounts.front().grams;
                return correction;
            });
}

tl::expected<ClientFood, std::string> recipe_of(const PracticeWords& words,
                                                const ClientFoods& own) {
    return amounts_of(words.of, own, true).map([&](const std::vector<FoodAmount>& amounts) {
        Recipe recipe{words.recipe, words.portions, {}, {}};
        for (const FoodAmount& one : amounts) {
            recipe.parts.push_back({one.food.name, one.grams});
        }
        recipe.facts = recipe_facts(recipe.name, amounts, recipe.portions);
        return ClientFood(recipe);
    });
}

// Typed for one portion; kept for 100 g.
tl::expected<ClientFood, std::string> usual_food_of(const PracticeWords& words) {
    if (!words.grams || !(*words.grams > 0)) {
        return tl::make_unexpected(
            std::string("found no weight of the portion, expected --grams above 0"));
    }
    if (words.carbohydrate && !words.available && !words.total) {
        return tl::make_unexpected(
            std::string("found --carbohydrate alone, expected --available (without fibre, as on "
                        "European labels) or --total (with it, as on US ones)"));
    }
    const auto per_100 = [&](const std::optional<double>& of_portion) {
        return of_portion ? std::optional(*of_portion * 100 / *words.grams) : std::nullopt;
    };
    FoodFacts food;
    food.name = words.food;
    food.portion = words.portion.empty() ? "1 portion" : words.portion;
    food.portion_g = *words.grams;
    food.energy_kcal = per_100(words.energy);
    food.carbohydrate_g = per_100(words.carbohydrate);
    food.fibre_g = per_100(words.fibre);
    food.basis = !words.carbohydrate ? CarbohydrateBasis::not_told
                 : words.total       ? CarbohydrateBasis::total
                                     : CarbohydrateBasis::available;
    food.source = "told of this client";
    return food;
}

std::string nutrients(const FoodFacts& food) {
    const FoodPortion one = portion_of(food, food.portion_g);
    const auto words = [](const std::optional<double>& grams) {
        return grams ? fmt::format("{:.0f} g", *grams) : "not known";
    };
    return fmt::format(
        "{}, {:.0f} g: carbohydrate with fibre {}, without {}", food.portion, food.portion_g,
        words(food.basis == CarbohydrateBasis::total ? one.carbohydrate_g : std::nullopt),
        words(one.available_carbohydrate_g));
}

std::string line_of(const ClientFood& food) {
    if (const auto* correction = std::get_if<FoodCorrection>(&food)) {
        return fmt::format("'{}' is {} ({})", correction->said, correction->food.name,
                           nutrients(correction->food));
    }
    if (const auto* recipe = std::get_if<Recipe>(&food)) {
        std::string parts;
        for (const Recipe::Part& part : recipe->parts) {
            parts += fmt::format("{}{:.0f} g {}", parts.empty() ? "" : ", ", part.grams, part.food);
        }
        return fmt::format("recipe '{}' ({}), of {}", recipe->name, nutrients(recipe->facts),
                           parts);
    }
    const auto& facts = std::get<FoodFacts>(food);
    return fmt::format("food '{}' ({})", facts.name, nutrients(facts));
}

Exit keep(OpenClient& open, const tl::expected<ClientFood, std::string>& food,
          const Streams& streams) {
    if (!food) {
        return wrong(streams, food.error());
    }
    const auto kept = open.store().keep_food(open.client, *food, open.practice.acting);
    if (!kept) {
        return said(kept.error(), streams);
    }
    streams.out << fmt::format("{}. {}\n", *kept, line_of(*food));
    return Exit::done;
}

}  // namespace

Exit usual_foods(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams) {
    const int asked = (words.word.empty() ? 0 : 1) + (words.recipe.empty() ? 0 : 1) +
                      (words.food.empty() ? 0 : 1) + (words.forget ? 1 : 0);
    if (asked > 1 || words.word.empty() != words.is.empty() ||
        words.recipe.empty() != words.of.empty()) {
        return wrong(
            streams,
            "found another combination, expected --word WORD --is FOOD, --recipe NAME --of "
            "FOODS, --food NAME --grams N, or --forget NUMBER");
    }
    if (!(words.portions > 0)) {
        return wrong(streams, "found --portions that is not above 0, expected how many it gives");
    }
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    const auto own = foods_of_client(open->store(), open->client);
    if (!own) {
        return said(own.error(), streams);
    }
    if (words.forget) {
        const auto gone =
            open->store().forget_food(open->client, *words.forget, open->practice.acting);
        if (!gone) {
            return said(gone.error(), streams);
        }
        streams.out << fmt::format("food {} is forgotten.\n", *words.forget);
        return Exit::done;
    }
    if (asked == 1) {
        return keep(*open,
                    !words.word.empty()     ? correction_of(words, *own)
                    : !words.recipe.empty() ? recipe_of(words, *own)
                                            : usual_food_of(words),
                    streams);
    }
    const auto records = open->store().foods(open->client);
    if (!records) {
        return said(records.error(), streams);
    }
    for (const FoodRecord& record : *records) {
        streams.out << fmt::format("{}. {}\n", record.id, line_of(record.food));
    }
    if (records->empty()) {
        streams.out << "Nothing is known of this client's foods yet.\n";
    }
    return Exit::done;
}

Exit foods_client(const PracticeOptions& options, const FoodsOptions& asked,
                  const Streams& streams) {
    auto open = opened_client(options, asked.client, streams);
    if (!open) {
        return open.error();
    }
    const auto own = foods_of_client(open->store(), open->client);
    if (!own) {
        return said(own.error(), streams);
    }
    return foods(asked, streams, &*own);
}

}  // namespace tracewright
