#include "diary/written_portion.hpp"

#include "diary/food_spelling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace tracewright {

namespace {

using Of = HouseholdMeasure::Of;

// Cup and spoons are the US ones of the shipped table (236.6, 14.8 and 4.9 ml); glass, bowl, plate,
// handful and the like, and all half widths, are ours, no source.
constexpr std::array measures{HouseholdMeasure{"g", Of::weight, 1, 0},
                              HouseholdMeasure{"kg", Of::weight, 1000, 0},
                              HouseholdMeasure{"oz", Of::weight, 28.35, 0},
                              HouseholdMeasure{"lb", Of::weight, 453.6, 0},
                              HouseholdMeasure{"ml", Of::volume, 1, 0},
                              HouseholdMeasure{"cl", Of::volume, 10, 0},
                              HouseholdMeasure{"dl", Of::volume, 100, 0},
                              HouseholdMeasure{"l", Of::volume, 1000, 0},
                              HouseholdMeasure{"cup", Of::volume, 236.6, 0.15},
                              HouseholdMeasure{"tbsp", Of::volume, 14.8, 0.2},
                              HouseholdMeasure{"tsp", Of::volume, 4.9, 0.2},
                              HouseholdMeasure{"spoon", Of::volume, 14.8, 0.4},
                              HouseholdMeasure{"glass", Of::volume, 200, 0.25},
                              HouseholdMeasure{"mug", Of::volume, 300, 0.25},
                              HouseholdMeasure{"bowl", Of::volume, 300, 0.35},
                              HouseholdMeasure{"plate", Of::volume, 400, 0.35},
                              HouseholdMeasure{"handful", Of::volume, 60, 0.35},
                              HouseholdMeasure{"ladle", Of::volume, 120, 0.25},
                              HouseholdMeasure{"scoop", Of::volume, 60, 0.3},
                              HouseholdMeasure{"can", Of::volume, 330, 0.2},
                              HouseholdMeasure{"bottle", Of::volume, 500, 0.35},
                              HouseholdMeasure{"pint", Of::volume, 520, 0.1},
                              HouseholdMeasure{"slice", Of::piece, 0, 0.15},
                              HouseholdMeasure{"piece", Of::piece, 0, 0.2},
                              HouseholdMeasure{"portion", Of::piece, 0, 0.35},
                              HouseholdMeasure{"pack", Of::piece, 0, 0.4},
                              HouseholdMeasure{"bar", Of::piece, 0, 0.3},
                              HouseholdMeasure{"square", Of::weight, 10, 0.3},
                              HouseholdMeasure{"strip", Of::piece, 0, 0.3}};

struct OtherName {
    const char* word;
    const char* name;
};
constexpr std::array other_names{
    OtherName{"gr", "g"},         OtherName{"gram", "g"},          OtherName{"gramme", "g"},
    OtherName{"kilo", "kg"},      OtherName{"ounce", "oz"},        OtherName{"pound", "lb"},
    OtherName{"litre", "l"},      OtherName{"liter", "l"},         OtherName{"tablespoon", "tbsp"},
    OtherName{"teaspoon", "tsp"}, OtherName{"spoonful", "spoon"},  OtherName{"plateful", "plate"},
    OtherName{"bowlful", "bowl"}, OtherName{"serving", "portion"}, OtherName{"helping", "portion"},
    OtherName{"packet", "pack"},  OtherName{"tin", "can"},         OtherName{"tbs", "tbsp"},
    OtherName{"cupful", "cup"},   OtherName{"rasher", "slice"},    OtherName{"wedge", "slice"}};

const HouseholdMeasure* measure_called(std::string_view word) {
    for (const OtherName& other : other_names) {
        if (same_food_word(word, other.word)) {
            word = other.name;
            break;
        }
    }
    for (const HouseholdMeasure& one : measures) {
        if (word == one.name || (word.size() > 3 && same_food_word(word, one.name))) {
            return &one;
        }
    }
    return nullptr;
}

template <std::size_t N>
bool one_of(const std::array<const char*, N>& words, std::string_view word) {
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

// Say nothing of the food.
constexpr std::array fillers{
    "a",         "an",     "the",    "of",     "my",     "our",    "her",     "his",    "had",
    "have",      "having", "ate",    "eat",    "eaten",  "i",      "we",      "for",    "at",
    "breakfast", "lunch",  "dinner", "supper", "snack",  "brunch", "x",       "again",  "just",
    "only",      "also",   "too",    "this",   "that",   "today",  "drank",   "it",     "was",
    "is",        "bit",    "lot",    "as",     "usual",  "about",  "around",  "approx", "roughly",
    "ca",        "some",   "little", "lots",   "plenty", "few",    "several", "couple", "half",
    "quarter",   "more",   "all",    "small",  "medium", "large",  "big",     "huge",   "tiny",
    "level",     "heaped", "full",   "extra",  "sized",  "nice"};

constexpr std::array vague_words{"some",  "little", "bit",    "lot",     "lots", "plenty",
                                 "about", "around", "approx", "roughly", "ca"};

// A can, a bar and the like are measures only where they are plainly meant so.
constexpr std::array also_foods{"bar",   "square", "pack", "strip",
                                "plate", "glass",  "can",  "bottle"};

// Reads a piece from left to right.
class PortionReader {
  public:
    explicit PortionReader(std::span<const EatenWord> words) : words_(words) {}

    PortionAndName read() {
        for (; at_ < words_.size(); ++at_) {
            const EatenWord& word = words_[at_];
            if (word.number && !is(at_ + 1, "percent")) {
                number(word);
            } else if (word.number) {
                result_.name.push_back(word.text);
            } else if (!counted(word.text) && !sized(word.text) && !measured(word.text)) {
                plain(word.text);
            }
        }
        return std::move(result_);
    }

  private:
    std::span<const EatenWord> words_;
    std::size_t at_ = 0;
    PortionAndName result_;

    WrittenPortion& portion() { return result_.portion; }
    bool is(std::size_t i, const char* text) const {
        return i < words_.size() && words_[i].text == text;
    }

    // The place of the measure behind a number or an article: sizes, "x" and "a" may stand between.
    std::optional<std::size_t> measure_after(std::size_t i) const {
        while (i < words_.size() &&
               (words_[i].text == "x" || words_[i].text == "a" || words_[i].text == "of" ||
                words_[i].text == "heaped" || words_[i].text == "level" ||
                words_[i].text == "full" || size_of(words_[i].text) != 1)) {
            ++i;
        }
        if (i >= words_.size() || words_[i].number) {
            return std::nullopt;
        }
        const HouseholdMeasure* measure = measure_called(words_[i].text);
        if (measure == nullptr) {
            return std::nullopt;
        }
        const bool drunk_from =
            std::string_view(measure->name) == "glass" || std::string_view(measure->name) == "can";
        const bool last = i + 1 == words_.size() && !result_.name.empty();  // "chocolate 2 squares"
        const bool plainly = drunk_from || last || is(i + 1, "of");
        return plainly || !one_of(also_foods, measure->name) ? std::optional(i) : std::nullopt;
    }

    static double size_of(const std::string& word) {
        return word == "small" || word == "tiny"                    ? 0.75
               : word == "large" || word == "big" || word == "huge" ? 1.3
                                                                    : 1;
    }

    void take_measure(std::size_t place) {
        for (std::size_t i = at_ + 1; i < place; ++i) {
            portion().size *= size_of(words_[i].text);
        }
        portion().measure = measure_called(words_[place].text);
        at_ = place;
    }

    void number(const EatenWord& word) {
        const auto place = measure_after(at_ + 1);
        const bool weighs = place && measure_called(words_[*place].text)->of == Of::weight;
        if (portion().count && !weighs) {
            if (!portion().measure && place) {  // "2 bread slices" written "2 bread 1 slice"
                take_measure(*place);
            }
            return;
        }
        portion().count = *word.number;
        portion().count_half_width = word.half_width;
        if (weighs) {
            portion().size = 1;
            portion().vague.clear();
        }
        if (place) {
            take_measure(*place);
        }
    }

    bool counted(const std::string& word) {
        const bool first = result_.name.empty() && !portion().count;
        double count = 0;
        if (word == "half" || word == "quarter") {
            count = word == "half" ? 0.5 : 0.25;
        } else if (word == "couple") {
            count = 2;
        } else if (word == "few") {
            count = 3;
        } else if (word == "several") {
            count = 4;
        } else if ((word == "a" || word == "an") && first) {
            const bool of_another = is(at_ + 1, "half") || is(at_ + 1, "quarter") ||
                                    is(at_ + 1, "couple") || is(at_ + 1, "few") ||
                                    is(at_ + 1, "bit") || is(at_ + 1, "little") ||
                                    is(at_ + 1, "lot");
            if (of_another) {
                return true;
            }
            count = 1;
        } else {
            return false;
        }
        if (portion().count) {
            return true;
        }
        portion().count = count;
        if (count > 1) {
            portion().count_half_width = count / 3;
            portion().vague = word;
        }
        if (const auto place = measure_after(at_ + 1)) {
            take_measure(*place);
        }
        return true;
    }

    bool sized(const std::string& word) {
        portion().size *= size_of(word);
        return size_of(word) != 1;
    }

    // A measure without a number: "bowl of soup", "slices of bread", "bread, slice".
    bool measured(const std::string& word) {
        const HouseholdMeasure* measure = measure_called(word);
        const bool plainly = result_.name.empty() && at_ + 1 < words_.size() && word.size() > 1;
        if (measure == nullptr || portion().measure != nullptr || !plainly ||
            (one_of(also_foods, measure->name) && !is(at_ + 1, "of"))) {
            return false;
        }
        portion().measure = measure;
        if (!portion().count) {
            const bool several = word.ends_with("s") && word != "glass";
            portion().count = several ? 2 : 1;
            if (several) {
                portion().vague = word;
                portion().count_half_width = 1;
            }
        }
        return true;
    }

    void plain(const std::string& word) {
        if (one_of(vague_words, word)) {
            portion().vague = word;
        }
        if (!one_of(fillers, word)) {
            result_.name.push_back(word);
        }
    }
};

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
    constexpr std::array names{"juice", "milk",     "drink", "coffee", "tea",     "beer",
                               "wine",  "lemonade", "cola",  "ale",    "spirits", "water"};
    const std::vector<std::string> words =
        food_name_words(food.name.substr(0, food.name.find(',')));
    return !words.empty() && (one_of(names, words.back()) || one_of(names, words.front())) &&
           words.back() != "chocolate";
}

bool take_measure_from_name(PortionAndName& read) {
    if (read.portion.told() || read.name.size() < 2) {
        return false;
    }
    const HouseholdMeasure* measure = measure_called(read.name.back());
    if (measure == nullptr) {
        return false;
    }
    read.portion.measure = measure;
    read.portion.count = 1;
    read.name.pop_back();
    return true;
}

PortionAndName portion_and_name(std::span<const EatenWord> words) {
    return PortionReader(words).read();
}

PortionWeight portion_weight(const WrittenPortion& portion, const FoodFacts& food, bool own) {
    return Weigher(portion, food, own).weigh();
}

}  // namespace tracewright
