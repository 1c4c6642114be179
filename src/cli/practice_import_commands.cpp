#include "cli/consent_said.hpp"
#include "cli/escalation_records.hpp"
#include "cli/notes_of_file.hpp"
#include "cli/practice_commands.hpp"
#include "coaching/client_clock.hpp"
#include "intake/workbook_sheets.hpp"
#include "serve/brought_in_file.hpp"
#include "store/standing_escalations.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

std::string rows(const ImportPlan& plan) {
    return fmt::format(
        "rows read {}, stored {}, duplicate {}, conflict {}, rejected {}",
        plan.rows_stored + plan.rows_duplicate + plan.rows_conflict + plan.rows_rejected,
        plan.rows_stored, plan.rows_duplicate, plan.rows_conflict, plan.rows_rejected);
}

void say_rejected(const Intake& intake, const Streams& streams) {
    constexpr std::size_t most = 20;
    std::size_t shown = 0;
    for (const RowNote& note : intake.ledger.notes()) {
        if (note.fate != Fate::rejected || ++shown > most) {
            continue;
        }
        streams.out << fmt::format("  line {}, column {}: found {}, expected {}\n", note.line,
                                   note.column, note.found, note.expected);
    }
    if (shown > most) {
        streams.out << fmt::format("  and {} more: look shows them all\n", shown - most);
    }
}

Exit worse(Exit a, Exit b) {
    return static_cast<int>(a) > static_cast<int>(b) ? a : b;
}

class Importer {
  public:
    Importer(OpenPractice& practice, std::int64_t client, IntakeOptions intake,
             const PracticeWords& words, const Streams& streams)
        : practice_(practice),
          client_(client),
          intake_(std::move(intake)),
          whose_(words.this_client ? WhoseFile::this_client : WhoseFile::not_asked),
          preview_(words.preview),
          streams_(streams) {}

    Exit take(const std::string& path) {
        Exit exit = Exit::done;
        for (Intake& intake : bring_in_sheets(path, intake_)) {
            exit = worse(exit, take(intake));
        }
        return exit;
    }

  private:
    Exit take(Intake& intake) {
        const std::string path = intake.file;
        if (intake.error) {
            streams_.err << intake.error->sentence() << "\n";
            return intake.error->kind == FileErrorKind::needs_answer ? Exit::cannot_answer
                                                                     : Exit::bad_input;
        }
        Exit exit = Exit::done;
        for (const Question& question : intake.questions) {
            streams_.err << path << ": " << question.sentence << " (" << question.option << ")\n";
            exit = Exit::cannot_answer;
        }
        BroughtIn file = brought_in_file(intake);
        const Exit stored = preview_ ? show(path, std::move(file)) : store(path, std::move(file));
        say_rejected(intake, streams_);
        say_of_whole_file(intake.ledger, streams_.out);
        return stored == Exit::done ? exit : stored;
    }

    OpenPractice& practice_;
    std::int64_t client_;
    IntakeOptions intake_;
    WhoseFile whose_;
    bool preview_;
    const Streams& streams_;

    Exit show(const std::string& path, BroughtIn file) {
        const auto plan = practice_.store->preview(client_, std::move(file), whose_);
        return plan ? say(path, *plan, "nothing is stored by a preview")
                    : said(plan.error(), streams_);
    }

    Exit store(const std::string& path, BroughtIn file) {
        const auto outcome =
            practice_.store->bring_in(client_, std::move(file), whose_, practice_.acting);
        if (!outcome) {
            return said(outcome.error(), streams_);
        }
        return say(path, outcome->plan,
                   outcome->import == 0 ? std::string("nothing new")
                                        : fmt::format("import {}", outcome->import));
    }

    Exit say(const std::string& path, const ImportPlan& plan, const std::string& what) const {
        streams_.out << fmt::format("{}: {} ({})\n", path, rows(plan),
                                    plan.question ? "held, nothing stored" : what);
        if (plan.question) {
            streams_.err << path << ": " << *plan.question
                         << " If it is, say --this-client; if not, nothing needs doing.\n";
            return Exit::cannot_answer;
        }
        if (plan.agreement) {
            streams_.out << fmt::format(
                "  worn at the same time as another sensor: they differ by {:.0f} % on average\n",
                100 * plan.agreement->mean_relative_difference);
        }
        return Exit::done;
    }
};

}  // namespace

Exit bring_in_files(const PracticeOptions& options, const PracticeWords& words,
                    const FileOptions& files, const Streams& streams) {
    auto intake = intake_options(files, streams.now);
    if (!intake) {
        streams.err << "tracewright: " << intake.error() << "\n";
        return Exit::wrong_usage;
    }
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto client = practice->store->client_called(words.client);
    if (!client) {
        return said(client.error(), streams);
    }
    const auto record = practice->store->client(*client);
    if (!record) {
        return said(record.error(), streams);
    }
    if (files.zone.empty()) {
        intake->zones = client_clock(record->facts);
        intake->without_zone = WithoutZone::ask;
    }
    intake->levels_apart = LevelsApart::ask;
    practice->acting.at = *intake->as_of;
    Importer importer(*practice, *client, *intake, words, streams);
    say_consent_over(record->facts, practice->acting.at, streams);
    Exit exit = Exit::done;
    for (const std::string& path : files_named(files.files, streams.err)) {
        exit = worse(exit, importer.take(path));
    }
    if (!words.preview) {
        return worse(exit, say_escalations(*practice->store, *client, record->facts,
                                           practice->acting, streams));
    }
    return exit;
}

Exit undo_import(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams) {
    const auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    const auto undone = open->store().undo(open->client, open->practice.acting);
    if (!undone) {
        return said(undone.error(), streams);
    }
    streams.out << fmt::format("import {} ({}) was undone: {} rows are out again.\n", undone->id,
                               undone->source, undone->rows_stored);
    const auto record = open->store().client(open->client);
    const auto looked = record ? record_escalations(open->store(), open->client, record->facts,
                                                    open->practice.acting)
                               : tl::make_unexpected(record.error());
    return looked ? Exit::done : said(looked.error(), streams);
}

}  // namespace tracewright
