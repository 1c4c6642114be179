#include "intake/row_reader.hpp"

#include "intake/cell_time.hpp"
#include "intake/footer_words.hpp"
#include "intake/loose_clock.hpp"
#include "intake/own_times.hpp"
#include "intake/plain_text.hpp"
#include "intake/row_cells.hpp"
#include "intake/row_entries.hpp"
#include "intake/told_offset.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

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

// Trailing empty cells beyond the block are nothing; filled ones are a row that split wrongly.
bool filled_beyond(const RowCells& cells, std::size_t fields, std::size_t all) {
    bool beyond = false;
    for (std::size_t c = fields; c < all; ++c) {
        beyond = beyond || cells.filled(c);
    }
    return beyond;
}

std::string clock_words(std::chrono::seconds clock) {
    const std::chrono::hh_mm_ss time{clock};
    return fmt::format("{:02}:{:02}", time.hours().count(), time.minutes().count());
}

// "<120" may stand for any band up to that level: it is no LOW. At the range's edge or beyond it is
// taken for one, towards care.
bool limit_within_range(const WrittenGlucose& level, GlucoseUnit unit) {
    const bool mg = unit == GlucoseUnit::mg_per_dl;
    const bool told = level.hundredths > 0;  // else a word: the sensor's own limit
    return told && ((level.limit == Limit::below && level.hundredths > (mg ? 7000 : 390)) ||
                    (level.limit == Limit::above && level.hundredths < (mg ? 18000 : 1000)));
}

}  // namespace

// What is known of one row while it is read.
struct RowReader::Reading {
    const Row& source;
    RowCells cells;
    ReadRow& row;
    std::optional<WrittenTime> time;
    std::size_t time_column = 0;
    std::optional<CivilDate> date;             // of `time`, by the plan's order
    std::optional<KindMeaning> meaning;        // of the kind cell
    std::vector<std::size_t> glucose_columns;  // where glucose may stand
    std::optional<RowNote> no_level;           // why the glucose that stands there is none
    std::optional<RowNote> usual_clock;        // what was taken for a time of day not told
    std::string_view slot;                     // the meal that stands for the time of day
};

ReadRow RowReader::read(const Row& source) {
    ReadRow row;
    row.line = source.line;
    Reading reading{source, RowCells(source, plan_.shape), row, {}, 0, {}, {}, {}, {}, {}, {}};
    if (is_settled(reading)) {
        return row;
    }
    find_time(reading);
    find_usual_clock(reading);
    find_glucose_columns(reading);
    if (!place(reading)) {
        return row;
    }
    find_end(reading);
    find_glucose(reading);
    add_entries(reading.cells, plan_, row);
    set_slot(reading);
    conclude(reading);
    return row;
}

// Rows that are settled without a look at what they mean.
bool RowReader::is_settled(Reading& reading) {
    const TableShape& shape = plan_.shape;
    const RowCells& cells = reading.cells;
    const Row& source = reading.source;
    ReadRow& row = reading.row;
    data_begun_ = data_begun_ || source.line >= shape.first_data_line;
    const auto person = shape.first(Role::person);
    if (!data_begun_ || (shape.header_line && source.line <= *shape.header_line)) {
        settle(row, Fate::not_data, 0, {}, {}, {});
    } else if (source.fault != RowFault::none) {
        settle_fault(row, source);
    } else if (cells.filled_cells() == 0) {
        settle(row, Fate::not_data, 0, {}, {}, {});
    } else if (filled_beyond(cells, shape.fields, source.cells.size())) {
        settle(row, Fate::rejected, cells.at(shape.fields), "too_many_fields",
               std::to_string(source.cells.size()) + " fields",
               std::to_string(shape.fields) + " fields (is a decimal comma or a text unquoted?)");
    } else if (person && plan_.person && cells.filled(*person) &&
               cells.text(*person) != *plan_.person) {
        settle(row, Fate::rejected, cells.at(*person), "other_person", "a row of another person",
               "rows of the person asked for");
    } else {
        return false;
    }
    return true;
}

std::optional<WrittenTime> RowReader::time_in(const RowCells& cells, std::size_t column) const {
    return cell_time(cells.text(column), cells.form(column), plan_.serial_1904);
}

// The time: in one column, or date and clock in two, the date only where it changes.
void RowReader::find_time(Reading& reading) {
    const RowCells& cells = reading.cells;
    const auto date_column = plan_.shape.first(Role::date);
    if (const auto column = plan_.shape.first(Role::time)) {
        reading.time_column = *column;
        reading.time = time_in(cells, *column);
    } else if (date_column) {
        reading.time_column = *date_column;
        reading.time = carried_date(cells, *date_column);
        const auto clock_column = plan_.shape.first(Role::clock);
        if (!reading.time || !clock_column) {
            return;
        }
        const auto clock = column_time(cells, plan_, *clock_column);
        if (!clock || !clock->has_clock || clock->has_date) {
            reading.time_column = *clock_column;
            if (!cells.filled(*date_column)) {
                reading.time.reset();  // carried down to what bears no time itself
            }
            return;
        }
        reading.time->clock = clock->clock;
        reading.time->has_clock = true;
        reading.time->twelve_hour = clock->twelve_hour;
        if (clock->offset) {
            reading.time->offset = clock->offset;
            reading.time->utc = clock->utc;
        }
    }
}

// A date without a time of day is placed by what is said instead, else at noon, and told so.
void RowReader::find_usual_clock(Reading& reading) const {
    if (!reading.time || reading.time->has_clock || reading.time->instant) {
        return;
    }
    const RowCells& cells = reading.cells;
    ReadRow& row = reading.row;
    const bool midnight = plan_.date_is_midnight && plan_.shape.first(Role::time);
    if (!midnight) {
        row.clock_told = false;
        const auto loose = loose_clock(cells.text(reading.time_column));
        reading.time->clock = loose ? loose->clock : std::chrono::hours{12};
        reading.slot = loose ? loose->slot : std::string_view{};
    }
    // A workbook's midnight is a whole number of days.
    const CellForm form = cells.form(reading.time_column);
    const bool exact = midnight && (form == CellForm::date || form == CellForm::number);
    if (exact || !reading.time->date(plan_.date_order)) {
        return;
    }
    reading.usual_clock = RowNote{
        row.line,
        cells.at(reading.time_column),
        Fate::stored,
        "clock_missing",
        quoted(cells.raw(reading.time_column)),
        "a time of day; taken as " + clock_words(reading.time->clock) +
            (midnight ? ", as a date alone in a column of times" : ", and held to be uncertain")};
}

// The date of this row, or where its cell is empty that of a row before it.
std::optional<WrittenTime> RowReader::carried_date(const RowCells& cells, std::size_t column) {
    auto date = time_in(cells, column);
    if (date && date->has_date) {
        carried_date_ = date;
        return date;
    }
    return cells.filled(column) ? std::nullopt : carried_date_;
}

bool RowReader::bears_a_level(const Reading& reading, std::size_t column) const {
    return written_glucose(reading.cells.text(column), plan_.decimal_mark).level.has_value();
}

void RowReader::find_glucose_columns(Reading& reading) const {
    const auto& meaning = reading.meaning = kind_of_row(reading.cells, plan_);
    if (meaning && meaning->diary == DiaryKind::finger_prick) {
        return;  // a meter's level is none of the trace
    }
    reading.glucose_columns = plan_.shape.all(Role::glucose);
    if (plan_.glucose_first) {
        std::ranges::stable_partition(reading.glucose_columns,
                                      [&](std::size_t c) { return c == *plan_.glucose_first; });
    }
    const auto value = plan_.shape.first(Role::value);
    if (meaning && value &&
        (meaning->glucose || (meaning->sensed && bears_a_level(reading, *value)))) {
        reading.glucose_columns.push_back(*value);
    }
}

// Where the row stands in time; false if it has no place and is settled.
bool RowReader::place(Reading& reading) {
    const auto& time = reading.time;
    ReadRow& row = reading.row;
    reading.date = time ? time->date(plan_.date_order) : std::nullopt;
    row.date = time && time->has_date ? reading.date : std::nullopt;
    if (!time || !(time->instant || (time->has_date && reading.date))) {
        settle_timeless(reading);
        return false;
    }
    row.time_column = reading.cells.at(reading.time_column);
    if (has_broken_characters(reading.cells.raw(reading.time_column))) {
        settle(row, Fate::rejected, row.time_column, "broken_characters",
               "characters without a meaning", "a date and time");
        return false;
    }
    if (time->instant) {
        row.instant = time->instant;
        return true;
    }
    row.wall = *reading.date + time->clock;
    const auto offset = told_offset(*time, {}, reading.cells, plan_);
    if (offset && row.clock_told) {
        row.instant = Instant{row.wall.time_since_epoch()} - offset->east;
        const auto of_row = offset->utc ? told_offset_of_row(reading.cells, plan_) : offset;
        row.offset = of_row && !of_row->utc ? std::optional{of_row->east} : std::nullopt;
    }
    return !settles_by_zone(reading);
}

// A zone behind the time (RFC 9557): with an offset beside it is a check, which counts or rejects;
// alone it tells the moment, unless its clock showed that twice or never. True if it rejects. An
// abbreviation can't tell, for several zones share most of them.
bool RowReader::settles_by_zone(Reading& reading) {
    const WrittenTime& time = *reading.time;
    ReadRow& row = reading.row;
    if (!time.abbreviation.empty()) {
        settle(row, Fate::rejected, row.time_column, "zone_abbreviation", quoted(time.abbreviation),
               "a distance from UTC, such as +01:00, or times without it and --zone");
        return true;
    }
    if (time.zone.empty() || time.utc) {
        return false;
    }
    const auto by_zone = zones_.offset_in(time.zone, row.wall, row.instant);
    if (!time.offset) {
        row.instant =
            by_zone ? std::optional{Instant{row.wall.time_since_epoch()} - *by_zone} : row.instant;
        row.offset = by_zone ? by_zone : row.offset;
        return false;
    }
    if (by_zone == time.offset || (!by_zone && !time.zone_critical)) {
        return false;
    }
    const std::string expected = by_zone
                                     ? "the offset of that zone, " + Zone::fixed(*by_zone).name()
                                     : "a zone such as Europe/Berlin";
    if (time.zone_critical) {
        settle(row, Fate::rejected, row.time_column, "zone_contradicts_offset",
               quoted(reading.cells.raw(reading.time_column)), expected);
    } else {
        row.remarks.push_back({row.line, row.time_column, Fate::stored, "zone_contradicts_offset",
                               quoted(reading.cells.raw(reading.time_column)),
                               expected + "; the offset that is written is taken"});
    }
    return time.zone_critical;
}

// Meals at "dinner" are dinners.
void RowReader::set_slot(Reading& reading) {
    for (RowEntry& told : reading.row.entries) {
        DiaryEntry& entry = told.what;
        if (entry.kind == DiaryKind::meal && !entry.slot && !reading.slot.empty()) {
            entry.slot = std::string(reading.slot);
        }
    }
}

bool RowReader::holds_an_item(const Reading& reading) const {
    ReadRow scratch;
    scratch.line = reading.row.line;
    add_entries(reading.cells, plan_, scratch);
    return !scratch.entries.empty();
}

// "Average,120": what sums the rows up stands where a row begins with its time.
bool RowReader::is_footer(const Reading& reading) {
    const RowCells& cells = reading.cells;
    for (std::size_t c = 0; c < reading.time_column; ++c) {
        if (cells.filled(c)) {
            return false;
        }
    }
    return sums_up(cells.text(reading.time_column));
}

// A footer or a title row repeated has no time, and no value either unless it sums up.
void RowReader::settle_timeless(Reading& reading) const {
    const RowCells& cells = reading.cells;
    const std::size_t column = reading.time_column;
    const auto& columns = plan_.shape.columns;
    const bool any_value =
        holds_an_item(reading) ||
        std::any_of(reading.glucose_columns.begin(), reading.glucose_columns.end(),
                    [&](std::size_t c) { return bears_a_level(reading, c); });
    const bool repeated_title = column < columns.size() && !columns[column].title.empty() &&
                                cells.text(column) == columns[column].title;
    const bool sparse = 2 * cells.filled_cells() <= std::max<std::size_t>(2, plan_.shape.fields) ||
                        reading.source.cells.size() < plan_.shape.fields;
    const bool looks_like_time =
        reading.time.has_value() ||
        (cells.filled(column) && cells.text(column).find_first_of("0123456789") == 0);
    if (repeated_title || is_footer(reading) || (!any_value && sparse && !looks_like_time)) {
        settle(reading.row, Fate::not_data, 0, {}, {}, {});
    } else if (!cells.filled(column)) {
        settle(reading.row, Fate::rejected, cells.at(column), "time_missing", "no time",
               "a date and time");
    } else {
        settle(reading.row, Fate::rejected, cells.at(column), "time_not_read",
               quoted(cells.raw(column)), "a date and time");
    }
}

// Of sleep or movement; a clock alone that isn't later than the beginning's is the next day's.
void RowReader::find_end(Reading& reading) const {
    const auto column = reading.cells.filled_of(Role::end_time);
    const auto end = column ? time_in(reading.cells, *column) : std::nullopt;
    if (!end) {
        return;
    }
    const auto end_date = end->date(plan_.date_order);
    if (end->has_date && end_date) {
        reading.row.end_wall = *end_date + end->clock;
    } else if (end->has_clock && reading.date) {
        const bool next_day = end->clock <= reading.time->clock;
        reading.row.end_wall = *reading.date + end->clock + std::chrono::hours{next_day ? 24 : 0};
    }
    // Beside a beginning that tells its own offset alone the zone says when a clock showed the end.
    const auto offset = told_offset(*end, column, reading.cells, plan_);
    if (offset && reading.row.instant && reading.row.end_wall) {
        reading.row.end = Instant{reading.row.end_wall->time_since_epoch()} - offset->east;
    }
}

// The glucose: the first column that has one.
void RowReader::find_glucose(Reading& reading) const {
    constexpr std::int64_t most_hundredths = 1'000'000;
    const RowCells& cells = reading.cells;
    ReadRow& row = reading.row;
    const auto none_because = [&](std::size_t c, const char* code, std::string found,
                                  const char* expected) {
        reading.no_level =
            RowNote{row.line, cells.at(c), Fate::rejected, code, std::move(found), expected};
    };
    for (const std::size_t c : reading.glucose_columns) {
        if (row.glucose || !cells.filled(c)) {
            continue;
        }
        const GlucoseCell cell = cells.form(c) == CellForm::error
                                     ? GlucoseCell{std::nullopt, NoGlucose::empty}
                                     : written_glucose(cells.text(c), plan_.decimal_mark);
        if (cell.level && cell.level->hundredths <= most_hundredths) {
            const auto unit = unit_of(reading, c, *cell.level);
            if (!unit) {
                const std::size_t named = *cells.filled_of(Role::unit);
                none_because(named, "unit_not_read", quoted(cells.raw(named)), "mg/dL or mmol/L");
                continue;
            }
            if (limit_within_range(*cell.level, *unit)) {
                none_because(c, "limit_within_range", quoted(cells.raw(c)),
                             "a level, or a limit at or beyond the range of 70 to 180 mg/dL (3.9 "
                             "to 10.0 mmol/L)");
                continue;
            }
            row.glucose = RowGlucose{cell.level->hundredths, cell.level->limit, *unit, cells.at(c)};
            if (cell.level->rounded) {
                row.remarks.push_back({row.line, cells.at(c), Fate::stored, "rounded",
                                       quoted(cells.text(c)), "at most two decimals"});
            }
        } else if (cell.why == NoGlucose::not_a_number || cell.level) {
            none_because(c, "value_not_a_number", quoted(cells.raw(c)),
                         "a glucose value, LOW or HIGH");
        } else if (cell.why == NoGlucose::zero) {
            none_because(c, "no_value", "0", "a glucose value");
        }
    }
}

// The unit of a level: its own, else its row's, else its kind's, else its column's where columns
// differ, else the file's. Empty where the row names another one: which it is can't be guessed by
// the row.
std::optional<GlucoseUnit> RowReader::unit_of(const Reading& reading, std::size_t column,
                                              const WrittenGlucose& level) const {
    const auto believed = [&](GlucoseUnit told) {
        return told == plan_.unit_not_believed ? plan_.unit : told;
    };
    if (level.unit) {
        return believed(*level.unit);
    }
    if (const auto named = reading.cells.filled_of(Role::unit)) {
        const auto told = unit_named(reading.cells.text(*named));
        return told ? std::optional(believed(*told)) : std::nullopt;
    }
    if (reading.meaning && reading.meaning->unit) {
        return believed(*reading.meaning->unit);
    }
    const auto titled = plan_.shape.columns[column].unit;
    return plan_.shape.unit_by_column && titled ? titled : plan_.unit;
}

// A usual time of day is told where anything rests on it. A reading belongs to a moment, but one
// without costs nothing that has its own time beside it.
void RowReader::tell_usual_clock(Reading& reading) {
    ReadRow& row = reading.row;
    const auto owned = std::ranges::count_if(
        row.entries, [](const RowEntry& told) { return told.begin.has_value(); });
    if (row.glucose && !row.clock_told && owned > 0) {
        row.remarks.push_back({row.line, row.glucose->column, Fate::stored, "clock_missing",
                               "a level of glucose and no time of day",
                               "a date and time of day; the level is not kept"});
        row.glucose.reset();
    }
    const bool rests = row.glucose || owned < static_cast<std::ptrdiff_t>(row.entries.size());
    if (reading.usual_clock && rests) {
        row.remarks.insert(row.remarks.begin(), *reading.usual_clock);
    }
}

void RowReader::conclude(Reading& reading) const {
    ReadRow& row = reading.row;
    const auto& columns = reading.glucose_columns;
    const bool lonely = reading.cells.filled_cells() <= 1;
    tell_usual_clock(reading);
    if (row.glucose && !row.clock_told) {  // a reading belongs to a moment
        row.remarks.clear();
        const bool of_clock = plan_.shape.first(Role::clock) == reading.time_column;
        settle(row, Fate::rejected, row.time_column, "clock_missing",
               quoted(reading.cells.raw(reading.time_column)),
               of_clock ? "a time of day, such as 08:15" : "a date and time of day");
    } else if (row.glucose || !row.entries.empty()) {
        row.state = ReadRow::State::data;
        if (reading.no_level) {  // the diary item is kept; that the value was none is told
            reading.no_level->fate = Fate::stored;
            row.remarks.push_back(*reading.no_level);
        }
    } else if (reading.no_level) {
        row.remarks.clear();
        row.note = reading.no_level;
    } else if (row.end_wall) {
        row.remarks.clear();
        settle(row, Fate::rejected, row.time_column, "no_value",
               "a stretch of time and nothing that says of what",
               "what was done, or that it was sleep");
    } else {
        row.remarks.clear();
        settle(row, Fate::rejected,
               columns.empty() ? row.time_column : reading.cells.at(columns.front()), "no_value",
               lonely ? "no value beside the time"
                      : "nothing beside the time in a column that is read",
               columns.empty() ? "a diary item" : "a glucose value or a diary item");
    }
}

}  // namespace tracewright
