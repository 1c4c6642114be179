#include "diary/written_portion.hpp"

#include "diary/food_spelling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace tracewright {

namespace {

using Of = HouseholdMeasure::Of;

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
            if (const std::size_t said = carbohydrate_said()) {
                at_ += said - 1;
                continue;
            }
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

    // "45 g carbs", "45g of carbohydrate": how much carbohydrate, not how much food. 0 if not so.
    std::size_t carbohydrate_said() const {
        std::size_t i = at_;
        if (!words_[i].number) {
            return 0;
        }
        ++i;
        i += is(i, "g") || is(i, "gram") || is(i, "grams") ? 1U : 0U;
        i += is(i, "of") ? 1U : 0U;
        const bool said =
            is(i, "carb") || is(i, "carbs") || is(i, "carbohydrate") || is(i, "carbohydrates");
        return said ? i + 1 - at_ : 0;
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

}  // namespace

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

}  // namespace tracewright
