#include "intake/row_meals.hpp"

#include "intake/loose_clock.hpp"
#include "intake/own_times.hpp"
#include "intake/plain_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using std::chrono::floor;
using std::chrono::hours;

constexpr std::array not_described_words{"data not available", "not recorded", "not noted",
                                         "nicht notiert", "\xE6\x9C\xAA\xE8\xAE\xB0\xE5\xBD\x95"};

// "45", "45 g", "~45", "40-50": a number with how sure it is. Empty if it is no amount.
std::optional<Amount> amount_of(std::string_view text, char decimal_mark) {
    Amount amount;
    for (const std::string_view mark : {"~", "ca.", "ca ", "c. ", "about "}) {
        if (text.starts_with(mark)) {
            amount.estimated = true;
            text = trimmed(text.substr(mark.size()));
        }
    }
    const auto first = written_number(text, decimal_mark);
    if (!first) {
        return std::nullopt;
    }
    amount.value = first->value();
    std::string_view tail = first->tail;
    if (tail.starts_with('-')) {
        const auto second = written_number(trimmed(tail.substr(1)), decimal_mark);
        if (!second || second->hundredths < first->hundredths) {
            return std::nullopt;
        }
        amount.value = (first->value() + second->value()) / 2;
        amount.half_width = (second->value() - first->value()) / 2;
        amount.estimated = true;
        tail = {};
        return amount;
    }
    const std::string unit = lower_case(tail);
    const bool plain_unit = unit.empty() || unit == "g" || unit == "gr" || unit == "gram" ||
                            unit == "grams" || unit == "g." || unit == "kcal";
    return plain_unit ? std::optional{amount} : std::nullopt;
}

bool belongs_to_meals(Role role) {
    return role == Role::meal_time || (role >= Role::meal_text && role <= Role::energy);
}

class MealsOfARow {
  public:
    explicit MealsOfARow(EntryWriter& writer)
        : writer_(writer), shape_(writer.plan.shape), row_(writer.row) {}

    bool add() {
        for (std::size_t meal = 1; meal < shape_.meals.size(); ++meal) {
            told_apart_ += says_anything(meal) ? 1U : 0U;
        }
        const std::size_t before = row_.entries.size();
        for (std::size_t meal = 0; meal < shape_.meals.size(); ++meal) {
            add_meal(meal);
        }
        DiaryEntry* only = row_.entries.size() == before + 1 ? &row_.entries.back().what : nullptr;
        if (!only || !only->text.empty()) {
            return false;
        }
        only->text = writer_.all_texts(Role::note);
        only->not_described = only->not_described && only->text.empty();
        return !only->text.empty();
    }

  private:
    bool says_anything(std::size_t meal) const {
        for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
            const ColumnGuess& column = shape_.columns[c];
            if (column.meal == meal && belongs_to_meals(column.role) && writer_.cells.filled(c)) {
                return true;
            }
        }
        return false;
    }

    void add_meal(std::size_t meal) {
        const std::string text = writer_.all_texts(Role::meal_text, meal);
        const auto carbohydrate = writer_.taken(Role::carbohydrate, meal);
        const auto slot = writer_.taken(Role::slot, meal);
        const auto energy = writer_.number_in(writer_.filled(Role::energy, meal));
        const auto protein = writer_.number_in(writer_.taken(Role::protein, meal));
        const auto fat = writer_.number_in(writer_.taken(Role::fat, meal));
        const auto fibre = writer_.number_in(writer_.taken(Role::fibre, meal));
        const auto at = time_of(meal);
        const bool numbers = energy || protein || fat || fibre;
        if (text.empty() && !carbohydrate && !slot && !numbers && !at) {
            return;
        }
        RowEntry& told = writer_.add(DiaryKind::meal);
        DiaryEntry& entry = told.what;
        entry.text = text;
        entry.not_described = says_not_described(text);
        entry.energy_kcal = energy;
        entry.protein_g = protein;
        entry.fat_g = fat;
        entry.fibre_g = fibre;
        if (slot) {
            entry.slot = writer_.kept_text(*slot);
        } else if (!shape_.meals[meal].slot.empty()) {
            entry.slot = std::string(shape_.meals[meal].slot);
        }
        if (const auto portion = writer_.taken(Role::portion, meal)) {
            entry.portion = writer_.kept_text(*portion);
        }
        if (carbohydrate) {
            carbohydrate_of(*carbohydrate, entry);
        }
        if (text.empty() && !carbohydrate && !slot && !numbers) {
            entry.not_described = true;  // only when it was eaten is told
        }
        told.begin = at;
        if (!at) {
            place(meal, told);
        }
    }

    void carbohydrate_of(std::size_t c, DiaryEntry& entry) {
        const auto amount = amount_of(writer_.cells.text(c), writer_.plan.decimal_mark);
        if (amount && !writer_.column(c).exchanges) {
            entry.carbohydrate_g = amount;
        } else {
            join(entry.text, writer_.kept_text(c));
            writer_.warn(c, "carbohydrate_not_grams", "grams of carbohydrate; kept as text");
        }
    }

    std::optional<OwnTime> time_of(std::size_t meal) {
        const auto column = writer_.taken(Role::meal_time, meal);
        if (!column || is_empty_word(writer_.cells.text(*column))) {
            return std::nullopt;
        }
        const auto at = own_time(writer_.cells, writer_.plan, *column, row_.date);
        if (!at) {
            row_.unread.push_back(*column);
        }
        return at;
    }

    // The row's time is that of a meal if it is titled so, or as no other thing's, and only one
    // meal can be meant.
    bool at_the_rows_time(std::size_t meal) const {
        if (shape_.times_begin_sleep) {
            return false;
        }
        const auto column = shape_.first(shape_.first(Role::time) ? Role::time : Role::clock);
        const std::size_t titled = column ? shape_.columns[*column].meal : 0;
        if (titled == meal || meal == 0) {
            return true;
        }
        return titled == 0 && column && row_.clock_told && told_apart_ == 1;
    }

    void place(std::size_t meal, RowEntry& told) {
        if (at_the_rows_time(meal) || !row_.date) {
            return;
        }
        const std::string_view slot = shape_.meals[meal].slot;
        const std::chrono::minutes clock = slot.empty() ? hours{12} : middle_of(slot);
        told.clock_told = false;
        told.begin = OwnTime{day() + clock, {}};
        row_.remarks.push_back({row_.line, first_cell(meal), Fate::stored, "clock_missing",
                                meal == 0 ? "a meal" : quoted(shape_.meals[meal].name),
                                fmt::format("a time of day; taken as {:02}:{:02}, and held to be "
                                            "uncertain",
                                            clock.count() / 60, clock.count() % 60)});
    }

    // A row of a night is written on the day after it.
    WallTime day() const {
        const auto woken = shape_.times_begin_sleep
                               ? slept_span(writer_.cells, writer_.plan, row_).end
                               : std::nullopt;
        return woken ? WallTime{floor<std::chrono::days>(woken->wall)} : WallTime{*row_.date};
    }

    std::uint32_t first_cell(std::size_t meal) const {
        for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
            if (shape_.columns[c].meal == meal && belongs_to_meals(shape_.columns[c].role) &&
                writer_.cells.filled(c)) {
                return writer_.cells.at(c);
            }
        }
        return row_.time_column;
    }

    EntryWriter& writer_;
    const TableShape& shape_;
    ReadRow& row_;
    std::size_t told_apart_ = 0;  // meals with a title of their own that say anything here
};

}  // namespace

bool add_meals(EntryWriter& writer) {
    return MealsOfARow(writer).add();
}

bool says_not_described(std::string_view text) {
    const std::string lower = lower_case(text);
    return std::any_of(
        not_described_words.begin(), not_described_words.end(),
        [&](std::string_view word) { return lower.find(word) != std::string::npos; });
}

}  // namespace tracewright
