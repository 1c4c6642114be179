#include "intake/row_entries.hpp"

#include "diary/finger_prick.hpp"
#include "intake/entry_writer.hpp"
#include "intake/row_meals.hpp"
#include "intake/row_sleep.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

// Builds the diary entries of one row.
class EntryBuilder {
  public:
    EntryBuilder(const RowCells& cells, const ReadingPlan& plan, ReadRow& row)
        : cells_(cells), plan_(plan), row_(row), writer_(cells, plan, row) {}

    void build() {
        tell_second_glucose();
        of_kind();
        used_notes_ = add_meals(writer_) || used_notes_;
        finger_prick();
        numbered(Role::ketones, DiaryKind::ketones, "mmol/L");
        movement();
        add_sleep(writer_);
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
        add_untold_night(writer_);
        give_end();
        keep_unread();
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

    DiaryEntry& add(DiaryKind kind) { return writer_.add(kind).what; }
    std::string kept_text(std::size_t c) { return writer_.kept_text(c); }
    void warn(std::size_t c, const char* code, std::string expected) {
        writer_.warn(c, code, std::move(expected));
    }

    std::string all_texts(Role role) { return writer_.all_texts(role); }

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
        const bool slept = span_is_sleep(writer_);  // which its text and minutes then tell of
        const auto text = slept ? std::nullopt : cells_.filled_of(Role::movement_text);
        const auto steps = writer_.taken(Role::steps);
        const auto minutes = slept ? std::nullopt : writer_.taken(Role::minutes);
        if (!text && !steps && !minutes) {
            return;
        }
        const auto by_kind = std::ranges::find_if(row_.entries, [](const RowEntry& told) {
            return told.what.kind == DiaryKind::movement && !told.what.number;
        });
        DiaryEntry& entry =
            by_kind == row_.entries.end() ? add(DiaryKind::movement) : by_kind->what;
        join(entry.text, slept ? "" : all_texts(Role::movement_text));
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

    // The end of the span is that of what was done or slept in it; where nothing was, it is lost.
    // What a row tells beside the time of going to bed was at another time.
    void give_end() {
        const DiaryKind spanned = span_is_sleep(writer_) ? DiaryKind::sleep : DiaryKind::movement;
        bool given = false;
        for (RowEntry& told : row_.entries) {
            const DiaryKind kind = told.what.kind;
            const bool night = kind == DiaryKind::sleep && !told.end;
            if (row_.end_wall && !told.begin && (kind == spanned || (night && !given))) {
                told.end = OwnTime{*row_.end_wall, {}};
                if (row_.end) {
                    told.end->offset =
                        row_.end_wall->time_since_epoch() - row_.end->time_since_epoch();
                }
                given = true;
            }
            if (plan_.shape.times_begin_sleep && !told.begin && kind != DiaryKind::sleep) {
                told.clock_told = false;
            }
        }
        const auto column = cells_.filled_of(Role::end_time);
        if (column && !given) {
            row_.unread.push_back(*column);
        }
    }

    // A value of which no kind says what it is of; what stands under a meal and is not of it.
    void keep_unread() {
        const bool kind = plan_.shape.first(Role::kind).has_value();
        for (std::size_t c = 0; c < plan_.shape.columns.size(); ++c) {
            const bool value = column(c).role == Role::value && !kind;
            const bool of_meal = column(c).role == Role::ignored && column(c).names.has_value();
            if ((value || of_meal) && cells_.filled(c) && !is_empty_word(cells_.text(c))) {
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
        const auto dose = writer_.taken(Role::dose);
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
    EntryWriter writer_;
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

}  // namespace tracewright
