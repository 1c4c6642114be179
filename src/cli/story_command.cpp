#include "cli/story_command.hpp"

#include "cli/kept_trials.hpp"
#include "coaching/agreed_change.hpp"
#include "coaching/story_paper.hpp"
#include "findings/wording.hpp"
#include "render/paper_pages.hpp"
#include "render/story_json.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

void print_changes(const Story& story, std::ostream& out) {
    out << "\nDid it help?\n";
    for (const DidItHelp& one : story.changes) {
        out << "  \"" << one.change.words << "\"";
        if (one.change.agreed_on) {
            out << ", agreed " << iso_date(*one.change.agreed_on);
        }
        out << (one.closed.empty() ? fmt::format(", {}\n", name_of(one.change.outcome))
                                   : fmt::format("\n    {}\n", one.closed));
        if (!one.compared) {
            out << "    Nothing to compare: " << one.none_because << "\n";
            continue;
        }
        out << "    " << one.compared->finding.sentence << "\n";
        for (const Caveat& caveat : one.compared->finding.caveats) {
            out << "    - " << caveat.sentence << "\n";
        }
        for (const std::string& other : one.else_changed) {
            out << "    - Also: " << other << ".\n";
        }
    }
    if (story.changes.empty()) {
        out << "  No change was agreed yet.\n";
    }
}

void print_story(const Story& story, WayOfWriting way, std::ostream& out) {
    out << "Our story so far\n\n";
    if (!story.very_low.empty()) {
        out << story.very_low << "\n";
    }
    out << story.last_reading << "\n";
    for (const std::string& sentence : story.care) {
        out << sentence << "\n";
    }
    out << "\n";
    for (const LineRow& row : story.labs.line) {
        out << fmt::format("{}  {:<8}  {}\n", iso_date(row.on), row.kind, row.words);
    }
    print_changes(story, out);
    if (!story.trials.empty()) {
        out << "\nTrials\n";
        for (const Finding& finding : story.trials) {
            out << "  " << finding.question << "\n    " << finding.sentence << "\n";
        }
    }
    out << "\nWhat was kept\n";
    for (const std::string& kept : story.kept) {
        out << "  " << kept << "\n";
    }
    if (story.kept.empty()) {
        out << "  Nothing yet.\n";
    }
    out << "\nWhat is still unknown\n";
    for (const std::string& unknown : story.unknown) {
        out << "  " << unknown << "\n";
    }
    if (story.unknown.empty()) {
        out << "  Nothing of what was asked.\n";
    }
    for (const Finding& finding : story.labs.findings) {
        out << "\n";
        print_finding(finding, out);
    }
    out << "\n" << next_lab_words(story.next_lab, way) << "\n";
}

}  // namespace

Exit story(const WhoseChange& whose, const StoryOptions& options, const Streams& streams) {
    const auto client = client_of_change(whose, "story_looked_at", streams);
    if (!client) {
        return client.error();
    }
    const auto trials = kept_trials_with(*client, streams);
    if (!trials) {
        return trials.error();
    }
    LabQuestion question{client->input, client->facts};
    question.trials = *trials;
    const Story told = story_of(question);
    if (!options.html.empty()) {
        const std::string page =
            paper_html(story_paper(told, client->input.of_whom, client->input.zones.writing()), {});
        const auto* bytes = reinterpret_cast<const std::uint8_t*>(page.data());
        if (const auto done = write_whole_file(options.html, {bytes, page.size()}); !done) {
            streams.err << "tracewright: " << done.error().sentence << "\n";
            return Exit::bad_input;
        }
    }
    if (whose.json) {
        streams.out << dumped(json_of_story(told, client->input));
    } else {
        print_story(told, client->input.zones.writing(), streams.out);
    }
    return client->exit;
}

}  // namespace tracewright
