#include "responses/eating_occasion.hpp"

#include <algorithm>
#include <cctype>
#include <chrono>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr std::chrono::seconds one_occasion = 30min;

std::string lower(const std::string& text) {
    std::string result = text;
    for (char& c : result) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return result;
}

std::optional<MealSlot> written_slot(const DiaryEntry& entry) {
    if (!entry.slot) {
        return std::nullopt;
    }
    const std::string text = lower(*entry.slot);
    for (const MealSlot slot :
         {MealSlot::breakfast, MealSlot::lunch, MealSlot::dinner, MealSlot::snack}) {
        if (text.find(name_of(slot)) != std::string::npos) {
            return slot;
        }
    }
    return std::nullopt;
}

// A sum that is known only while every part is.
class KnownSum {
  public:
    void add(const std::optional<double>& part) {
        known_ = known_ && part.has_value();
        sum_ += part.value_or(0);
    }
    std::optional<double> value() const { return known_ ? std::optional(sum_) : std::nullopt; }

  private:
    double sum_ = 0;
    bool known_ = true;
};

class Gatherer {
  public:
    explicit Gatherer(const ZoneHistory& zones) : zones_(zones) {}

    void take(const DiaryEntry& entry) {
        if (!parts_.empty() && entry.at - parts_.back()->at >= one_occasion) {
            close();
        }
        parts_.push_back(&entry);
    }

    std::vector<EatingOccasion> all() {
        close();
        return std::move(done_);
    }

  private:
    const ZoneHistory& zones_;
    std::vector<const DiaryEntry*> parts_;
    std::vector<EatingOccasion> done_;

    void close() {
        if (parts_.empty()) {
            return;
        }
        EatingOccasion occasion;
        occasion.at = parts_.front()->at;
        occasion.last = parts_.back()->at;
        occasion.slot = slot_of(zones_.wall_time(occasion.at));
        KnownSum carbohydrate;
        KnownSum fibre;
        KnownSum energy;
        for (const DiaryEntry* part : parts_) {
            const bool same_basis = part->carbohydrate_basis == parts_.front()->carbohydrate_basis;
            carbohydrate.add(part->carbohydrate_g && same_basis
                                 ? std::optional(part->carbohydrate_g->value)
                                 : std::nullopt);
            occasion.carbohydrate_estimated =
                occasion.carbohydrate_estimated ||
                (part->carbohydrate_g && part->carbohydrate_g->estimated);
            fibre.add(part->fibre_g);
            energy.add(part->energy_kcal);
            if (!part->text.empty() && !part->not_described) {
                occasion.foods.push_back(part->text);
            }
            occasion.not_described = occasion.not_described || part->not_described;
            occasion.time_uncertain = occasion.time_uncertain || part->time_uncertain;
            if (const auto slot = written_slot(*part)) {
                occasion.slot = *slot;
            }
        }
        occasion.carbohydrate_basis = parts_.front()->carbohydrate_basis;
        occasion.carbohydrate_g = carbohydrate.value();
        occasion.fibre_g = fibre.value();
        occasion.energy_kcal = energy.value();
        done_.push_back(std::move(occasion));
        parts_.clear();
    }
};

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// Whether a word is an amount by itself: "150", "150g", "1/2", "2x", "g", "ml".
bool is_amount(const std::string& word) {
    static const char* const units[] = {"g", "ml", "x", "kcal", "cup", "cups", "slice", "slices"};
    std::size_t i = 0;
    while (i < word.size() &&
           (is_digit(word[i]) || word[i] == '.' || word[i] == '/' || word[i] == '~')) {
        ++i;
    }
    const std::string rest = word.substr(i);
    const bool unit = std::any_of(std::begin(units), std::end(units),
                                  [&](const char* known) { return rest == known; });
    return (i > 0 && (rest.empty() || unit)) || unit;
}

// "two" of "two slices of rye bread": said with a measure, as a digit is.
bool is_number_word(const std::string& word) {
    static const char* const numbers[] = {"a",    "an",   "one",  "two", "three",
                                          "four", "five", "half", "six"};
    return std::any_of(std::begin(numbers), std::end(numbers),
                       [&](const char* known) { return word == known; });
}

}  // namespace

const char* name_of(MealSlot slot) {
    switch (slot) {
        case MealSlot::breakfast:
            return "breakfast";
        case MealSlot::lunch:
            return "lunch";
        case MealSlot::dinner:
            return "dinner";
        case MealSlot::snack:
            return "snack";
    }
    return "";
}

MealSlot slot_of(WallTime at) {
    const auto clock = at - std::chrono::floor<std::chrono::days>(at);
    if (clock >= 4h && clock < 10h + 30min) {
        return MealSlot::breakfast;
    }
    if (clock >= 11h + 30min && clock < 14h + 30min) {
        return MealSlot::lunch;
    }
    if (clock >= 17h + 30min && clock < 22h + 30min) {
        return MealSlot::dinner;
    }
    return MealSlot::snack;
}

std::string EatingOccasion::text() const {
    std::string line;
    for (const std::string& food : foods) {
        line += (line.empty() ? "" : ", ") + food;
    }
    return line;
}

std::vector<EatingOccasion> eating_occasions(const Diary& diary, const ZoneHistory& zones) {
    Gatherer gatherer(zones);
    for (const DiaryEntry& entry : diary) {
        if (entry.kind == DiaryKind::meal) {
            gatherer.take(entry);
        }
    }
    return gatherer.all();
}

std::string food_key(const std::string& written) {
    std::string key;
    std::string word;
    bool after_amount = false;
    const auto close = [&] {
        if (word.empty()) {
            return;
        }
        if (is_amount(word)) {
            const std::size_t last = key.rfind(' ') + 1;  // the first word where there is no other
            if (is_number_word(key.substr(last))) {
                key.erase(last == 0 ? 0 : last - 1);
            }
            after_amount = true;
        } else if (word != "of" || !after_amount) {
            key += (key.empty() ? "" : " ") + word;
            after_amount = false;
        }
        word.clear();
    };
    // What a second column said of the same food stands behind a bar.
    for (const char c : lower(written.substr(0, written.find(" | ")))) {
        const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '(' || c == ')';
        if (space) {
            close();
        } else {
            word += c;
        }
    }
    close();
    while (!key.empty() && (key.back() == ',' || key.back() == '.' || key.back() == ';')) {
        key.pop_back();
    }
    return key;
}

}  // namespace tracewright
