#include "intake/bring_in.hpp"

#include "intake/file_evidence.hpp"
#include "intake/levels_apart.hpp"
#include "intake/plain_readings.hpp"
#include "intake/plain_scan.hpp"
#include "intake/reading_plan.hpp"
#include "intake/row_cells.hpp"
#include "intake/row_reader.hpp"
#include "intake/row_sensor.hpp"
#include "intake/row_store.hpp"
#include "intake/shown_sample.hpp"
#include "intake/table_outline.hpp"
#include "intake/table_shape.hpp"
#include "intake/unread_columns.hpp"
#include "intake/unread_words.hpp"
#include "intake/workbook_sheets.hpp"
#include "trace/held_levels.hpp"
#include "trace/wear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <tuple>

namespace tracewright {

namespace {

void tell_source(Intake& intake, const IntakeOptions& options) {
    const SourceFacts& facts = intake.facts;
    if (!facts.encoding.empty()) {
        const auto colon = facts.encoding_sure.find(':');
        const std::string sure = facts.encoding_sure.substr(0, colon);
        const std::string why =
            colon == std::string::npos ? "" : facts.encoding_sure.substr(colon + 2);
        intake.guesses.push_back({"encoding", facts.encoding, sure, why});
        const std::string delimiter =
            facts.dialect.delimiter == '\t' ? "TAB" : std::string(1, facts.dialect.delimiter);
        if (options.source.delimiter) {
            intake.guesses.push_back({"delimiter", delimiter, "asked for by option", ""});
        } else {
            intake.guesses.push_back(
                {"delimiter", delimiter, facts.dialect.named_by_file ? "certain" : "likely",
                 facts.dialect.named_by_file ? "the first line names it"
                                             : "it cuts the lines into the most alike rows"});
        }
    } else {
        intake.guesses.push_back({"sheet", facts.sheet, "certain", "read from a " + facts.kind});
    }
}

void tell_shape(Intake& intake, const TableShape& shape) {
    intake.guesses.push_back(
        {"header", shape.header_line ? "line " + std::to_string(*shape.header_line) : "none",
         "likely",
         shape.header_line
             ? fmt::format("titles above data that begin on line {}; {} title rows before",
                           shape.first_data_line, shape.preamble_rows)
             : "data begin at once"});
    for (std::size_t c = 0; c < shape.columns.size(); ++c) {
        const ColumnGuess& column = shape.columns[c];
        std::string unit = column.unit ? name_of(*column.unit) : "";
        if (column.role == Role::glucose && (unit.empty() || !shape.unit_by_column)) {
            unit = name_of(intake.unit);
        }
        intake.columns.push_back(
            {static_cast<std::uint32_t>(c + 1), column.title, name_of(column.role), unit});
    }
}

// Numbers under no title are not read, nor refused with their row: at least they are told.
void tell_untitled(Intake& intake, const TableShape& shape) {
    for (std::size_t c = 0; c < shape.columns.size(); ++c) {
        if (shape.columns[c].numbers_untitled) {
            intake.ledger.remark({0, 0, Fate::stored, "column_without_a_title",
                                  fmt::format("numbers in column {}, which has no title", c + 1),
                                  "a title: what stands there is not read"});
        }
    }
}

// A column of offsets or zones that says nothing of the time beside it, or of some rows' times. One
// that names the zone asked for says what is known.
void tell_unread_offsets(Intake& intake, const TableShape& shape, const FileEvidence& evidence) {
    for (const auto& [c, seen] : evidence.offsets) {
        for (const auto& [text, unread] : seen.unread) {
            if (text != intake.zone.name() && !(text.empty() && seen.read == 0)) {
                intake.ledger.remark(
                    {unread.first_line, unread.first_column, Fate::stored, "offset_not_applied",
                     fmt::format("{} in column '{}', on {} rows",
                                 text.empty() ? "nothing" : quoted(text), shape.columns[c].title,
                                 unread.rows),
                     "a distance from UTC, such as +01:00: these times are read as without it"});
            }
        }
    }
}

// A sheet that nobody reads is told by its name, and named where this one is no table.
void tell_other_sheets(Intake& intake) {
    for (const OtherSheet& sheet : intake.facts.other_sheets) {
        if (sheet.rows > 0) {
            tell_sheet_not_read(
                intake, sheet,
                fmt::format("its name, to be read: this is '{}'", intake.facts.sheet));
        }
    }
    if (!intake.ledger.notes().empty() && intake.error &&
        intake.error->kind != FileErrorKind::needs_answer) {
        intake.error->found += fmt::format(" in sheet '{}' (there are others)", intake.facts.sheet);
    }
}

FileError no_table(const Intake& intake, FileErrorKind kind, std::string found,
                   std::string expected, std::string what_to_do) {
    return {kind, intake.file, 0, 0, std::move(found), std::move(expected), std::move(what_to_do)};
}

// An option that names no column of this file. Given for several, it is not meant for a diary.
std::optional<FileError> no_such_column(const Intake& intake, const TableShape& shape,
                                        const IntakeOptions& options) {
    if (shape.has_diary && !shape.has_glucose) {
        return std::nullopt;
    }
    std::string titles;
    for (std::size_t c = 0; c < shape.columns.size(); ++c) {
        const std::string& title = shape.columns[c].title;
        titles += (c == 0 ? "" : ", ") + std::to_string(c + 1) +
                  (title.empty() ? "" : " ('" + title + "')");
    }
    const auto named = [&](const std::string& asked) {
        bool any = false;
        for (std::size_t c = 0; c < shape.columns.size(); ++c) {
            any = any || names_column(asked, shape.columns[c].title, c);
        }
        return any;
    };
    for (const auto& [asked, kind, option] :
         {std::tuple(options.time_column, FileErrorKind::no_time_column, "--time-column"),
          std::tuple(options.glucose_column, FileErrorKind::no_value_column, "--glucose-column")}) {
        if (asked && !named(*asked)) {
            return no_table(intake, kind, "no column '" + *asked + "'",
                            "one of this file's: " + titles, option);
        }
    }
    return std::nullopt;
}

void read_rows(RowSource& source, const ReadingPlan& plan, const IntakeOptions& options,
               Intake& intake) {
    RowReader reader(plan);
    RowStore store(options, plan.sensors_certain);
    RowSensor sensor(plan.sensor_column);
    UnreadColumns unread;
    source.rewind();
    Row row;
    while (source.next(row)) {
        ReadRow read = reader.read(row);
        read.sensor = sensor.of(row);
        unread.see(read);
        keep_sample(intake, read);
        store.add(std::move(read));
    }
    store.settle(intake);
    unread.tell(plan.shape, intake.ledger);
}

// What the rows said of a clock whose zone nobody told.
void tell_distance_from_utc(Intake& intake) {
    const auto told =
        std::ranges::find(intake.guesses, std::string_view("time zone"), &Guess::what);
    if (told == intake.guesses.end() || (!intake.in_utc && !intake.stands_at)) {
        return;
    }
    told->found = intake.in_utc ? "UTC" : Zone::fixed(*intake.stands_at).name();
    told->sure = intake.in_utc ? "not told" : "likely";
    told->why = intake.in_utc
                    ? "the rows tell UTC: days and nights are UTC's until --zone tells the client's"
                    : "the rows' first distance from UTC holds for all; --zone tells a zone whose "
                      "clock changes";
}

void tell_zone(Intake& intake, const IntakeOptions& options) {
    const Zone& zone = options.zones.zone_at(Instant{});
    intake.zone = zone;
    intake.guesses.push_back({"time zone", zone.name(),
                              zone.is_floating() ? "not told" : "asked for by option",
                              zone.is_floating() ? "times stand as written; --zone tells it" : ""});
}

// The fast way: true if the whole file was plain and is in `intake`.
bool take_plain(const RowSource& source, const TableShape& shape, const IntakeOptions& options,
                Intake& intake) {
    const bool asked = options.person || options.decimal_mark.value_or('.') != '.' ||
                       options.header_line ||
                       options.date_order.value_or(DateOrder::year_first) != DateOrder::year_first;
    if (asked || source.facts().dialect.named_by_file) {
        return false;
    }
    auto rows = plain_rows(source.text(), shape, source.facts().dialect.delimiter);
    if (!rows) {
        return false;
    }
    Intake told = intake;
    const ReadingPlan plan = reading_plan(shape, evidence_of(*rows), options, told);
    if (!told.questions.empty()) {
        return false;
    }
    std::vector<ReadRow> sample;
    for (std::size_t i = 0; i < std::min(rows_shown, rows->rows.size()); ++i) {
        ReadRow& row = sample.emplace_back();
        row.state = ReadRow::State::data;
        row.line = shape.first_data_line + static_cast<std::uint32_t>(i);
        row.wall = rows->wall(i);
        row.glucose = RowGlucose{rows->rows[i].hundredths(), Limit::none, plan.unit, 0};
    }
    if (!made_readings(*rows, plan, options)) {
        return false;
    }
    if (shape.offset_by_title) {
        for (std::size_t i = 0; i < sample.size(); ++i) {
            sample[i].instant = rows->rows[i].at;
        }
    }
    intake = std::move(told);
    tell_shape(intake, shape);
    tell_zone(intake, options);
    for (const ReadRow& row : sample) {
        keep_sample(intake, row);
    }
    intake.ledger.count(Fate::not_data, rows->rows_before + rows->blank_rows);
    intake.ledger.count(Fate::stored, rows->rows.size());
    intake.readings = std::move(rows->rows);
    tell_untitled(intake, shape);
    return true;
}

void read_source(RowSource& source, const IntakeOptions& options, Intake& intake) {
    tell_source(intake, options);
    const std::vector<SampleRow> sample = sample_of(source);
    const TableShape shape =
        table_shape(sample, source.facts(),
                    {options.header_line, options.time_column, options.glucose_column,
                     options.measured_by == MeasuredBy::meter});
    intake.error = no_such_column(intake, shape, options);
    if (intake.error) {
        return;
    }
    if (!shape.has_time) {
        if (const auto titles = titles_without_data(sample, source.facts())) {
            intake.error =
                no_table(intake, FileErrorKind::empty, "titles and no row of data below them",
                         "rows with a date and time beside a value", "");
            intake.error->line = *titles;
            intake.ledger.count(Fate::not_data, sample.size());
            return;
        }
        intake.error =
            no_table(intake, FileErrorKind::no_time_column, "no column of times",
                     "a column of dates and times beside values",
                     "name it with --time-column, or its line of titles with --header-line");
        return;
    }
    if (!shape.has_glucose && !shape.has_diary) {
        intake.error = no_table(
            intake, FileErrorKind::no_value_column, "times without glucose or diary beside",
            "a glucose column or diary columns", "name it with --glucose-column");
        tell_shape(intake, shape);
        return;
    }
    if (options.fast && take_plain(source, shape, options, intake)) {
        return;
    }
    const FileEvidence evidence = evidence_of(source, shape);
    const ReadingPlan plan = reading_plan(shape, evidence, options, intake);
    tell_shape(intake, plan.shape);
    tell_zone(intake, options);
    if (!intake.questions.empty()) {
        intake.ledger.count(Fate::question, evidence.data_rows);
        intake.error =
            no_table(intake, FileErrorKind::needs_answer, intake.questions.front().sentence,
                     "an answer before anything is stored", intake.questions.front().option);
        return;
    }
    read_rows(source, plan, options, intake);
    tell_distance_from_utc(intake);
    tell_untitled(intake, plan.shape);
    tell_unread_offsets(intake, plan.shape, evidence);
    tell_unread_words(intake.ledger);
    if (!intake.questions.empty()) {
        intake.error =
            no_table(intake, FileErrorKind::needs_answer, intake.questions.front().sentence,
                     "an answer before anything is stored", intake.questions.front().option);
    }
}

Intake read_table(RowSource& source, const std::string& name, const IntakeOptions& options) {
    Intake intake;
    intake.file = name;
    intake.facts = source.facts();
    read_source(source, options, intake);
    return intake;
}

bool titled_as_a_meters(const Intake& intake) {
    return std::ranges::any_of(intake.columns, [](const ColumnRole& column) {
        return column.role == name_of(Role::glucose) && names_a_meter(column.title);
    });
}

// Nothing is stored before it is answered.
Intake asking_who_measured(Intake read, std::chrono::seconds step) {
    read.questions.push_back(
        {"measured_by",
         "The levels lie about " + step_words(step) +
             " apart. Were they measured by a sensor, or with a meter, as finger-pricks?",
         "a meter", "--measured-by"});
    const std::uint64_t rows = read.ledger.read();
    const std::uint64_t not_data = read.ledger.with(Fate::not_data);
    read.ledger = {};
    read.ledger.count(Fate::question, rows);
    read.ledger.count(Fate::not_data, not_data);
    read.readings.clear();
    read.other_sensors.clear();
    read.held.clear();
    read.diary.clear();
    read.error = no_table(read, FileErrorKind::needs_answer, read.questions.front().sentence,
                          "an answer before anything is stored", read.questions.front().option);
    return read;
}

// Levels hours apart are no sensor's: what "the sensor saw" would be said of a few finger-pricks.
Intake settled_by_whom(Intake read, RowSource& source, const IntakeOptions& options) {
    const auto step = read.error || options.measured_by ? std::nullopt : levels_apart(read);
    if (!step) {
        return read;
    }
    const bool titled = titled_as_a_meters(read);
    const bool meter_apart = std::ranges::any_of(read.columns, [](const ColumnRole& column) {
        return column.role == name_of(Role::finger_prick);
    });
    if (titled || (!read.diary.empty() && !meter_apart)) {
        IntakeOptions by_meter = options;
        by_meter.measured_by = MeasuredBy::meter;
        source.rewind();
        Intake again = read_table(source, read.file, by_meter);
        again.guesses.push_back({"measured by", "a meter", titled ? "certain" : "likely",
                                 "the levels lie about " + step_words(*step) + " apart, " +
                                     (titled ? "and the title says so" : "beside a diary")});
        return again;
    }
    if (options.levels_apart == LevelsApart::ask) {
        return asking_who_measured(std::move(read), *step);
    }
    read.guesses.push_back({"measured by", "a sensor", "not told",
                            "the levels lie about " + step_words(*step) +
                                " apart: if a meter showed them, --measured-by meter"});
    return read;
}

Intake from_source(tl::expected<std::unique_ptr<RowSource>, FileError> opened,
                   const std::string& name, const IntakeOptions& options) {
    if (!opened) {
        Intake intake;
        intake.file = name;
        intake.error = opened.error();
        return intake;
    }
    Intake intake = settled_by_whom(read_table(**opened, name, options), **opened, options);
    if (options.tell_other_sheets) {
        tell_other_sheets(intake);
    }
    return intake;
}

}  // namespace

std::size_t Intake::count_of_readings() const {
    std::size_t count = readings.size();
    for (const auto& sensor : other_sensors) {
        count += sensor.size();
    }
    return count;
}

std::vector<Wear> wears_in(Intake& intake, const std::string& source,
                           std::chrono::seconds new_wear_after) {
    std::vector<Wear> wears = wears_of(std::move(intake.readings), source, new_wear_after);
    for (auto& sensor : intake.other_sensors) {
        std::ranges::move(wears_of(std::move(sensor), source, new_wear_after),
                          std::back_inserter(wears));
    }
    std::ranges::stable_sort(wears, {}, &Wear::start);
    std::vector<HeldLevel> held;
    for (const HeldReading& one : intake.held) {
        held.push_back({one.at, one.value});
    }
    give_held(wears, held);
    return wears;
}

Intake bring_in(const std::string& path, const IntakeOptions& options) {
    return from_source(open_source(path, options.source),
                       options.called.empty() ? path : options.called, options);
}

Intake bring_in_bytes(std::string bytes, const std::string& name, const IntakeOptions& options) {
    return from_source(open_source_bytes(std::move(bytes), name, options.source), name, options);
}

}  // namespace tracewright
