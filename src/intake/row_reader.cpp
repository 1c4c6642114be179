#include "intake/row_reader.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace tracewright {

namespace {

// Found texts are told short: an error is not a copy of the file.
constexpr std::size_t longest_found = 60;

std::string shortened(std::string_view text) {
    std::string result(text.substr(0, longest_found));
    // Not in the middle of a character.
    while (!result.empty() && result.size() < text.size() &&
           (static_cast<unsigned char>(text[result.size()]) & 0xC0U) == 0x80U) {
        result.pop_back();
    }
    for (char& c : result) {
        c = c == '\n' || c == '\r' || c == '\t' ? ' ' : c;
    }
    return text.size() > result.size() ? result + "..." : result;
}

std::string quoted(std::string_view text) {
    return "'" + shortened(text) + "'";
}

// A row's cells by column, as plain text.
class Cells {
  public:
    Cells(const Row& row, const TableShape& shape)
        : row_(row), shape_(shape), texts_(row.cells.size()) {
        for (std::size_t c = 0; c < row.cells.size(); ++c) {
            texts_[c] = plain(row.cells[c].text);
        }
    }

    std::string_view text(std::size_t column) const {
        return column < texts_.size() ? std::string_view(texts_[column]) : std::string_view();
    }
    std::string_view raw(std::size_t column) const {
        return column < row_.cells.size() ? trimmed(row_.cells[column].text) : std::string_view();
    }
    CellForm form(std::size_t column) const {
        return column < row_.cells.size() ? row_.cells[column].form : CellForm::text;
    }
    /// Where a column's cell stands in the line; 0 if the row is too short to have it.
    std::uint32_t at(std::size_t column) const {
        return column < row_.cells.size() ? row_.cells[column].column : 0;
    }
    bool filled(std::size_t column) const {
        const std::string_view t = text(column);
        return !t.empty() && !is_separator(t);
    }
    std::size_t filled_cells() const {
        std::size_t n = 0;
        for (std::size_t c = 0; c < texts_.size(); ++c) {
            n += filled(c) ? 1U : 0U;
        }
        return n;
    }
    /// The first filled column of a role.
    std::optional<std::size_t> filled_of(Role role) const {
        for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
            if (shape_.columns[c].role == role && filled(c)) {
                return c;
            }
        }
        return std::nullopt;
    }

  private:
    const Row& row_;
    const TableShape& shape_;
    std::vector<std::string> texts_;
};

constexpr std::array empty_words{"na", "n/a", "null", "none", "nan", "nil", "#n/a", "/", "#value!"};
constexpr std::array not_described_words{"data not available", "not recorded", "not noted",
                                         "nicht notiert", "\xE6\x9C\xAA\xE8\xAE\xB0\xE5\xBD\x95"};

bool is_empty_word(std::string_view text) {
    const std::string word = lower_case(text);
    return std::find(empty_words.begin(), empty_words.end(), word) != empty_words.end();
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
    EntryBuilder(const Cells& cells, const ReadingPlan& plan, ReadRow& row)
        : cells_(cells), plan_(plan), row_(row) {}

    void build() {
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
    }

  private:
    const ColumnGuess& column(std::size_t c) const { return plan_.shape.columns[c]; }

    DiaryEntry& add(DiaryKind kind) {
        DiaryEntry& entry = row_.entries.emplace_back();
        entry.kind = kind;
        return entry;
    }

    std::string kept_text(std::size_t c) {
        const std::string_view text = cells_.raw(c);
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
        const auto kind_column = cells_.filled_of(Role::kind);
        const auto meaning = kind_column ? kind_meaning(cells_.text(*kind_column)) : std::nullopt;
        if (!meaning || meaning->glucose) {
            return;
        }
        used_notes_ = true;
        DiaryEntry& entry = add(*meaning->diary);
        entry.text = all_texts(Role::note);
        const auto value = cells_.filled_of(Role::value);
        if (entry.kind == DiaryKind::meal) {
            entry.not_described = entry.text.empty() || says_not_described(entry.text);
        }
        if (!value) {
            return;
        }
        const auto found = written_number(cells_.text(*value), plan_.decimal_mark);
        if (!found) {
            join(entry.text, kept_text(*value));
            return;
        }
        if (entry.kind == DiaryKind::finger_prick) {
            const GlucoseUnit unit = meaning->unit.value_or(plan_.unit);
            entry.glucose = Glucose{static_cast<std::int32_t>(found->hundredths), unit};
        } else {
            entry.number = found->value();
            entry.number_unit = entry.kind == DiaryKind::ketones ? "mmol/L" : found->tail;
        }
        if (entry.text.empty() && entry.kind == DiaryKind::medicine) {
            entry.text = kept_text(*kind_column);
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
            const GlucoseUnit unit = cell.level->unit.value_or(column(c).unit.value_or(plan_.unit));
            entry.glucose = Glucose{static_cast<std::int32_t>(cell.level->hundredths), unit};
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
        const bool sleeps = cells_.filled_of(Role::end_time).has_value();
        if ((!text && !steps && !minutes) || sleeps) {
            return;
        }
        DiaryEntry& entry = add(DiaryKind::movement);
        entry.text = all_texts(Role::movement_text);
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

    void sleep() {
        const auto hours = cells_.filled_of(Role::sleep_hours);
        if (row_.end_wall) {
            DiaryEntry& entry = add(DiaryKind::sleep);
            entry.text = all_texts(Role::sleep_hours);
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
                entry.text = column(c).title;
            } else {
                entry.text = kept_text(c);
            }
            any = true;
        }
        if (!dose) {
            return;
        }
        DiaryEntry& entry = any ? row_.entries.back() : add(DiaryKind::medicine);
        if (const auto found = written_number(cells_.text(*dose), plan_.decimal_mark)) {
            entry.number = found->value();
            entry.number_unit = found->tail;
            if (!any) {
                entry.text = column(*dose).title;
                join(entry.text, all_texts(Role::note));
                used_notes_ = true;
            }
        } else {
            join(entry.text, kept_text(*dose));
        }
    }

    const Cells& cells_;
    const ReadingPlan& plan_;
    ReadRow& row_;
    bool used_notes_ = false;
};

void settle(ReadRow& row, Fate fate, std::uint32_t column, std::string code, std::string found,
            std::string expected) {
    row.state = ReadRow::State::settled;
    row.note =
        RowNote{row.line, column, fate, std::move(code), std::move(found), std::move(expected)};
}

void settle_fault(ReadRow& row, const Row& source) {
    switch (source.fault) {
        case RowFault::unclosed_quote:
            settle(row, Fate::rejected, source.fault_column, "unclosed_quote",
                   "a quote that opens here", "its closing quote");
            break;
        case RowFault::field_too_long:
            settle(row, Fate::rejected, source.fault_column, "field_too_long",
                   "a field of over 1 MiB", "a shorter field");
            break;
        default:
            settle(row, Fate::rejected, source.fault_column, "line_too_long",
                   "a line of over 16 MiB", "a shorter line");
            break;
    }
}

}  // namespace

bool says_not_described(std::string_view text) {
    const std::string lower = lower_case(text);
    return std::any_of(
        not_described_words.begin(), not_described_words.end(),
        [&](std::string_view word) { return lower.find(word) != std::string::npos; });
}

std::optional<WrittenTime> cell_time(std::string_view text, CellForm form, bool serial_1904) {
    if (form == CellForm::date || form == CellForm::number) {
        double serial = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), serial);
        if (error == std::errc{} && end == text.data() + text.size()) {
            if (auto time = serial_time(serial, serial_1904)) {
                return time;
            }
        }
    }
    if (auto time = written_time(text)) {
        return time;
    }
    // A serial number that reached us as text: "46083.34375".
    double serial = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), serial);
    const bool number = error == std::errc{} && end == text.data() + text.size();
    return number && serial > 1 ? serial_time(serial, serial_1904) : std::nullopt;
}

ReadRow RowReader::read(const Row& source) {
    const TableShape& shape = plan_.shape;
    ReadRow row;
    row.line = source.line;
    const Cells cells(source, shape);
    data_begun_ = data_begun_ || source.line >= shape.first_data_line;
    if (!data_begun_ || (shape.header_line && source.line <= *shape.header_line)) {
        settle(row, Fate::not_data, 0, {}, {}, {});
        return row;
    }
    if (source.fault != RowFault::none) {
        settle_fault(row, source);
        return row;
    }
    if (cells.filled_cells() == 0) {
        settle(row, Fate::not_data, 0, {}, {}, {});
        return row;
    }
    // Trailing empty cells beyond the block are nothing; filled ones are a row that split wrongly.
    bool beyond = false;
    for (std::size_t c = shape.fields; c < source.cells.size(); ++c) {
        beyond = beyond || cells.filled(c);
    }
    if (beyond) {
        settle(row, Fate::rejected, cells.at(shape.fields), "too_many_fields",
               std::to_string(source.cells.size()) + " fields",
               std::to_string(shape.fields) + " fields (is a decimal comma or a text unquoted?)");
        return row;
    }
    if (const auto person = shape.first(Role::person);
        person && plan_.person && cells.filled(*person) && cells.text(*person) != *plan_.person) {
        settle(row, Fate::rejected, cells.at(*person), "other_person", "a row of another person",
               "rows of the person asked for");
        return row;
    }

    // The time: in one column, or date and clock in two, the date only where it changes.
    std::optional<WrittenTime> time;
    std::size_t time_column = 0;
    if (const auto column = shape.first(Role::time)) {
        time_column = *column;
        time = cell_time(cells.text(*column), cells.form(*column), plan_.serial_1904);
    } else if (const auto date_column = shape.first(Role::date)) {
        time_column = *date_column;
        auto date =
            cell_time(cells.text(*date_column), cells.form(*date_column), plan_.serial_1904);
        const auto clock_column = shape.first(Role::clock);
        if (date && date->has_date) {
            carried_date_ = date;
        } else if (!cells.filled(*date_column)) {
            date = carried_date_;
        } else {
            date.reset();
        }
        if (date && clock_column) {
            const auto clock =
                cell_time(cells.text(*clock_column), cells.form(*clock_column), plan_.serial_1904);
            if (clock && clock->has_clock && !clock->has_date) {
                date->clock = clock->clock;
                date->has_clock = true;
                date->twelve_hour = clock->twelve_hour;
                time = date;
            } else {
                time_column = *clock_column;
            }
        } else {
            time = date;
        }
    }

    EntryBuilder builder(cells, plan_, row);
    const auto glucose_columns = shape.all(Role::glucose);
    const auto kind = cells.filled_of(Role::kind);
    const auto meaning = kind ? kind_meaning(cells.text(*kind)) : std::nullopt;
    std::vector<std::size_t> candidates = glucose_columns;
    if (meaning && meaning->glucose) {
        const auto value = shape.first(Role::value);
        candidates.insert(candidates.end(), value ? 1 : 0, value.value_or(0));
    }

    const auto date = time ? time->date(plan_.date_order) : std::nullopt;
    const bool placed = time && (time->instant || (time->has_date && date));
    if (!placed) {
        // A footer or a title row repeated has no time and no value either.
        bool any_value = false;
        for (const std::size_t c : candidates) {
            any_value =
                any_value || written_glucose(cells.text(c), plan_.decimal_mark).level.has_value();
        }
        const bool repeated_title = time_column < shape.columns.size() &&
                                    !shape.columns[time_column].title.empty() &&
                                    cells.text(time_column) == shape.columns[time_column].title;
        const bool time_filled = cells.filled(time_column);
        const bool sparse = 2 * cells.filled_cells() <= std::max<std::size_t>(2, shape.fields) ||
                            source.cells.size() < shape.fields;
        const bool looks_like_time =
            time.has_value() ||
            (time_filled && cells.text(time_column).find_first_of("0123456789") == 0);
        if (repeated_title || (!any_value && sparse && !looks_like_time)) {
            settle(row, Fate::not_data, 0, {}, {}, {});
        } else if (!time_filled) {
            settle(row, Fate::rejected, cells.at(time_column), "time_missing", "no time",
                   "a date and time");
        } else {
            settle(row, Fate::rejected, cells.at(time_column), "time_not_read",
                   quoted(cells.raw(time_column)), "a date and time");
        }
        return row;
    }
    row.time_column = cells.at(time_column);
    if (has_broken_characters(cells.raw(time_column))) {
        settle(row, Fate::rejected, row.time_column, "broken_characters",
               "characters without a meaning", "a date and time");
        return row;
    }
    if (time->instant) {
        row.instant = time->instant;
    } else {
        row.wall = *date + time->clock;
        if (time->offset && !(time->offset->count() == 0 && !time->zone.empty())) {
            row.instant = Instant{row.wall.time_since_epoch()} - *time->offset;
        } else if (time->offset) {
            row.instant = Instant{row.wall.time_since_epoch()};
        }
    }
    if (const auto end_column = cells.filled_of(Role::end_time)) {
        const auto end =
            cell_time(cells.text(*end_column), cells.form(*end_column), plan_.serial_1904);
        if (end && end->has_date && end->date(plan_.date_order)) {
            row.end_wall = *end->date(plan_.date_order) + end->clock;
        } else if (end && end->has_clock && date) {
            row.end_wall =
                *date + end->clock +
                (end->clock <= time->clock ? std::chrono::hours{24} : std::chrono::hours{0});
        }
    }

    // The glucose: the first column that has one.
    std::optional<RowNote> no_level;
    for (const std::size_t c : candidates) {
        if (row.glucose || !cells.filled(c)) {
            continue;
        }
        const std::string_view text = cells.text(c);
        const GlucoseCell cell = cells.form(c) == CellForm::error
                                     ? GlucoseCell{std::nullopt, NoGlucose::empty}
                                     : written_glucose(text, plan_.decimal_mark);
        if (cell.level && cell.level->hundredths <= 1'000'000) {
            GlucoseUnit unit = cell.level->unit.value_or(plan_.unit);
            const auto unit_column = cells.filled_of(Role::unit);
            if (!cell.level->unit && unit_column) {
                unit = unit_named(cells.text(*unit_column)).value_or(unit);
            } else if (!cell.level->unit && meaning && meaning->unit) {
                unit = *meaning->unit;
            }
            row.glucose = RowGlucose{cell.level->hundredths, cell.level->limit, unit, cells.at(c)};
            if (cell.level->rounded) {
                row.remarks.push_back({row.line, cells.at(c), Fate::stored, "rounded", quoted(text),
                                       "at most two decimals"});
            }
        } else if (cell.why == NoGlucose::not_a_number || cell.level) {
            no_level = RowNote{row.line,
                               cells.at(c),
                               Fate::rejected,
                               "value_not_a_number",
                               quoted(cells.raw(c)),
                               "a glucose value, LOW or HIGH"};
        } else if (cell.why == NoGlucose::zero) {
            no_level =
                RowNote{row.line, cells.at(c), Fate::rejected, "no_value", "0", "a glucose value"};
        }
    }
    builder.build();
    if (row.glucose || !row.entries.empty()) {
        row.state = ReadRow::State::data;
        if (no_level) {  // the diary item is kept; that the value was none is told
            no_level->fate = Fate::stored;
            row.remarks.push_back(*no_level);
        }
        return row;
    }
    if (no_level) {
        row.note = no_level;
        return row;
    }
    settle(row, Fate::rejected, candidates.empty() ? row.time_column : cells.at(candidates.front()),
           "no_value", "no value beside the time",
           candidates.empty() ? "a diary item" : "a glucose value or a diary item");
    return row;
}

}  // namespace tracewright
