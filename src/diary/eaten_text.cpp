#include "diary/eaten_text.hpp"

#include "diary/food_spelling.hpp"
#include "diary/food_words.hpp"

#include <algorithm>

namespace tracewright {

namespace {

// Names of several words that are found whole, whatever joining words stand in them.
std::vector<std::vector<std::string>> whole_phrases(const KnownFoods& known) {
    std::vector<std::vector<std::string>> phrases;
    const auto add_if_joined = [&](const std::vector<std::string>& words, std::ptrdiff_t count) {
        const auto end = words.begin() + count;
        const bool joined = std::any_of(words.begin(), end, [](const std::string& word) {
            return word == "and" || word == "with" || word == "on" || word == "or" || word == "in";
        });
        if (joined) {
            phrases.emplace_back(words.begin(), end);
        }
    };
    for (const FoodWord& word : food_words()) {
        add_if_joined(word.parts, static_cast<std::ptrdiff_t>(word.parts.size()));
    }
    const FoodNames names(known.table);
    for (std::size_t i = 0; i < known.table.size(); ++i) {
        const auto end = static_cast<std::ptrdiff_t>(names[i].first_part);
        add_if_joined(names[i].words, end);
    }
    if (known.client == nullptr) {
        return phrases;
    }
    for (const FoodCorrection& one : known.client->corrections) {
        phrases.push_back(food_name_words(one.said));
    }
    for (const Recipe& one : known.client->recipes) {
        phrases.push_back(food_name_words(one.name));
    }
    for (const FoodFacts& one : known.client->usual) {
        phrases.push_back(food_name_words(one.name));
    }
    return phrases;
}

// A whole phrase came as one word: parted again for comparing names.
std::vector<std::string> parted(const std::vector<std::string>& name) {
    std::vector<std::string> words;
    for (const std::string& one : name) {
        for (std::string& word : food_name_words(one)) {
            words.push_back(std::move(word));
        }
    }
    return words;
}

class Reader {
  public:
    explicit Reader(const KnownFoods& known) : known_(known) {}

    EatenText read(std::string_view text) {
        const auto whole = whole_phrases(known_);
        std::vector<EatenPiece> pieces = eaten_pieces(text, whole);
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            // "banana, 120 g": the portion stands behind a comma.
            PortionAndName read = portion_and_name(pieces[i].words);
            while (!read.name.empty() && !read.portion.told() && i + 1 < pieces.size()) {
                const PortionAndName next = portion_and_name(pieces[i + 1].words);
                if (!next.name.empty() || !next.portion.told() || pieces[i + 1].negated) {
                    break;
                }
                read.portion = next.portion;
                ++i;
            }
            if (!read.name.empty()) {
                take(pieces[i], read);
            }
        }
        sum_up();
        return std::move(result_);
    }

  private:
    const KnownFoods& known_;
    EatenText result_;

    static bool is_found(const std::vector<FoodCandidate>& candidates) {
        return !candidates.empty() && candidates.front().confidence >= least_food;
    }

    std::vector<FoodCandidate> candidates_of(PortionAndName& read) const {
        auto candidates = food_candidates(parted(read.name), known_);
        PortionAndName other = read;
        if (!is_found(candidates) && take_measure_from_name(other)) {
            auto again = food_candidates(parted(other.name), known_);
            if (is_found(again)) {
                read = other;
                return again;
            }
        }
        return candidates;
    }

    void take(const EatenPiece& piece, PortionAndName& read) {
        EatenFood food;
        food.written = piece.written;
        food.denied = piece.negated;
        food.alternative = piece.alternative;
        food.candidates = candidates_of(read);
        const bool found = is_found(food.candidates);
        if (food.denied) {
            const bool one = read.name.size() == 1 ||
                             (found && food.candidates.front().confidence >= least_food * 1.4);
            food.confidence = one ? 1 : 0.5;
            if (food.confidence < 1) {
                food.doubts.push_back({DoubtAbout::eaten, "all of it is taken as not eaten"});
            }
            result_.foods.push_back(std::move(food));
            return;
        }
        if (found) {
            work_out(food, read.portion);
        } else {
            const std::string nearest =
                food.candidates.empty() ? "" : ": the nearest is " + food.candidates[0].food.name;
            food.doubts.push_back({DoubtAbout::food, "not found in the tables" + nearest});
        }
        doubt_eating(food, piece);
        food.counted = found && !piece.alternative;
        result_.foods.push_back(std::move(food));
    }

    static void work_out(EatenFood& food, const WrittenPortion& portion) {
        const FoodCandidate& taken = food.candidates.front();
        food.confidence = taken.confidence;
        food.doubts = taken.doubts;
        if (!food.sure() && food.doubts.empty()) {
            food.doubts.push_back({DoubtAbout::food, taken.food.name + " is taken"});
        }
        food.portion = portion_weight(portion, taken.food, is_clients_own(taken.by));
        food.doubts.insert(food.doubts.end(), food.portion.doubts.begin(),
                           food.portion.doubts.end());
        const FoodPortion holds = portion_of(taken.food, food.portion.grams);
        const double share =
            food.portion.grams > 0 ? food.portion.half_width / food.portion.grams : 0;
        if (taken.food.basis == CarbohydrateBasis::total && holds.carbohydrate_g) {
            food.total = TotalCarbohydrate{*holds.carbohydrate_g, *holds.carbohydrate_g * share};
        }
        if (holds.available_carbohydrate_g) {
            food.available = AvailableCarbohydrate{*holds.available_carbohydrate_g,
                                                   *holds.available_carbohydrate_g * share};
        }
        food.fibre_g = holds.fibre_g;
        food.energy_kcal = holds.energy_kcal;
    }

    void doubt_eating(EatenFood& food, const EatenPiece& piece) {
        if (piece.questioned) {
            food.confidence *= 0.5;
            food.doubts.push_back({DoubtAbout::eaten, "it is written as a question"});
        }
        if (piece.perhaps_negated) {
            food.confidence *= 0.5;
            food.doubts.push_back(
                {DoubtAbout::eaten, "the 'no' before it may be meant for it too"});
        }
        if (piece.alternative && !result_.foods.empty() && !result_.foods.back().denied) {
            food.doubts.push_back(
                {DoubtAbout::eaten, "only one of the two was eaten: not counted"});
            EatenFood& first = result_.foods.back();
            first.confidence *= 0.6;
            first.doubts.push_back({DoubtAbout::eaten, "it may have been " + piece.written});
        }
    }

    template <typename Part>
    void sum(std::optional<Part> EatenText::*sum, std::optional<Part> EatenFood::*part) {
        std::optional<Part> all;
        for (const EatenFood& food : result_.foods) {
            if (!food.counted) {
                continue;
            }
            if (!(food.*part)) {
                return;
            }
            if (all) {
                *all += *(food.*part);
            } else {
                all = food.*part;
            }
        }
        result_.*sum = all;
    }

    void sum_up() {
        bool any = false;
        bool all = true;
        double least = 1;
        for (const EatenFood& food : result_.foods) {
            if (food.denied || food.alternative) {
                continue;
            }
            all = all && food.counted;
            any = true;
            least = std::min(least, food.confidence);
        }
        result_.confidence = any && all ? least : 0;
        if (any && all) {
            sum(&EatenText::total, &EatenFood::total);
            sum(&EatenText::available, &EatenFood::available);
            sum(&EatenText::fibre_g, &EatenFood::fibre_g);
            sum(&EatenText::energy_kcal, &EatenFood::energy_kcal);
        }
    }
};

}  // namespace

bool EatenText::found_all() const {
    return confidence > 0;
}

EatenText eaten_text(std::string_view text, const KnownFoods& known) {
    return Reader(known).read(text);
}

bool fill_in(DiaryEntry& entry, const EatenText& eaten, CarbohydrateBasis basis) {
    if (entry.kind != DiaryKind::meal || entry.not_described || entry.carbohydrate_g) {
        return false;
    }
    if (basis == CarbohydrateBasis::total && eaten.total) {
        entry.carbohydrate_g = Amount{eaten.total->grams, eaten.total->half_width, true};
    } else if (basis == CarbohydrateBasis::available && eaten.available) {
        entry.carbohydrate_g = Amount{eaten.available->grams, eaten.available->half_width, true};
    } else {
        return false;
    }
    entry.carbohydrate_basis = basis;
    entry.fibre_g = entry.fibre_g ? entry.fibre_g : eaten.fibre_g;
    entry.energy_kcal = entry.energy_kcal ? entry.energy_kcal : eaten.energy_kcal;
    return true;
}

std::optional<std::string> clients_name(const EatenText& eaten) {
    std::string name;
    bool own = false;
    for (const EatenFood& food : eaten.foods) {
        if (food.denied) {
            continue;
        }
        if (!food.counted || !food.sure()) {
            return std::nullopt;
        }
        own = own || is_clients_own(food.candidates.front().by);
        name += (name.empty() ? "" : ", ") + food.candidates.front().food.name;
    }
    return own ? std::optional(name) : std::nullopt;
}

std::optional<CarbohydrateBasis> basis_to_fill_in(const Diary& diary) {
    std::optional<CarbohydrateBasis> basis;
    for (const DiaryEntry& entry : diary) {
        if (entry.kind != DiaryKind::meal || !entry.carbohydrate_g) {
            continue;
        }
        if (entry.carbohydrate_basis == CarbohydrateBasis::not_told ||
            (basis && *basis != entry.carbohydrate_basis)) {
            return std::nullopt;
        }
        basis = entry.carbohydrate_basis;
    }
    return basis.value_or(CarbohydrateBasis::total);
}

}  // namespace tracewright
