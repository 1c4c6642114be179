#include "cli/look_command.hpp"

#include "cli/json_text.hpp"
#include "intake/workbook_sheets.hpp"

#include <fmt/format.h>

#include <map>
#include <ostream>

namespace tracewright {

namespace {

// Notes of one kind are shown up to this many; --json has them all.
constexpr std::size_t notes_shown = 5;

void print_guesses(const Intake& intake, std::ostream& out) {
    for (const Guess& guess : intake.guesses) {
        out << fmt::format("  {:<13} {}", guess.what, guess.found);
        out << "  (" << guess.sure << (guess.why.empty() ? "" : ": " + guess.why) << ")\n";
    }
    out << "  columns\n";
    for (const ColumnRole& column : intake.columns) {
        const std::string title = column.title.empty() ? "(no title)" : "'" + column.title + "'";
        out << fmt::format("    {:>2}  {} -> {}{}\n", column.column, title, column.role,
                           column.unit.empty() ? "" : ", " + column.unit);
    }
}

void print_sample(const Intake& intake, std::ostream& out) {
    if (intake.sample.empty()) {
        return;
    }
    out << "  first rows as understood\n";
    for (const auto& row : intake.sample) {
        out << "   ";
        for (const std::string& cell : row) {
            std::string flat = cell;
            for (char& c : flat) {
                c = c == '\n' || c == '\r' ? ' ' : c;
            }
            out << " " << flat << (&cell == &row.back() ? "" : " |");
        }
        out << "\n";
    }
}

void print_rows(const Intake& intake, std::ostream& out) {
    const Ledger& ledger = intake.ledger;
    out << fmt::format(
        "  rows read {} = stored {} + duplicate {} + conflict {} + rejected {}; not data {}",
        ledger.read(), ledger.with(Fate::stored), ledger.with(Fate::duplicate),
        ledger.with(Fate::conflict), ledger.with(Fate::rejected), ledger.with(Fate::not_data));
    if (ledger.with(Fate::question) > 0) {
        out << fmt::format("; waiting for an answer {}", ledger.with(Fate::question));
    }
    out << fmt::format("\n  readings {}, diary entries {}\n", intake.count_of_readings(),
                       intake.diary.size());
    std::map<std::string, std::size_t> shown;
    for (const RowNote& note : ledger.notes()) {
        if (++shown[note.code] <= notes_shown) {
            const std::string place =
                note.line > 0 ? fmt::format("{}:{}:{}", intake.file, note.line, note.column)
                              : intake.file;
            const std::string told =
                note.fate == Fate::stored
                    ? fmt::format("noted: {}; {}", note.found, note.expected)
                    : fmt::format("{}: found {}, expected {}", name_of(note.fate), note.found,
                                  note.expected);
            out << fmt::format("    {}: {} [{}]\n", place, told, note.code);
        }
    }
    for (const auto& [code, count] : ledger.by_code()) {
        if (count > notes_shown) {
            out << fmt::format("    ... {} rows in all bear [{}]; --json lists them\n", count,
                               code);
        }
    }
}

void print(const Intake& intake, const Streams& streams) {
    streams.out << intake.file << "\n";
    if (intake.error && intake.guesses.empty()) {
        return;
    }
    print_guesses(intake, streams.out);
    for (const Question& question : intake.questions) {
        streams.out << "  QUESTION: " << question.sentence
                    << (question.guess.empty() ? "" : " We would take: " + question.guess + ".")
                    << " Answer with " << question.option << "\n";
    }
    print_sample(intake, streams.out);
    print_rows(intake, streams.out);
}

}  // namespace

Exit look(const FileOptions& options, bool json, const Streams& streams) {
    const auto intake_with = intake_options(options, streams.now);
    if (!intake_with) {
        streams.err << "tracewright: " << intake_with.error() << "\n";
        return Exit::wrong_usage;
    }
    Json document = {{"version", look_json_version}, {"files", Json::array()}};
    const std::vector<std::string> files = files_named(options.files, streams.err);
    Exit exit = Exit::done;
    if (files.empty()) {
        streams.err << no_file_in(options.files) << "\n";
        exit = Exit::cannot_answer;
    }
    for (const std::string& file : files) {
        for (const Intake& intake : bring_in_sheets(file, *intake_with)) {
            if (json) {
                document["files"].push_back(json_of_look(intake));
            } else {
                print(intake, streams);
            }
            if (intake.error) {
                const bool asks = intake.error->kind == FileErrorKind::needs_answer;
                streams.err << intake.error->sentence() << "\n";
                exit = asks && exit == Exit::done ? Exit::cannot_answer
                       : asks                     ? exit
                                                  : Exit::bad_input;
            }
        }
    }
    if (json) {
        streams.out << dumped(document);
    }
    return exit;
}

}  // namespace tracewright
