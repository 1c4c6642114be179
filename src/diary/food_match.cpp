#include "diary/food_match.hpp"

#include "diary/food_spelling.hpp"
#include "diary/food_words.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using Words = std::vector<std::string>;

constexpr double misspelt = 0.85;
constexpr std::size_t most_candidates = 5;

constexpr std::array ways{"boiled", "grilled",  "fried",     "roasted",    "roast",    "baked",
                          "raw",    "steamed",  "cooked",    "fresh",      "mashed",   "scrambled",
                          "canned", "tinned",   "frozen",    "dried",      "homemade", "home",
                          "made",   "plain",    "hot",       "cold",       "warm",     "dry",
                          "salted", "unsalted", "sweetened", "unsweetened"};

template <std::size_t N>
bool one_of(const std::array<const char*, N>& words, std::string_view word) {
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

// How two names of as many words meet, word by word.
struct NameMeets {
    bool at_all = false;
    std::vector<Doubt> doubts;  ///< of spelling

    double times() const { return doubts.empty() ? 1 : misspelt; }
};

Doubt misspelling(const std::string& typed, const std::string& meant) {
    return {DoubtAbout::spelling, "'" + typed + "' is taken for '" + meant + "'"};
}

NameMeets meeting(std::span<const std::string> typed, std::span<const std::string> name) {
    NameMeets meets;
    if (typed.size() != name.size() || typed.empty()) {
        return meets;
    }
    for (std::size_t i = 0; i < typed.size(); ++i) {
        if (same_food_word(typed[i], name[i])) {
            continue;
        }
        if (!may_be_misspelt(typed[i], name[i])) {
            return {};
        }
        meets.doubts.push_back(misspelling(typed[i], name[i]));
    }
    meets.at_all = true;
    return meets;
}

bool holds(const Words& name, const std::string& word) {
    return std::any_of(name.begin(), name.end(),
                       [&](const std::string& one) { return same_food_word(word, one); });
}

// The words of a client's own food, when a part of them was typed.
bool are_part_of(std::span<const std::string> typed, const Words& name) {
    return typed.size() < name.size() &&
           std::all_of(typed.begin(), typed.end(),
                       [&](const std::string& word) { return holds(name, word); });
}

class Finder {
  public:
    Finder(std::span<const std::string> typed, const KnownFoods& known)
        : typed_(typed), known_(known) {}

    std::vector<FoodCandidate> find() {
        if (typed_.empty()) {
            return {};
        }
        if (known_.client != nullptr) {
            clients_own();
        }
        water();
        everyday();
        table();
        std::stable_sort(found_.begin(), found_.end(),
                         [](const FoodCandidate& a, const FoodCandidate& b) {
                             const bool own_a = is_clients_own(a.by);
                             const bool own_b = is_clients_own(b.by);
                             return own_a != own_b ? own_a : a.confidence > b.confidence;
                         });
        drop_repeated();
        tell_rivals();
        return std::move(found_);
    }

  private:
    std::span<const std::string> typed_;
    const KnownFoods& known_;
    std::vector<FoodCandidate> found_;
    double most_of_table_ = 1;  // an everyday word leads

    void add(const FoodFacts& food, FoundBy by, double confidence, std::vector<Doubt> doubts) {
        found_.push_back({food, by, confidence, std::move(doubts)});
    }

    void clients_own() {
        for (const FoodCorrection& one : known_.client->corrections) {
            own(one.said, one.food, FoundBy::correction);
        }
        for (const Recipe& one : known_.client->recipes) {
            own(one.name, one.facts, FoundBy::recipe);
        }
        for (const FoodFacts& one : known_.client->usual) {
            own(one.name, one, FoundBy::usual_food);
        }
    }

    void own(const std::string& called, const FoodFacts& food, FoundBy by) {
        const Words name = food_name_words(called);
        NameMeets meets = meeting(typed_, name);
        if (meets.at_all) {
            add(food, by, meets.times(), std::move(meets.doubts));
        } else if (by != FoundBy::correction && holds_head(name) && are_part_of(typed_, name)) {
            add(food, by, 0.75, {{DoubtAbout::food, "the client's '" + called + "' is taken"}});
        }
    }

    // What the name is of: the last word, ways of cooking aside.
    std::size_t head() const {
        for (std::size_t i = typed_.size(); i-- > 0;) {
            if (!one_of(ways, typed_[i])) {
                return i;
            }
        }
        return typed_.size() - 1;
    }
    bool holds_head(const Words& name) const { return holds(name, typed_[head()]); }

    void water() {
        constexpr std::array kinds{"sparkling", "still", "tap", "hot", "cold", "mineral", "soda"};
        const bool only = typed_.back() == "water" &&
                          std::all_of(typed_.begin(), typed_.end() - 1,
                                      [&](const std::string& one) { return one_of(kinds, one); });
        if (!only) {
            return;
        }
        FoodFacts food;
        food.name = "water";
        food.portion = "1 glass";
        food.portion_g = 200;
        food.energy_kcal = food.carbohydrate_g = food.fibre_g = food.protein_g = food.fat_g = 0;
        food.source = "by definition";
        add(food, FoundBy::everyday_word, 1, {});
    }

    void everyday() {
        for (const FoodWord& word : food_words()) {
            NameMeets meets = meeting(typed_, word.parts);
            if (!meets.at_all) {
                continue;
            }
            const auto food =
                std::find_if(known_.table.begin(), known_.table.end(),
                             [&](const FoodFacts& one) { return one.name == word.food; });
            if (food == known_.table.end()) {
                continue;
            }
            if (word.usual) {
                meets.doubts.push_back(
                    {DoubtAbout::food,
                     "'" + word.word + "' can be several foods: " + word.food + " is taken"});
            }
            const bool spelt = meets.doubts.empty() || word.usual;
            const double confidence =
                (word.usual ? 0.7 : 0.97) * (spelt && meets.doubts.size() <= 1 ? 1 : misspelt);
            most_of_table_ = std::min(most_of_table_, confidence - 0.02);
            add(*food, FoundBy::everyday_word, confidence, std::move(meets.doubts));
        }
    }

    void table() {
        const FoodNames names(known_.table);
        for (std::size_t i = 0; i < known_.table.size(); ++i) {
            in_table(known_.table[i], names[i]);
        }
    }

    struct WordMet {
        double share = 0;
        std::size_t place = 0;
    };
    static WordMet met_in(const std::string& typed, const Words& name) {
        WordMet best;
        for (std::size_t i = 0; i < name.size(); ++i) {
            if (same_food_word(typed, name[i])) {
                return {1, i};
            }
            if (best.share == 0 && may_be_misspelt(typed, name[i])) {
                best = {misspelt, i};
            }
        }
        return best;
    }

    void in_table(const FoodFacts& food, const FoodName& called) {
        const Words& name = called.words;
        const std::size_t first_part = called.first_part;
        // What it is of stands before "with skin", "made with water".
        const auto behind =
            std::find_if(name.begin(), name.begin() + static_cast<std::ptrdiff_t>(first_part),
                         [](const std::string& word) {
                             return word == "with" || word == "made" || word == "in";
                         });
        const auto kernel = static_cast<std::size_t>(behind - name.begin());
        bool in_kernel = false;
        bool head_in_kernel = false;
        bool all_met = true;
        double met = 0;
        double weights = 0;
        std::vector<Doubt> doubts;
        std::vector<bool> used(name.size(), false);
        const std::size_t head_at = head();
        for (std::size_t i = 0; i < typed_.size(); ++i) {
            const WordMet one = met_in(typed_[i], name);
            const bool way = one_of(ways, typed_[i]) && i != head_at;
            if (i == head_at && one.share == 0) {
                return;
            }
            in_kernel = in_kernel || (one.share > 0 && one.place < kernel);
            head_in_kernel = head_in_kernel || (i == head_at && one.place < kernel);
            all_met = all_met && one.share > 0;
            weights += way ? 0.3 : 1;
            met += (way ? 0.3 : 1) * one.share;
            if (one.share == 0) {
                doubts.push_back({DoubtAbout::food, "'" + typed_[i] + "' is not in its name"});
            } else {
                used[one.place] = true;
                if (one.share < 1) {
                    doubts.push_back(misspelling(typed_[i], name[one.place]));
                }
            }
        }
        if (!head_in_kernel && !(all_met && in_kernel)) {
            return;
        }
        double spare = 0;
        for (std::size_t i = 0; i < name.size(); ++i) {
            constexpr std::array small{"with", "and", "or", "in", "no", "made"};
            spare += used[i] || one_of(small, name[i]) ? 0 : i < first_part ? 0.3 : 0.04;
        }
        const double confidence = std::min(most_of_table_, met / weights / (1 + spare));
        if (confidence >= least_food / 2) {
            add(food, FoundBy::table, confidence, std::move(doubts));
        }
    }

    void drop_repeated() {
        std::vector<FoodCandidate> kept;
        for (FoodCandidate& one : found_) {
            const bool known = std::any_of(
                kept.begin(), kept.end(),
                [&](const FoodCandidate& other) { return other.food.name == one.food.name; });
            if (!known && kept.size() < most_candidates) {
                kept.push_back(std::move(one));
            }
        }
        found_ = std::move(kept);
    }

    // A second food nearly as likely with another share of carbohydrate makes the first unsure.
    void tell_rivals() {
        if (found_.size() < 2 || found_[0].by != FoundBy::table ||
            found_[1].confidence < found_[0].confidence - 0.1) {
            return;
        }
        const double a = found_[0].food.carbohydrate_g.value_or(-1);
        const double b = found_[1].food.carbohydrate_g.value_or(-1);
        if (std::max(a, b) > 3 && std::abs(a - b) > 0.15 * std::max(a, b)) {
            found_[0].confidence = std::min(found_[0].confidence, 0.65);
            found_[1].confidence = std::min(found_[1].confidence, found_[0].confidence);
            found_[0].doubts.push_back(
                {DoubtAbout::food, "it may as well be " + found_[1].food.name});
        }
    }
};

}  // namespace

namespace {

std::vector<FoodName> names_made(std::span<const FoodFacts> table) {
    std::vector<FoodName> names;
    names.reserve(table.size());
    for (const FoodFacts& food : table) {
        names.push_back({food_name_words(food.name),
                         food_name_words(food.name.substr(0, food.name.find(','))).size()});
    }
    return names;
}

}  // namespace

FoodNames::FoodNames(std::span<const FoodFacts> table) {
    if (table.data() == shipped_foods().data() && table.size() == shipped_foods().size()) {
        static const std::vector<FoodName> shipped = names_made(shipped_foods());
        names_ = shipped;
    } else {
        own_ = names_made(table);
        names_ = own_;
    }
}

const char* name_of(FoundBy by) {
    switch (by) {
        case FoundBy::correction:
            return "correction";
        case FoundBy::recipe:
            return "recipe";
        case FoundBy::usual_food:
            return "usual food";
        case FoundBy::everyday_word:
            return "everyday word";
        case FoundBy::table:
            return "table";
    }
    return "";
}

bool is_clients_own(FoundBy by) {
    return by == FoundBy::correction || by == FoundBy::recipe || by == FoundBy::usual_food;
}

std::vector<FoodCandidate> food_candidates(std::span<const std::string> name,
                                           const KnownFoods& known) {
    return Finder(name, known).find();
}

}  // namespace tracewright
