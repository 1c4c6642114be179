#include "cli/escalation_records.hpp"
#include "cli/practice_commands.hpp"
#include "cli/review_files.hpp"
#include "coaching/client_clock.hpp"
#include "coaching/client_review.hpp"
#include "store/client_review_input.hpp"

#include <ostream>

namespace tracewright {

namespace {

// The files' options that also hold for a client, whose clock and unit are known.
FileOptions by_the_clients_clock(const FileOptions& files) {
    FileOptions options = files;
    options.zone.clear();
    options.travel.clear();
    return options;
}

}  // namespace

Exit review_client(const PracticeOptions& options, const FileOptions& files, const std::string& out,
                   const Streams& streams) {
    if (files.files.size() != 1) {
        streams.err << "tracewright: found " << files.files.size()
                    << " names, expected one client with --practice\n";
        return Exit::wrong_usage;
    }
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    PracticeStore& store = *practice->store;
    const auto client = store.client_called(files.files.front());
    if (!client) {
        return said(client.error(), streams);
    }
    const auto record = store.client(*client);
    if (!record) {
        return said(record.error(), streams);
    }
    const ZoneHistory clock = client_clock(record->facts);
    const FileOptions with = by_the_clients_clock(files);
    const auto window = window_of(with, clock);
    if (!window) {
        streams.err << "tracewright: " << window.error() << "\n";
        return Exit::wrong_usage;
    }
    if (!files.as_of.empty()) {
        const auto as_of = time_on_command_line(files.as_of, clock);
        if (!as_of) {
            streams.err << "tracewright: " << as_of.error() << "\n";
            return Exit::wrong_usage;
        }
        practice->acting.at = *as_of;
    }
    auto input = client_review_input(store, *client, record->facts, *window);
    if (!input) {
        return said(input.error(), streams);
    }
    if (input->wears.empty()) {
        streams.err << "tracewright: found no glucose reading of this client in the window, "
                       "expected at least one\n";
        return Exit::cannot_answer;
    }
    input->unit = unit_shown(files, input->unit);
    input->suspect.warm_up = std::chrono::minutes{files.warm_up_minutes};
    input->as_of = practice->acting.at;
    input->seed = files.seed;
    if (const auto looked = record_escalations(store, *client, record->facts, practice->acting);
        !looked) {
        return said(looked.error(), streams);
    }
    // What is not answered leads whatever the window, what is answered stands where it belongs.
    auto standing = standing_escalations(store, *client, record->facts);
    if (!standing) {
        return said(standing.error(), streams);
    }
    const FirstReview review = client_review({std::move(*input), record->name, record->facts,
                                              std::move(*standing), practice->coach.licence});
    if (const auto noted = store.note_look(*client, "review_made", practice->acting); !noted) {
        return said(noted.error(), streams);
    }
    return write_review(review, out, streams) ? Exit::done : Exit::bad_input;
}

}  // namespace tracewright
