#include "diary/portion_weight.hpp"

#include "diary/food_spelling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace tracewright {

namespace {

using Of = HouseholdMeasure::Of;

// The food's own portion in the table: how many of what.
struct OwnPortion {
    double count = 1;
    std::optional<double> millilitres;  ///< of the whole portion
    bool weighed = false;               ///< "1 oz", "3 oz": says nothing of a piece
    double pieces = 0;                  ///< "1 oz (23 whole kernels)"
};

OwnPortion own_portion(const FoodFacts& food) {
    OwnPortion own;
    const std::vector<EatenWord> words = eaten_words(food.portion);
    bool first = true;
    const std::size_t bracket = food.portion.find('(');
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!words[i].number) {
            continue;
        }
        const double number = *words[i].number;
        const std::string unit = i + 1 < words.size() ? words[i + 1].text : "";
        const std::string behind = i + 2 < words.size() ? words[i + 2].text : "";
        const HouseholdMeasure* measure = measure_called(unit);
        const bool in_brackets = words[i].from > bracket;
        if (unit == "fl" && behind == "oz") {
            own.millilitres = own.millilitres.value_or(number * 29.57);
        } else if (measure != nullptr && measure->of == Of::volume &&
                   std::string_view(measure->name) != "can" && !in_brackets) {
            own.millilitres = own.millilitres.value_or(number * measure->amount);
        } else if (in_brackets && (unit == "whole" || unit == "halves" || unit == "kernels")) {
            own.pieces = number;
        }
        if (first) {
            own.count = number > 0 ? number : 1;
            own.weighed = measure != nullptr && measure->of == Of::weight;
        }
        first = false;
    }
    return own;
}

class Weigher {
  public:
    Weigher(const WrittenPortion& portion, const FoodFacts& food, bool own)
        : portion_(portion), food_(food), own_(own), household_(own_portion(food)) {}

    PortionWeight weigh() {
        if (!portion_.told()) {
            unwritten();
        } else if (portion_.measure == nullptr) {
            bare_count();
        } else if (named_in_table()) {
            set(count() * portion_.size * each(), portion_.measure->half_width);
        } else if (portion_.measure->of == Of::weight) {
            set(count() * portion_.measure->amount, portion_.measure->half_width);
        } else if (portion_.measure->of == Of::volume) {
            by_volume();
        } else {
            by_piece();
        }
        told_about_count();
        return std::move(weight_);
    }

  private:
    const WrittenPortion& portion_;
    const FoodFacts& food_;
    bool own_;
    OwnPortion household_;
    PortionWeight weight_;

    double count() const { return portion_.count.value_or(1); }
    double each() const { return food_.portion_g / household_.count; }
    void doubt(std::string sentence) {
        weight_.doubts.push_back({DoubtAbout::portion, std::move(sentence)});
    }
    std::string household() const {
        const bool bare_point = food_.portion.starts_with(".");
        return (bare_point ? "0" : "") + food_.portion.substr(0, food_.portion.find(" (")) +
               " of " + std::to_string(std::lround(food_.portion_g)) + " g";
    }
    void set(double grams, double share) {
        weight_.grams = grams;
        const double of_count =
            count() > 0 ? std::min(1.0, portion_.count_half_width / count()) : 0;
        const double of_size = portion_.size != 1 ? 0.2 : 0;
        weight_.half_width = grams * std::min(1.0, share + of_count + of_size);
    }

    bool named_in_table() const {
        for (const EatenWord& word : eaten_words(food_.portion)) {
            if (measure_called(word.text) == portion_.measure && !household_.weighed) {
                // "1 cup (8 fl oz)" names a cup; "1 serving" says nothing of a portion.
                return std::string_view(portion_.measure->name) != "portion" || own_;
            }
        }
        return false;
    }

    void unwritten() {
        set(food_.portion_g * portion_.size, own_ ? 0.15 : 0.5);
        if (!own_) {
            doubt("the portion is not written: " + household() + " is taken");
        }
    }

    void bare_count() {
        if (household_.pieces > 0) {
            set(count() * portion_.size * food_.portion_g / household_.pieces, 0.15);
            return;
        }
        const bool piece = !household_.weighed && (!household_.millilitres || is_drink(food_));
        if (own_ || piece) {
            set(count() * portion_.size * each(), own_ ? 0.1 : is_drink(food_) ? 0.3 : 0.2);
            return;
        }
        set(food_.portion_g, 0.5);
        doubt("how much one of it weighs is not in the table: " + household() + " is taken");
    }

    void by_volume() {
        const double millilitres = count() * portion_.size * portion_.measure->amount;
        const double share = portion_.measure->half_width;
        if (household_.millilitres) {
            set(millilitres * food_.portion_g / *household_.millilitres, share);
        } else if (is_drink(food_)) {
            set(millilitres, share + 0.05);
        } else if (std::string_view(portion_.measure->name) == "handful") {
            set(count() * 30, 0.35);  // common practice, no source
        } else {
            set(millilitres * 0.7, std::min(1.0, share + 0.4));
            doubt("what a " + std::string(portion_.measure->name) +
                  " of it weighs is not in the table: 0.7 g a millilitre is taken");
        }
    }

    void by_piece() {
        const std::string name = portion_.measure->name;
        if (name == "slice" && household_.weighed) {
            set(count() * portion_.size * food_.portion_g, 0.4);
            doubt("what a slice of it weighs is not in the table: " + household() + " is taken");
        } else if (name == "piece" && !household_.weighed && !household_.millilitres) {
            set(count() * portion_.size * each(), 0.25);
        } else {
            set(count() * portion_.size * food_.portion_g,
                std::max(0.4, portion_.measure->half_width));
            doubt("what a " + name + " of it weighs is not in the table: " + household() +
                  " is taken");
        }
    }

    void told_about_count() {
        if (portion_.told() && !portion_.vague.empty()) {
            const bool counted = portion_.count_half_width > 0;
            doubt("'" + portion_.vague + "' is vague" +
                  (counted ? ": " + std::to_string(std::lround(count())) + " is taken" : ""));
        }
        if (portion_.told() && portion_.size != 1) {
            doubt(portion_.size < 1 ? "'small' is taken as a quarter less"
                                    : "'large' is taken as 30 % more");
        }
    }
};

}  // namespace

bool is_drink(const FoodFacts& food) {
    if (food.portion.find("fl oz") != std::string::npos) {
        return true;
    }
    constexpr std::array<std::string_view, 12> names{"juice", "milk", "drink",   "coffee",
                                                     "tea",   "beer", "wine",    "lemonade",
                                                     "cola",  "ale",  "spirits", "water"};
    const auto is_named = [&](const std::string& word) {
        return std::find(names.begin(), names.end(), word) != names.end();
    };
    const std::vector<std::string> words =
        food_name_words(food.name.substr(0, food.name.find(',')));
    return !words.empty() && (is_named(words.back()) || is_named(words.front())) &&
           words.back() != "chocolate";
}

PortionWeight portion_weight(const WrittenPortion& portion, const FoodFacts& food, bool own) {
    return Weigher(portion, food, own).weigh();
}

}  // namespace tracewright
