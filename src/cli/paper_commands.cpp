#include "cli/paper_commands.hpp"

#include "cli/client_asked_for_papers.hpp"
#include "cli/paper_output.hpp"
#include "coaching/proposed_names.hpp"
#include "diary/says_something.hpp"
#include "render/drawn_paper.hpp"
#include "render/paper_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

// One paper of a command: told, as JSON or as text, and written where a folder is given. `more`:
// what this paper alone tells in JSON.
Exit give(const DrawnPaper& made, const WhoseChange& whose, const PaperOptions& options,
          Exit so_far, const Streams& streams, const Json& more = Json::object()) {
    const Exit written = write_paper(made.paper, made.figures, options.out, made.name, streams);
    if (whose.json) {
        Json json = {{"version", paper_json_version}, {"paper", made.name}};
        json.update(json_of(made.paper));
        json["for_coach"] = made.for_coach;
        json.update(more);
        streams.out << dumped(json);
    } else {
        print_paper(made.paper, streams.out);
        if (!made.for_coach.empty()) {
            streams.out << "\nFor the coach alone\n";
            for (const std::string& line : made.for_coach) {
                streams.out << "  - " << line << "\n";
            }
        }
        if (!options.out.empty() && written == Exit::done) {
            streams.out << fmt::format("\nThe paper is in {0}/{1}.pdf and {0}/{1}.html\n",
                                       options.out, made.name);
        }
    }
    return written == Exit::done ? so_far : written;
}

}  // namespace

Exit handout_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams) {
    if (!options.numbers_because.empty() && !says_something(options.numbers_because)) {
        streams.err << "tracewright: found no word in --show-numbers-because, expected a reason, "
                       "which is kept among the notes\n";
        return Exit::wrong_usage;
    }
    const std::string note =
        options.numbers_because.empty()
            ? std::string()
            : "Numbers on the handout in spite of the eating screen, because: " +
                  options.numbers_because;
    const auto client = client_asked_for_papers(
        whose, note.empty() ? "handout_made" : "handout_made_with_numbers", note, streams);
    if (!client) {
        return client.error();
    }
    const Handout made = handout(client->paper_client(), {options.numbers_because});
    return give(
        drawn_handout(made, client->review), whose, options, client->exit, streams,
        {{"fewer_numbers", made.fewer_numbers},
         {"picture", made.picture == HandoutPicture::hours_bar ? "hours_bar" : "day_to_mark"},
         {"numbers", made.numbers},
         {"grade", made.grade}});
}

Exit talk_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams) {
    const auto client = client_asked_for_papers(whose, "talk_sheet_made", "", streams);
    if (!client) {
        return client.error();
    }
    return give(drawn_talk_sheet(client->paper_client()), whose, options, client->exit, streams);
}

Exit letter_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams) {
    LetterAbout about;
    about.escalation = options.about;
    about.words = options.words;
    if (!options.before.empty()) {
        about.proposed = proposed_called(options.before == "food" ? "food-change" : options.before);
    } else if (!options.words.empty()) {
        about.proposed = Proposed::other;
    }
    const auto client = client_asked_for_papers(whose, "letter_made", "", streams);
    if (!client) {
        return client.error();
    }
    if (about.escalation && std::ranges::none_of(client->escalations, [&](const auto& one) {
            return one.number == *about.escalation;
        })) {
        streams.err << "tracewright: found no escalation " << *about.escalation
                    << " of this client, expected a number that 'acknowledge' lists\n";
        return Exit::wrong_usage;
    }
    return give(drawn_letter(client->paper_client(), about, client->record()), whose, options,
                client->exit, streams);
}

}  // namespace tracewright
