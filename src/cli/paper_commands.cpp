#include "cli/paper_commands.hpp"

#include "cli/client_for_papers.hpp"
#include "cli/paper_output.hpp"
#include "coaching/handout.hpp"
#include "coaching/talk_sheet.hpp"
#include "render/handout_figure.hpp"

#include <fmt/format.h>

#include <array>
#include <ostream>
#include <utility>

namespace tracewright {

namespace {

constexpr std::array<std::pair<const char*, Proposed>, 7> proposals = {{
    {"low-carbohydrate", Proposed::low_carbohydrate},
    {"fasting", Proposed::fasting},
    {"meal-skipping", Proposed::meal_skipping},
    {"weight-loss", Proposed::weight_loss},
    {"food", Proposed::food_change},
    {"walking", Proposed::walking},
    {"other", Proposed::other},
}};

std::optional<Proposed> proposal_called(const std::string& name) {
    for (const auto& [called, proposed] : proposals) {
        if (name == called) {
            return proposed;
        }
    }
    return std::nullopt;
}

// One paper of a command: told, as JSON or as text, and written where a folder is given.
struct MadePaper {
    const char* name;  ///< of the command, the files and in the JSON
    const Paper& paper;
    std::vector<Figure> figures{};
    std::vector<std::string> for_coach{};
    Json more = Json::object();  ///< what this paper alone tells
};

Exit give(const MadePaper& made, const WhoseChange& whose, const PaperOptions& options, Exit so_far,
          const Streams& streams) {
    const Exit written = write_paper(made.paper, made.figures, options.out, made.name, streams);
    if (whose.json) {
        Json json = {{"version", paper_json_version}, {"paper", made.name}};
        json.update(json_of(made.paper));
        json["for_coach"] = made.for_coach;
        json.update(made.more);
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
    const std::string note =
        options.numbers_because.empty()
            ? std::string()
            : "Numbers on the handout in spite of the eating screen, because: " +
                  options.numbers_because;
    const auto client = client_for_papers(
        whose, note.empty() ? "handout_made" : "handout_made_with_numbers", note, streams);
    if (!client) {
        return client.error();
    }
    const Handout made = handout(client->paper_client(), {options.numbers_because});
    return give(
        {"handout",
         made.paper,
         {handout_figure(made.picture, client->review)},
         made.for_coach,
         {{"fewer_numbers", made.fewer_numbers},
          {"picture", made.picture == HandoutPicture::hours_bar ? "hours_bar" : "day_to_mark"},
          {"numbers", made.numbers},
          {"grade", made.grade}}},
        whose, options, client->exit, streams);
}

Exit talk_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams) {
    const auto client = client_for_papers(whose, "talk_sheet_made", "", streams);
    if (!client) {
        return client.error();
    }
    const Paper paper = talk_sheet(client->paper_client());
    return give({"talk", paper}, whose, options, client->exit, streams);
}

Exit letter_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams) {
    LetterAbout about;
    about.escalation = options.about;
    about.words = options.words;
    if (!options.before.empty()) {
        about.proposed = proposal_called(options.before);
    } else if (!options.words.empty()) {
        about.proposed = Proposed::other;
    }
    const auto client = client_for_papers(whose, "letter_made", "", streams);
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
    const Paper paper = prescriber_letter(client->paper_client(), about, client->record());
    std::vector<std::string> for_coach;
    for (const std::string& who : contacts_without_number(paper)) {
        for_coach.push_back(who == "To"
                                ? "No prescriber is on record: a blank line is printed. Please ask."
                                : "No telephone number is known (" + who +
                                      "): a blank line is printed. Please ask for it.");
    }
    return give({"letter", paper, {}, std::move(for_coach)}, whose, options, client->exit, streams);
}

}  // namespace tracewright
