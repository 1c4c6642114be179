#include "intake/message_meaning.hpp"

#include "diary/alarm_words.hpp"
#include "diary/eaten_text.hpp"
#include "diary/medicine_text.hpp"
#include "intake/message_kind.hpp"
#include "intake/message_level.hpp"
#include "intake/message_limit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

void set_level(const MessagePart& part, GlucoseUnit usual, DiaryEntry& entry,
               std::vector<Doubt>& doubts) {
    const std::vector<ToldNumber> numbers = numbers_of_levels(part);
    const std::optional<ToldNumber> number =
        numbers.empty() ? std::nullopt : std::optional(numbers.front());
    std::optional<GlucoseUnit> unit;
    for (const MessageWord& word : part.words) {
        if (word.text == "mmol" || word.text == "mmol/l") {
            unit = GlucoseUnit::mmol_per_l;
        } else if (word.text == "mg/dl") {
            unit = GlucoseUnit::mg_per_dl;
        }
    }
    const GlucoseUnit taken = unit.value_or(number ? likely_unit(*number, usual) : usual);
    const bool level = number && plausible_level(number->value, taken);
    const ShownLimit shown = shown_limit(part);
    if (!level && shown.limit != MeterLimit::none) {
        set_meter_limit(entry, shown.limit, usual);
        if (!shown.sure) {
            const bool low = shown.limit == MeterLimit::shows_low;
            doubts.push_back({DoubtAbout::amount,
                              fmt::format("taken for a finger-prick {}: please ask what was shown",
                                          low ? "too low for the meter to show"
                                              : "too high for the meter to show")});
        }
        return;
    }
    if (!level) {
        entry.kind = DiaryKind::note;
        doubts.push_back({DoubtAbout::kind, "no level of glucose: kept as a note"});
        return;
    }
    if (!unit) {
        doubts.push_back({DoubtAbout::amount, doubt_about_unit(*number, taken)});
    }
    entry.glucose = Glucose{static_cast<std::int32_t>(std::lround(number->value * 100)), taken};
}

// A verb of eating ("had a seizure") makes no food of it.
DiaryKind kind_of_alarm(const MessagePart& part) {
    const auto told = kind_of_words(part.words);
    const bool level = told == DiaryKind::finger_prick || told == DiaryKind::ketones;
    const bool kept = level ? !numbers_of_levels(part).empty()
                            : told == DiaryKind::illness || told == DiaryKind::mood;
    return kept ? *told : DiaryKind::symptom;
}

}  // namespace

bool is_carbohydrate_alone(const MessagePart& part) {
    bool named = false;
    for (const MessageWord& word : part.words) {
        const std::string& text = word.text;
        const bool carbohydrate = text == "carb" || text == "carbs" || text == "carbohydrate";
        const bool amount =
            message_number(text.ends_with("g") ? text.substr(0, text.size() - 1) : text)
                .has_value();
        if (!carbohydrate && !amount && text != "g" && text != "grams" && text != "of") {
            return false;
        }
        named = named || carbohydrate;
    }
    return named;
}

bool is_energy_alone(const MessagePart& part) {
    constexpr std::array<std::string_view, 6> units{"kcal", "kcals",   "calories",
                                                    "cal",  "calorie", "kj"};
    bool unit = false;
    bool number = false;
    for (const MessageWord& word : part.words) {
        const std::size_t letters = word.text.find_first_not_of("0123456789.,");
        const std::string_view tail = letters == std::string::npos
                                          ? std::string_view()
                                          : std::string_view(word.text).substr(letters);
        const bool counts = message_number(word.text.substr(0, letters)).has_value();
        const bool names = std::ranges::find(units, tail) != units.end();
        if (!(counts && (tail.empty() || names)) && !(letters == 0 && names) &&
            word.text != "about" && word.text != "of" && !word.is_sign()) {
            return false;
        }
        unit = unit || names;
        number = number || counts;
    }
    return unit && number;
}

void set_carbohydrate(const MessagePart& part, DiaryEntry& entry) {
    for (std::size_t i = 0; i < part.words.size(); ++i) {
        const std::string& word = part.words[i].text;
        if (word != "carb" && word != "carbs" && word != "carbohydrate") {
            continue;
        }
        for (std::size_t back = 1; back <= 2 && back <= i; ++back) {
            const std::string& amount = part.words[i - back].text;
            const auto number = message_number(
                amount.ends_with("g") ? amount.substr(0, amount.size() - 1) : amount);
            if (number && !entry.carbohydrate_g) {
                entry.carbohydrate_g = Amount{*number, 0, false};
            }
        }
    }
}

// "lunch: nothing", "no breakfast": known not to have been eaten.
bool is_left_out(const MessagePart& part) {
    const bool meal = !part.slot.empty() || std::any_of(part.words.begin(), part.words.end(),
                                                        [](const MessageWord& word) {
                                                            return !slot_of_word(word.text).empty();
                                                        });
    return meal && !part.words.empty() && leaves_out(part.words.front().text);
}

DiaryKind kind_of_part(const MessagePart& part, GlucoseUnit unit, const KnownFoods& foods,
                       std::vector<Doubt>& doubts) {
    if (tells_an_alarm(part.written)) {
        return kind_of_alarm(part);
    }
    if (is_left_out(part) || is_vaccination(part.words)) {
        return DiaryKind::note;
    }
    if (shown_limit(part).limit != MeterLimit::none) {
        return DiaryKind::finger_prick;
    }
    if (tells_a_level(part, unit)) {
        return DiaryKind::finger_prick;
    }
    if (tells_of_a_low(part)) {
        return DiaryKind::symptom;
    }
    if (tells_of_fast_sugar(part) && numbers_of_levels(part).empty()) {
        return DiaryKind::meal;
    }
    const auto told = kind_of_words(part.words);
    const bool medicine = !medicine_text(part.text).recognised.empty();
    const bool measured = told == DiaryKind::finger_prick || told == DiaryKind::ketones;
    const bool has_number = !numbers_of_levels(part).empty();
    if (told && told != DiaryKind::medicine && told != DiaryKind::meal &&
        (!measured || has_number)) {
        return *told;
    }
    if (medicine) {
        return DiaryKind::medicine;
    }
    const EatenText eaten = eaten_text(part.text, foods);
    const bool named = std::any_of(eaten.foods.begin(), eaten.foods.end(),
                                   [](const EatenFood& food) { return food.confidence > 0; });
    if (told == DiaryKind::medicine && !(named && eaten.found_all())) {
        return DiaryKind::medicine;
    }
    if (!part.slot.empty() || told == DiaryKind::meal || named) {
        return DiaryKind::meal;
    }
    if (part.begun == DiaryKind::meal && !part.words.empty()) {
        doubts.push_back({DoubtAbout::kind, "taken for food by its verb"});
        return DiaryKind::meal;
    }
    if (part.begun) {
        doubts.push_back(
            {DoubtAbout::kind, "taken for " + std::string(name_of(*part.begun)) + " by its verb"});
        return *part.begun;
    }
    doubts.push_back({DoubtAbout::kind, "not understood: kept as a note"});
    return DiaryKind::note;
}

void set_length(const MessagePart& part, DiaryEntry& entry, std::vector<Doubt>& doubts) {
    const auto steps = std::find_if(part.words.begin(), part.words.end(),
                                    [](const MessageWord& word) { return word.text == "steps"; });
    if (part.length) {
        const bool sleep = entry.kind == DiaryKind::sleep;
        entry.number = part.length->minutes / (sleep ? 60 : 1);
        entry.number_unit = sleep ? "h" : "min";
    } else if (steps != part.words.end() && steps != part.words.begin()) {
        entry.number = message_number((steps - 1)->text);
        entry.number_unit = entry.number ? "steps" : "";
    } else if (!part.until && entry.kind == DiaryKind::movement) {
        doubts.push_back({DoubtAbout::amount, "how long is not written"});
    }
}

void set_numbers(const MessagePart& part, GlucoseUnit unit, DiaryEntry& entry,
                 std::vector<Doubt>& doubts) {
    if (entry.kind == DiaryKind::movement || entry.kind == DiaryKind::sleep) {
        set_length(part, entry, doubts);
    } else if (entry.kind == DiaryKind::finger_prick) {
        set_level(part, unit, entry, doubts);
    } else if (entry.kind == DiaryKind::ketones) {
        for (const MessageWord& word : part.words) {
            entry.number = entry.number ? entry.number : message_number(word.text);
        }
        entry.number_unit = "mmol/L";
    } else if (entry.kind == DiaryKind::meal) {
        set_carbohydrate(part, entry);
        if (part.words.empty()) {
            entry.not_described = true;
            entry.text.clear();
            doubts.push_back({DoubtAbout::food, "what was eaten is not written"});
        }
    }
}

}  // namespace tracewright
