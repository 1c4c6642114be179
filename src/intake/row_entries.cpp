#include "intake/row_entries.hpp"

#include "diary/finger_prick.hpp"
#include "diary/formula_mark.hpp"
#include "intake/plain_text.hpp"
#include "intake/sleep_title.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::array empty_words{"na", "n/a", "null", "none", "nan", "nil", "#n/a", "/", "#value!"};
constexpr std::array not_described_words{"data not available", "not recorded", "not noted",
                                         "nicht notiert", "\xE6\x9C\xAA\xE8\xAE\xB0\xE5\xBD\x95"};

bool is_empty_word(std::string_view text) {
    const std::string word = lower_case(text);
    return std::find(empty_words.begin(), empty_words.end(), word) != empty_words.end();
}

// Two to sixteen hours, the middle of them from 23:00 to 07:00. Ours, no source.
bool like_a_night(WallTime from, WallTime to) {
    using namespace std::chrono_literals;
    const auto middle = from + (to - from) / 2;
    const auto clock = middle - std::chrono::floor<std::chrono::days>(middle);
    return to - from >= 2h && to - from <= 16h && (clock >= 23h || clock <= 7h);
}

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

// Builds the diary entries of one row.
class EntryBuilder {
  public:
    EntryBuilder(const RowCells& cells, const ReadingPlan& plan, ReadRow& row)
        : cells_(cells), plan_(plan), row_(row) {}

    void build() {
        tell_second_glucose();
        of_kind();
        meal();
        finger_prick();
        numbered(Role::ketones, DiaryKind::ketones, "mmol/L");
        movement();
        sleep();
        texts(Role::mood, DiaryKind::mood);
        medicines();
        texts(Role::lab, DiaryKind::lab);
        texts(Role::alcohol, DiaryKind::alcohol);
        texts(Role::illness, DiaryKind::illness);
        texts(Role::symptom, DiaryKind::symptom);
        texts(Role::sensor_event, DiaryKind::sensor);
        if (!used_notes_) {
            texts(Role::note, DiaryKind::note);
        }
        untold_night();
        give_end();
        keep_unread_value();
    }

  private:
    // Of two columns of glucose the first that has a level is the row's; what another says beside
    // it is told.
    void tell_second_glucose() {
        for (const std::size_t c : plan_.shape.all(Role::glucose)) {
            if (!row_.glucose || cells_.at(c) == row_.glucose->column || !cells_.filled(c)) {
                continue;
            }
            const GlucoseCell cell = written_glucose(cells_.text(c), plan_.decimal_mark);
            if (cell.level && !says_the_same(c, *cell.level)) {
                warn(c, "second_value", "one glucose value in a row: the first is taken");
            }
        }
    }

    // One level told in two units differs by how it was rounded, and by how many mg/dL a mmol/L was
    // taken for (18 or 18.02).
    bool says_the_same(std::size_t c, const WrittenGlucose& level) const {
        const RowGlucose& taken = *row_.glucose;
        const GlucoseUnit titled = column(c).unit.value_or(taken.unit);
        const GlucoseUnit unit =
            level.unit.value_or(plan_.shape.unit_by_column ? titled : taken.unit);
        if (level.limit != taken.limit || unit == taken.unit) {
            return level.limit == taken.limit && level.hundredths == taken.hundredths;
        }
        constexpr double rounded = 1.5;
        constexpr double share = 0.002;
        const auto mg = [](std::int64_t hundredths, GlucoseUnit of) {
            return Glucose{static_cast<std::int32_t>(hundredths), of}.in(GlucoseUnit::mg_per_dl);
        };
        const double one = mg(taken.hundredths, taken.unit);
        return taken.limit != Limit::none ||
               std::abs(mg(level.hundredths, unit) - one) <= rounded + share * one;
    }

    const ColumnGuess& column(std::size_t c) const { return plan_.shape.columns[c]; }

    DiaryEntry& add(DiaryKind kind) {
        DiaryEntry& entry = row_.entries.emplace_back().what;
        entry.kind = kind;
        return entry;
    }

    std::string kept_text(std::size_t c) {
        const std::string_view text = without_formula_mark(cells_.raw(c));
        if (has_broken_characters(text)) {
            row_.remarks.push_back({row_.line, cells_.at(c), Fate::stored, "broken_characters",
                                    "characters without a meaning", "text"});
        }
        return without_controls(text);
    }

    void join(std::string& text, const std::string& more) {
        text += text.empty() || more.empty() ? more : " | " + more;
    }

    std::string all_texts(Role role) {
        std::string text;
        for (const std::size_t c : plan_.shape.all(role)) {
            if (cells_.filled(c) && !is_empty_word(cells_.text(c))) {
                join(text, kept_text(c));
            }
        }
        return text;
    }

    std::optional<double> number(Role role) {
        const auto c = cells_.filled_of(role);
        const auto found = c ? written_number(cells_.text(*c), plan_.decimal_mark) : std::nullopt;
        return found ? std::optional{found->value()} : std::nullopt;
    }

    void warn(std::size_t c, const char* code, std::string expected) {
        row_.remarks.push_back({row_.line, cells_.at(c), Fate::stored, code, quoted(cells_.text(c)),
                                std::move(expected)});
    }

    // "time, kind, value, text": what the row is stands in a cell.
    void of_kind() {
        const auto meaning = kind_of_row(cells_, plan_);
        const bool reading = meaning && meaning->sensed && row_.glucose;
        if (!meaning || meaning->glucose || reading) {
            return;
        }
        if (*meaning->diary == DiaryKind::finger_prick && cells_.filled_of(Role::finger_prick)) {
            return;  // from its own column
        }
        used_notes_ = true;
        DiaryEntry& entry = add(*meaning->diary);
        entry.text = all_texts(Role::note);
        auto value = cells_.filled_of(Role::value);
        if (!value && entry.kind == DiaryKind::finger_prick) {
            value = cells_.filled_of(Role::glucose);
        }
        if (entry.kind == DiaryKind::movement && entry.text.empty()) {
            entry.text = kept_text(*cells_.filled_of(Role::kind));
        }
        if (entry.kind == DiaryKind::meal) {
            entry.not_described = entry.text.empty() || says_not_described(entry.text);
        }
        if (!value) {
            return;
        }
        if (entry.kind == DiaryKind::finger_prick) {
            level_of_kind(entry, *value, meaning->unit.value_or(plan_.unit));
            return;
        }
        const auto found = written_number(cells_.text(*value), plan_.decimal_mark);
        if (!found) {
            join(entry.text, kept_text(*value));
            return;
        }
        entry.number = found->value();
        entry.number_unit = entry.kind == DiaryKind::ketones ? "mmol/L" : found->tail;
        if (entry.text.empty() && entry.kind == DiaryKind::medicine) {
            entry.text = kept_text(*cells_.filled_of(Role::kind));
        }
    }

    void meal() {
        const std::string text = all_texts(Role::meal_text);
        const auto carbohydrate = cells_.filled_of(Role::carbohydrate);
        const auto slot = cells_.filled_of(Role::slot);
        const bool numbers = number(Role::energy) || number(Role::protein) || number(Role::fat) ||
                             number(Role::fibre);
        const auto portion = cells_.filled_of(Role::portion);
        if (text.empty() && !carbohydrate && !slot && !numbers) {
            return;
        }
        DiaryEntry& entry = add(DiaryKind::meal);
        entry.text = text;
        entry.not_described = says_not_described(text);
        entry.energy_kcal = number(Role::energy);
        entry.protein_g = number(Role::protein);
        entry.fat_g = number(Role::fat);
        entry.fibre_g = number(Role::fibre);
        if (slot) {
            entry.slot = kept_text(*slot);
        }
        if (portion) {
            entry.portion = kept_text(*portion);
        }
        if (carbohydrate) {
            carbohydrate_of(*carbohydrate, entry);
        }
        if (entry.text.empty()) {
            entry.text = all_texts(Role::note);
            used_notes_ = !entry.text.empty();
        }
    }

    void carbohydrate_of(std::size_t c, DiaryEntry& entry) {
        const auto amount = amount_of(cells_.text(c), plan_.decimal_mark);
        if (amount && !column(c).exchanges) {
            entry.carbohydrate_g = amount;
        } else {
            join(entry.text, kept_text(c));
            warn(c, "carbohydrate_not_grams", "grams of carbohydrate; kept as text");
        }
    }

    // LO and HI without a number, "<20" and ">600" stay what they are: beyond a limit.
    static void set_level(DiaryEntry& entry, const WrittenGlucose& level, GlucoseUnit unit) {
        entry.glucose = Glucose{static_cast<std::int32_t>(level.hundredths), unit};
        if (level.limit == Limit::none) {
            return;
        }
        const bool below = level.limit == Limit::below;
        set_meter_limit(entry,
                        level.hundredths == 0
                            ? (below ? MeterLimit::shows_low : MeterLimit::shows_high)
                            : (below ? MeterLimit::below_level : MeterLimit::above_level),
                        unit);
    }

    // "time, finger-prick, LO".
    void level_of_kind(DiaryEntry& entry, std::size_t c, GlucoseUnit unit) {
        const GlucoseCell cell = written_glucose(cells_.text(c), plan_.decimal_mark);
        if (cell.level) {
            set_level(entry, *cell.level, cell.level->unit.value_or(unit));
        } else {
            join(entry.text, kept_text(c));
        }
    }

    void finger_prick() {
        for (const std::size_t c : plan_.shape.all(Role::finger_prick)) {
            if (!cells_.filled(c)) {
                continue;
            }
            const GlucoseCell cell = written_glucose(cells_.text(c), plan_.decimal_mark);
            if (!cell.level) {
                if (cell.why == NoGlucose::not_a_number) {
                    warn(c, "finger_prick_not_a_number", "a finger-prick value");
                }
                continue;
            }
            DiaryEntry& entry = add(DiaryKind::finger_prick);
            const GlucoseUnit unit =
                cell.level->unit.value_or(column(c).unit.value_or(plan_.finger_prick_unit));
            set_level(entry, *cell.level, unit);
            if (cell.level->limit != Limit::none) {
                entry.text = std::string(cells_.text(c));
            }
        }
    }

    void numbered(Role role, DiaryKind kind, const char* unit) {
        for (const std::size_t c : plan_.shape.all(role)) {
            if (!cells_.filled(c) || is_empty_word(cells_.text(c))) {
                continue;
            }
            DiaryEntry& entry = add(kind);
            if (const auto found = written_number(cells_.text(c), plan_.decimal_mark)) {
                entry.number = found->value();
                entry.number_unit = unit;
            } else {
                entry.text = kept_text(c);
            }
        }
    }

    void movement() {
        const auto text = cells_.filled_of(Role::movement_text);
        const auto steps = cells_.filled_of(Role::steps);
        const auto minutes = cells_.filled_of(Role::minutes);
        if ((!text && !steps && !minutes) || is_sleep()) {
            return;
        }
        const auto by_kind = std::ranges::find_if(row_.entries, [](const RowEntry& told) {
            return told.what.kind == DiaryKind::movement && !told.what.number;
        });
        DiaryEntry& entry =
            by_kind == row_.entries.end() ? add(DiaryKind::movement) : by_kind->what;
        join(entry.text, all_texts(Role::movement_text));
        if (minutes) {
            const auto found = written_number(cells_.text(*minutes), plan_.decimal_mark);
            if (found) {
                entry.number = found->value() * column(*minutes).minutes_per_unit;
                entry.number_unit = "min";
            }
        }
        if (steps) {
            const auto found = written_number(cells_.text(*steps), plan_.decimal_mark);
            if (found && !(entry.number && !text)) {
                join(entry.text, std::string(cells_.text(*steps)) + " steps");
            } else if (found) {
                entry.number = found->value();
                entry.number_unit = "steps";
            }
        }
    }

    // The span of the row is sleep by its titles, or because a cell says so.
    bool is_sleep() const {
        if (!row_.end_wall) {
            return false;
        }
        const bool titled = std::ranges::any_of(plan_.shape.columns, [](const ColumnGuess& guess) {
            return guess.of_sleep && (guess.role == Role::time || guess.role == Role::clock ||
                                      guess.role == Role::end_time);
        });
        // How long it was says nothing of what it was.
        const bool only_its_length = cells_.filled_of(Role::minutes) &&
                                     !cells_.filled_of(Role::movement_text) &&
                                     !cells_.filled_of(Role::steps) && row_.entries.empty() &&
                                     like_a_night(row_.wall, *row_.end_wall);
        return titled || only_its_length || has(DiaryKind::sleep) ||
               cells_.filled_of(Role::sleep_hours) ||
               std::ranges::any_of(plan_.shape.all(Role::movement_text),
                                   [&](std::size_t c) { return says_sleep(cells_.text(c)); });
    }

    void sleep() {
        const auto hours = cells_.filled_of(Role::sleep_hours);
        if (is_sleep()) {
            if (!has(DiaryKind::sleep)) {
                add(DiaryKind::sleep).text = all_texts(Role::sleep_hours);
            }
            return;
        }
        if (hours) {
            DiaryEntry& entry = add(DiaryKind::sleep);
            const auto found = written_number(cells_.text(*hours), plan_.decimal_mark);
            const std::string unit = found ? lower_case(found->tail) : "";
            if (found && (unit.empty() || unit == "h" || unit == "hours" || unit == "std")) {
                entry.number = found->value();
                entry.number_unit = "h";
            } else {
                entry.text = kept_text(*hours);
            }
        }
    }

    bool has(DiaryKind kind) const {
        return std::ranges::any_of(row_.entries,
                                   [&](const RowEntry& told) { return told.what.kind == kind; });
    }

    // A span that nothing in its row says anything of, by night, is sleep; a note may stand beside.
    void untold_night() {
        const bool told =
            row_.glucose || std::ranges::any_of(row_.entries, [](const RowEntry& one) {
                return one.what.kind != DiaryKind::note;
            });
        if (row_.end_wall && !told && like_a_night(row_.wall, *row_.end_wall)) {
            add(DiaryKind::sleep);
        }
    }

    // The end of the span is that of what was done or slept in it; where nothing was, it is lost.
    void give_end() {
        bool given = false;
        for (RowEntry& told : row_.entries) {
            const DiaryKind kind = told.what.kind;
            if (row_.end_wall && (kind == DiaryKind::sleep || kind == DiaryKind::movement)) {
                told.end = row_.end_wall;
                given = true;
            }
        }
        const auto column = cells_.filled_of(Role::end_time);
        if (column && !given) {
            row_.unread.push_back(*column);
        }
    }

    // A value of which no kind says what it is of.
    void keep_unread_value() {
        for (const std::size_t c : plan_.shape.all(Role::value)) {
            if (cells_.filled(c) && !plan_.shape.first(Role::kind)) {
                row_.unread.push_back(c);
            }
        }
    }

    void texts(Role role, DiaryKind kind) {
        for (const std::size_t c : plan_.shape.all(role)) {
            if (!cells_.filled(c) || is_empty_word(cells_.text(c))) {
                continue;
            }
            DiaryEntry& entry = add(kind);
            const auto found = written_number(cells_.text(c), plan_.decimal_mark);
            if (found && found->tail.size() <= 8 && kind != DiaryKind::note) {
                entry.number = found->value();
                entry.number_unit = found->tail;
            } else {
                entry.text = kept_text(c);
            }
        }
    }

    std::string medicine_in_title(std::size_t c) const {
        return names_a_medicine(column(c).title) ? column(c).title : "";
    }

    void medicines() {
        const auto dose = cells_.filled_of(Role::dose);
        bool any = false;
        for (const std::size_t c : plan_.shape.all(Role::medicine)) {
            if (!cells_.filled(c) || is_empty_word(cells_.text(c))) {
                continue;
            }
            DiaryEntry& entry = add(DiaryKind::medicine);
            const auto found = written_number(cells_.text(c), plan_.decimal_mark);
            if (found && found->tail.empty()) {  // a dose under a title that names the medicine
                entry.number = found->value();
                entry.text = medicine_in_title(c);
            } else {
                entry.text = kept_text(c);
            }
            any = true;
        }
        if (!dose) {
            return;
        }
        DiaryEntry& entry = any ? row_.entries.back().what : add(DiaryKind::medicine);
        if (const auto found = written_number(cells_.text(*dose), plan_.decimal_mark)) {
            entry.number = found->value();
            entry.number_unit = found->tail;
            if (!any) {
                entry.text = medicine_in_title(*dose);
                join(entry.text, all_texts(Role::note));
                used_notes_ = true;
            }
        } else {
            join(entry.text, kept_text(*dose));
        }
    }

    const RowCells& cells_;
    const ReadingPlan& plan_;
    ReadRow& row_;
    bool used_notes_ = false;
};

}  // namespace

void add_entries(const RowCells& cells, const ReadingPlan& plan, ReadRow& row) {
    EntryBuilder(cells, plan, row).build();
}

std::optional<KindMeaning> kind_of_row(const RowCells& cells, const ReadingPlan& plan) {
    const auto column = cells.filled_of(Role::kind);
    auto meaning = column ? kind_meaning(cells.text(*column)) : std::nullopt;
    if (meaning && meaning->glucose &&
        (plan.by_meter || (meaning->of_blood && plan.kinds_name_a_sensor))) {
        meaning->glucose = false;
        meaning->diary = DiaryKind::finger_prick;
    }
    return meaning;
}

bool says_not_described(std::string_view text) {
    const std::string lower = lower_case(text);
    return std::any_of(
        not_described_words.begin(), not_described_words.end(),
        [&](std::string_view word) { return lower.find(word) != std::string::npos; });
}

}  // namespace tracewright
