#include "intake/bring_in.hpp"

#include "intake/column_guesses.hpp"
#include "intake/plain_scan.hpp"
#include "intake/plain_text.hpp"
#include "intake/row_reader.hpp"
#include "intake/row_store.hpp"
#include "intake/table_shape.hpp"
#include "intake/wall_order.hpp"
#include "trace/wear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace tracewright {

namespace {

constexpr std::size_t sample_shown = 10;
constexpr Instant rows_begin{std::chrono::sys_days{std::chrono::year{2000} / 1 / 1}};
constexpr Instant rows_end{std::chrono::sys_days{std::chrono::year{2200} / 1 / 1}};

// Everything the columns of a file say before its rows are read.
struct Evidence {
    DecimalMarkEvidence mark;
    UnitEvidence unit;
    DateOrderEvidence order;
    TwelveHourEvidence twelve_hour;
    std::set<std::string> persons;
    std::uint64_t data_rows = 0;
    bool unit_column_explains = false;
    std::string mark_sample;
    std::string date_sample;
    std::uint32_t date_sample_line = 0;
};

bool is_number_role(Role role) {
    return role == Role::glucose || role == Role::finger_prick || role == Role::value ||
           (role >= Role::carbohydrate && role <= Role::energy);
}

Evidence evidence_of(RowSource& source, const TableShape& shape) {
    Evidence evidence;
    const auto time_column = shape.first(Role::time);
    const auto date_column = time_column ? time_column : shape.first(Role::date);
    const auto clock_column = shape.first(Role::clock);
    const auto glucose = shape.all(Role::glucose);
    const auto person = shape.first(Role::person);
    const auto unit_column = shape.first(Role::unit);
    const auto kind_column = shape.first(Role::kind);
    source.rewind();
    Row row;
    while (source.next(row)) {
        const bool header = shape.header_line && row.line <= *shape.header_line;
        if (row.line < shape.first_data_line || header || row.fault != RowFault::none ||
            row.cells.empty()) {
            continue;
        }
        ++evidence.data_rows;
        for (std::size_t c = 0; c < row.cells.size() && c < shape.columns.size(); ++c) {
            if (is_number_role(shape.columns[c].role) && row.cells[c].form != CellForm::number) {
                const std::string text = plain(row.cells[c].text);
                evidence.mark.see(text);
                if (evidence.mark_sample.empty() && mark_evidence(text) != MarkEvidence::none) {
                    evidence.mark_sample = text;
                }
            }
        }
        if (date_column && *date_column < row.cells.size()) {
            const std::string text = plain(row.cells[*date_column].text);
            if (auto time = written_time(text)) {
                if (!time_column && clock_column && *clock_column < row.cells.size()) {
                    if (const auto clock = written_time(plain(row.cells[*clock_column].text));
                        clock && clock->has_clock) {
                        time->clock = clock->clock;
                        time->has_clock = true;
                        time->twelve_hour = clock->twelve_hour;
                    }
                }
                evidence.order.see(*time);
                evidence.twelve_hour.see(*time);
                if (evidence.date_sample.empty()) {
                    evidence.date_sample = text;
                    evidence.date_sample_line = row.line;
                }
            }
        }
        if (person && *person < row.cells.size() && evidence.persons.size() < 3) {
            if (const std::string who = plain(row.cells[*person].text); !who.empty()) {
                evidence.persons.insert(who);
            }
        }
        evidence.unit_column_explains =
            evidence.unit_column_explains || (unit_column && *unit_column < row.cells.size() &&
                                              unit_named(row.cells[*unit_column].text));
        std::vector<std::size_t> levels = glucose;
        if (kind_column && *kind_column < row.cells.size()) {
            const auto meaning = kind_meaning(plain(row.cells[*kind_column].text));
            const auto value = shape.first(Role::value);
            if (meaning && meaning->glucose && value) {
                levels.push_back(*value);
                evidence.unit_column_explains =
                    evidence.unit_column_explains || meaning->unit.has_value();
            }
        }
        for (const std::size_t c : levels) {
            if (c >= row.cells.size()) {
                continue;
            }
            const std::string text = plain(row.cells[c].text);
            const char mark =
                text.find(',') != std::string::npos && text.find('.') == std::string::npos ? ','
                                                                                           : '.';
            const GlucoseCell cell = written_glucose(text, mark);
            if (cell.level && cell.level->limit == Limit::none && !cell.level->unit) {
                evidence.unit.see(cell.level->hundredths);
            }
        }
    }
    source.rewind();
    return evidence;
}

// Makes the plan of one file, telling each guess and asking where nothing decides.
class Planner {
  public:
    Planner(const IntakeOptions& options, Intake& intake) : options_(options), intake_(intake) {}

    ReadingPlan plan(TableShape shape, const Evidence& evidence) {
        plan_.shape = std::move(shape);
        plan_.serial_1904 = intake_.facts.serial_1904;
        plan_.person = options_.person;
        decimal_mark(evidence);
        date_order(evidence);
        unit(evidence);
        twelve_hour(evidence);
        persons(evidence);
        return plan_;
    }

  private:
    void guess(std::string what, std::string found, std::string sure, std::string why) {
        intake_.guesses.push_back(
            {std::move(what), std::move(found), std::move(sure), std::move(why)});
    }
    void ask(std::string code, std::string sentence, std::string ours, std::string option) {
        intake_.questions.push_back(
            {std::move(code), std::move(sentence), std::move(ours), std::move(option)});
    }

    void decimal_mark(const Evidence& evidence) {
        if (options_.decimal_mark) {
            plan_.decimal_mark = *options_.decimal_mark;
            guess("decimal mark", std::string(1, plan_.decimal_mark), "asked for by option", "");
            return;
        }
        plan_.decimal_mark = evidence.mark.mark();
        if (evidence.mark.contradictory()) {
            ask("decimal_mark",
                "Numbers are written with a decimal point and with a decimal comma in one file, "
                "such as '" +
                    evidence.mark_sample + "'. Which one is it?",
                "", "--decimal");
        } else if (evidence.mark.lone()) {
            ask("decimal_mark",
                "Is '" + evidence.mark_sample +
                    "' a number with three decimals, or a thousand and more?",
                "", "--decimal");
        } else if (evidence.mark.any()) {
            guess("decimal mark", std::string(1, plan_.decimal_mark), "certain",
                  "as in '" + evidence.mark_sample + "'");
        }
    }

    void date_order(const Evidence& evidence) {
        static const std::map<DateOrder, const char*> words = {
            {DateOrder::year_first, "year first"},
            {DateOrder::day_first, "day first"},
            {DateOrder::month_first, "month first"}};
        if (options_.date_order) {
            plan_.date_order = *options_.date_order;
            guess("date order", words.at(plan_.date_order), "asked for by option", "");
            return;
        }
        const auto answer = evidence.order.answer();
        if (answer.order) {
            plan_.date_order = *answer.order;
            guess("date order", words.at(plan_.date_order), answer.certain ? "certain" : "likely",
                  answer.why);
            return;
        }
        plan_.date_order = DateOrder::day_first;
        ask("date_order",
            "Is the first number of '" + evidence.date_sample + "' (line " +
                std::to_string(evidence.date_sample_line) + ") the day or the month? " +
                (answer.contradictory ? "Numbers above 12 stand in both places."
                                      : "Every date fits both."),
            answer.contradictory ? "" : "day first", "--date-order");
    }

    std::optional<GlucoseUnit> titled_unit() const {
        for (const ColumnGuess& column : plan_.shape.columns) {
            if (column.role == Role::glucose && column.unit) {
                return column.unit;
            }
        }
        return std::nullopt;
    }

    void unit(const Evidence& evidence) {
        const auto by_title = titled_unit();
        const auto by_values = evidence.unit.by_median();
        const std::string median = fmt::format("median {:.0f}", evidence.unit.median());
        if (options_.unit) {
            plan_.unit = *options_.unit;
            guess("unit", name_of(plan_.unit), "asked for by option", "");
        } else if (evidence.unit.seen() == 0) {
            plan_.unit = by_title.value_or(finger_prick_unit().value_or(GlucoseUnit::mg_per_dl));
        } else if (evidence.unit.mixed() && !evidence.unit_column_explains) {
            plan_.unit = by_title.value_or(GlucoseUnit::mg_per_dl);
            ask("unit",
                "The glucose column holds numbers that read as mmol/L beside numbers that read as "
                "mg/dL, and "
                "nothing in the rows says which is which. What unit is it in?",
                "", "--unit");
        } else if (by_title && by_values && *by_title != *by_values) {
            plan_.unit = *by_values;
            ask("unit",
                std::string("The title says ") + name_of(*by_title) + ", the numbers (" + median +
                    ") read as " + name_of(*by_values) + ". Which is right?",
                name_of(*by_values), "--unit");
        } else if (by_title) {
            plan_.unit = *by_title;
            guess("unit", name_of(plan_.unit), "certain", "the column's title; " + median);
        } else if (evidence.unit_column_explains) {
            plan_.unit = by_values.value_or(GlucoseUnit::mg_per_dl);
            guess("unit", "row by row", "certain", "the rows name it");
        } else if (by_values) {
            plan_.unit = *by_values;
            guess("unit", name_of(plan_.unit), "likely", "from the numbers alone: " + median);
        } else {
            ask("unit",
                "Neither title nor numbers (" + median + ") tell the unit of glucose. What is it?",
                "", "--unit");
        }
        intake_.unit = plan_.unit;
    }

    std::optional<GlucoseUnit> finger_prick_unit() const {
        for (const ColumnGuess& column : plan_.shape.columns) {
            if (column.role == Role::finger_prick && column.unit) {
                return column.unit;
            }
        }
        return std::nullopt;
    }

    void twelve_hour(const Evidence& evidence) {
        if (evidence.twelve_hour.suspicious()) {
            ask("twelve_hour_clock",
                "No hour is above 12 and times run backwards within a day, as on '" +
                    evidence.date_sample +
                    "': AM and PM seem to be missing. Can the file be written with a 24-hour "
                    "clock?",
                "", "a new file");
        }
    }

    void persons(const Evidence& evidence) {
        if (evidence.persons.size() > 1 && !options_.person) {
            ask("person", "The file holds rows of more than one person. Whose are to be taken?", "",
                "--person");
        }
    }

    const IntakeOptions& options_;
    Intake& intake_;
    ReadingPlan plan_;
};

void tell_source(Intake& intake) {
    const SourceFacts& facts = intake.facts;
    if (!facts.encoding.empty()) {
        const auto colon = facts.encoding_sure.find(':');
        const std::string sure = facts.encoding_sure.substr(0, colon);
        const std::string why =
            colon == std::string::npos ? "" : facts.encoding_sure.substr(colon + 2);
        intake.guesses.push_back({"encoding", facts.encoding, sure, why});
        const std::string delimiter =
            facts.dialect.delimiter == '\t' ? "TAB" : std::string(1, facts.dialect.delimiter);
        intake.guesses.push_back(
            {"delimiter", delimiter, facts.dialect.named_by_file ? "certain" : "likely",
             facts.dialect.named_by_file ? "the first line names it"
                                         : "it cuts the lines into the most alike rows"});
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
        if (column.role == Role::glucose && unit.empty()) {
            unit = name_of(intake.unit);
        }
        intake.columns.push_back(
            {static_cast<std::uint32_t>(c + 1), column.title, name_of(column.role), unit});
    }
}

FileError no_table(const Intake& intake, FileErrorKind kind, std::string found,
                   std::string expected, std::string what_to_do) {
    return {kind, intake.file, 0, 0, std::move(found), std::move(expected), std::move(what_to_do)};
}

// The first rows as they were understood, for the eye.
void keep_sample(Intake& intake, const ReadRow& row) {
    if (intake.sample.size() >= sample_shown || row.state != ReadRow::State::data) {
        return;
    }
    std::vector<std::string> cells{fmt::format("line {}", row.line)};
    if (row.instant) {
        const auto day = std::chrono::floor<std::chrono::days>(*row.instant);
        const std::chrono::year_month_day ymd{day};
        const std::chrono::hh_mm_ss time{*row.instant - day};
        cells.push_back(
            fmt::format("{:04}-{:02}-{:02} {:02}:{:02} UTC", static_cast<int>(ymd.year()),
                        static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                        time.hours().count(), time.minutes().count()));
    } else {
        const auto day = std::chrono::floor<std::chrono::days>(row.wall);
        const std::chrono::year_month_day ymd{day};
        const std::chrono::hh_mm_ss time{row.wall - day};
        cells.push_back(fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", static_cast<int>(ymd.year()),
                                    static_cast<unsigned>(ymd.month()),
                                    static_cast<unsigned>(ymd.day()), time.hours().count(),
                                    time.minutes().count()));
    }
    if (row.glucose) {
        const double level = static_cast<double>(row.glucose->hundredths) / 100;
        cells.push_back(row.glucose->limit == Limit::below ? "LOW"
                        : row.glucose->limit == Limit::above
                            ? "HIGH"
                            : fmt::format("{} {}", level, name_of(row.glucose->unit)));
    }
    for (const DiaryEntry& entry : row.entries) {
        cells.push_back(std::string(name_of(entry.kind)) +
                        (entry.text.empty() ? "" : ": " + entry.text));
    }
    intake.sample.push_back(std::move(cells));
}

void read_rows(RowSource& source, const ReadingPlan& plan, const IntakeOptions& options,
               Intake& intake) {
    RowReader reader(plan);
    RowStore store(options);
    source.rewind();
    Row row;
    while (source.next(row)) {
        ReadRow read = reader.read(row);
        keep_sample(intake, read);
        store.add(std::move(read));
    }
    store.settle(intake);
}

// What each row's clock showed.
std::vector<WallTime> walls_of(const PlainRows& rows) {
    std::vector<WallTime> walls;
    walls.reserve(rows.rows.size());
    for (std::size_t i = 0; i < rows.rows.size(); ++i) {
        walls.push_back(rows.wall(i));
    }
    return walls;
}

// Moves wall times to moments in place; false at the first that needs the careful way: a time of
// the night of a clock change has its remark.
bool placed_plainly(PlainRows& plain, const ZoneHistory& zones) {
    const bool rules =
        zones.zones_in({rows_begin, rows_end}).size() > 1 || zones.zone_at(rows_begin).has_rules();
    if (!rules) {
        const std::chrono::seconds offset = zones.zone_at(rows_begin).offset_at(rows_begin);
        for (Reading& reading : plain.rows) {
            reading.at -= offset;
        }
        return true;
    }
    if (clock_changes_between(plain.wall(0), plain.wall(plain.rows.size() - 1), zones) &&
        clock_did_not_change(walls_of(plain), zones)) {
        return false;
    }
    WallResolver resolver(zones);
    for (std::size_t i = 0; i < plain.rows.size(); ++i) {
        const WallResolution found = resolver.at(plain.wall(i));
        if (found.kind != WallResolution::Kind::unique) {
            return false;
        }
        plain.rows[i].at = found.first;
    }
    return true;
}

// The plain rows made readings in place; false if any of them needs the careful way.
bool made_readings(PlainRows& plain, GlucoseUnit unit, const IntakeOptions& options) {
    std::vector<Reading>& rows = plain.rows;
    const bool mg = unit == GlucoseUnit::mg_per_dl;
    const std::int32_t least = mg ? 2000 : 110;
    const std::int32_t most = mg ? 60000 : 3330;
    // Implausible values have their remark; so have rows repeated or out of order.
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::int32_t level = rows[i].hundredths();
        if (level < least || level > most || (i > 0 && rows[i].at <= rows[i - 1].at)) {
            return false;
        }
    }
    if (rows.empty() || !placed_plainly(plain, options.zones)) {
        return false;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i > 0 && rows[i].at <= rows[i - 1].at) {
            return false;
        }
        rows[i] = Reading{rows[i].at, Glucose{rows[i].hundredths(), unit}, std::chrono::seconds{1}};
    }
    const bool too_late = options.as_of && rows.back().at > *options.as_of;
    if (too_late || rows.front().at < rows_begin) {
        return false;
    }
    set_intervals(rows);
    return true;
}

// What the plain rows say of the columns, as the careful way would have gathered it.
Evidence evidence_of(const PlainRows& rows) {
    Evidence evidence;
    evidence.unit = rows.unit;
    evidence.data_rows = rows.rows.size();
    evidence.date_sample = rows.first_time;
    if (!rows.point_sample.empty()) {
        evidence.mark.see(rows.point_sample);
        evidence.mark_sample = rows.point_sample;
    }
    if (const auto time = written_time(rows.first_time)) {
        evidence.order.see(*time);
    }
    return evidence;
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
    const ReadingPlan plan = Planner(options, told).plan(shape, evidence_of(*rows));
    if (!told.questions.empty()) {
        return false;
    }
    std::vector<ReadRow> sample;
    for (std::size_t i = 0; i < std::min(sample_shown, rows->rows.size()); ++i) {
        ReadRow& row = sample.emplace_back();
        row.state = ReadRow::State::data;
        row.line = shape.first_data_line + static_cast<std::uint32_t>(i);
        row.wall = rows->wall(i);
        row.glucose = RowGlucose{rows->rows[i].hundredths(), Limit::none, plan.unit, 0};
    }
    if (!made_readings(*rows, plan.unit, options)) {
        return false;
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
    return true;
}

Intake from_source(tl::expected<std::unique_ptr<RowSource>, FileError> opened,
                   const std::string& name, const IntakeOptions& options) {
    Intake intake;
    intake.file = name;
    if (!opened) {
        intake.error = opened.error();
        return intake;
    }
    RowSource& source = **opened;
    intake.facts = source.facts();
    tell_source(intake);
    const TableShape shape =
        table_shape(sample_of(source), source.facts(),
                    {options.header_line, options.time_column, options.glucose_column});
    if (!shape.has_time) {
        intake.error =
            no_table(intake, FileErrorKind::no_time_column, "no column of times",
                     "a column of dates and times beside values",
                     "name it with --time-column, or its line of titles with --header-line");
        return intake;
    }
    if (!shape.has_glucose && !shape.has_diary) {
        intake.error = no_table(
            intake, FileErrorKind::no_value_column, "times without glucose or diary beside",
            "a glucose column or diary columns", "name it with --glucose-column");
        tell_shape(intake, shape);
        return intake;
    }
    if (options.fast && take_plain(source, shape, options, intake)) {
        return intake;
    }
    const Evidence evidence = evidence_of(source, shape);
    const ReadingPlan plan = Planner(options, intake).plan(shape, evidence);
    tell_shape(intake, shape);
    tell_zone(intake, options);
    if (!intake.questions.empty()) {
        intake.ledger.count(Fate::question, evidence.data_rows);
        intake.error =
            no_table(intake, FileErrorKind::needs_answer, intake.questions.front().sentence,
                     "an answer before anything is stored", intake.questions.front().option);
        return intake;
    }
    read_rows(source, plan, options, intake);
    if (!intake.questions.empty()) {
        intake.error =
            no_table(intake, FileErrorKind::needs_answer, intake.questions.front().sentence,
                     "an answer before anything is stored", intake.questions.front().option);
    }
    return intake;
}

}  // namespace

Intake bring_in(const std::string& path, const IntakeOptions& options) {
    return from_source(open_source(path, options.source), path, options);
}

Intake bring_in_bytes(std::string bytes, const std::string& name, const IntakeOptions& options) {
    return from_source(open_source_bytes(std::move(bytes), name, options.source), name, options);
}

}  // namespace tracewright
