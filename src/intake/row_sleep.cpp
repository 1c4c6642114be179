#include "intake/row_sleep.hpp"

#include "intake/own_times.hpp"
#include "intake/plain_text.hpp"
#include "intake/sleep_title.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

// Two to sixteen hours, the middle of them from 23:00 to 07:00. Ours, no source.
bool like_a_night(WallTime from, WallTime to) {
    using namespace std::chrono_literals;
    const auto middle = from + (to - from) / 2;
    const auto clock = middle - std::chrono::floor<std::chrono::days>(middle);
    return to - from >= 2h && to - from <= 16h && (clock >= 23h || clock <= 7h);
}

std::optional<double> hours_in(const EntryWriter& writer, std::size_t c) {
    const auto found = written_number(writer.cells.text(c), writer.plan.decimal_mark);
    const std::string unit = found ? lower_case(found->tail) : "";
    const bool hours = unit.empty() || unit == "h" || unit == "hours" || unit == "std";
    return found && hours ? std::optional{found->value()} : std::nullopt;
}

void add_hours(EntryWriter& writer, std::size_t c) {
    DiaryEntry& entry = writer.add(DiaryKind::sleep).what;
    entry.number = hours_in(writer, c);
    if (entry.number) {
        entry.number_unit = "h";
    } else {
        entry.text = writer.kept_text(c);
    }
}

void tell_unread(EntryWriter& writer) {
    for (const Role role : {Role::sleep_start, Role::sleep_end}) {
        if (const auto c = writer.cells.filled_of(role);
            c && !is_empty_word(writer.cells.text(*c))) {
            writer.row.unread.push_back(*c);
        }
    }
}

// By columns of sleep; false if they don't tell from when to when.
bool add_by_columns(EntryWriter& writer, std::optional<std::size_t> hours) {
    const bool begun_by_row = writer.plan.shape.times_begin_sleep;
    SleptSpan span = slept_span(writer.cells, writer.plan, writer.row);
    const auto told = hours ? hours_in(writer, *hours) : std::nullopt;
    const std::chrono::seconds slept{told ? std::llround(*told * 3600) : 0};
    const bool both = span.end && (span.begin || begun_by_row);
    const bool reckoned = told && !both && (span.end || span.begin || begun_by_row);
    const auto begun = span.begin ? span.begin->wall : writer.row.wall;
    if ((!both && !reckoned) || (both && span.end->wall <= begun)) {
        return false;
    }
    RowEntry& entry = writer.add(DiaryKind::sleep);
    if (both) {
        entry.what.text = writer.all_texts(Role::sleep_hours);
    } else if (span.end) {
        span.begin = OwnTime{span.end->wall - slept, span.end->offset};
        entry.clock_told = false;
    } else {
        span.end = OwnTime{begun + slept, span.begin ? span.begin->offset : std::nullopt};
        entry.clock_told = false;
    }
    entry.begin = span.begin;
    entry.end = span.end;
    return true;
}

}  // namespace

bool span_is_sleep(const EntryWriter& writer) {
    if (!writer.row.end_wall) {
        return false;
    }
    const auto moved = writer.plan.shape.all(Role::movement_text);
    const bool by_hours =
        writer.cells.filled_of(Role::sleep_hours) && !writer.cells.filled_of(Role::movement_text);
    // How long it was says nothing of what it was.
    const bool length_alone = writer.cells.filled_of(Role::minutes) &&
                              !writer.cells.filled_of(Role::movement_text) &&
                              !writer.cells.filled_of(Role::steps) && writer.row.entries.empty();
    const bool of_nights =
        std::ranges::any_of(writer.plan.shape.columns,
                            [](const ColumnGuess& column) { return names_a_night(column.title); });
    const bool night =
        length_alone && (of_nights || like_a_night(writer.row.wall, *writer.row.end_wall));
    return night || by_hours || writer.has(DiaryKind::sleep) ||
           std::ranges::any_of(moved,
                               [&](std::size_t c) { return says_sleep(writer.cells.text(c)); });
}

void add_sleep(EntryWriter& writer) {
    const TableShape& shape = writer.plan.shape;
    const bool columns =
        shape.times_begin_sleep || shape.first(Role::sleep_start) || shape.first(Role::sleep_end);
    const auto hours = writer.taken(Role::sleep_hours);
    if (columns && add_by_columns(writer, hours)) {
        return;
    }
    if (columns) {
        tell_unread(writer);
    }
    if (span_is_sleep(writer)) {
        if (!writer.has(DiaryKind::sleep)) {
            writer.add(DiaryKind::sleep).what.text = writer.all_texts(Role::sleep_hours);
        }
    } else if (hours) {
        add_hours(writer, *hours);
    }
}

void add_untold_night(EntryWriter& writer) {
    const ReadRow& row = writer.row;
    const bool told = row.glucose || std::ranges::any_of(row.entries, [](const RowEntry& one) {
                          return one.what.kind != DiaryKind::note;
                      });
    if (row.end_wall && !told && like_a_night(row.wall, *row.end_wall)) {
        writer.add(DiaryKind::sleep);
    }
}

}  // namespace tracewright
