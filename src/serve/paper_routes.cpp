#include "coaching/candidate_changes.hpp"
#include "coaching/letter_reasons.hpp"
#include "coaching/proposed_names.hpp"
#include "diary/says_something.hpp"
#include "render/drawn_paper.hpp"
#include "render/paper_json.hpp"
#include "serve/asked_record.hpp"
#include "serve/paper_reply.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "store/client_for_papers.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace tracewright {

namespace {

using Drawn = tl::expected<DrawnPaper, Reply>;

tl::unexpected<Reply> refused(int status, std::string_view code, std::string_view title,
                              std::string_view detail) {
    return tl::make_unexpected(problem(status, code, title, detail));
}

tl::expected<int, Reply> number_of(const std::string& name, const std::string& text) {
    int number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    if (read.ec != std::errc{} || read.ptr != text.data() + text.size()) {
        return refused(422, "unfit_field", "A field does not fit",
                       name + ": found another text, expected a number");
    }
    return number;
}

// ?about=3, ?before=walking&words=..., or ?candidate=walk-after-dinner
tl::expected<LetterAbout, Reply> letter_about(const Asked& asked,
                                              const std::vector<StandingEscalation>& standing) {
    LetterAbout about;
    about.words = asked.target.asked("words").value_or("");
    if (const auto before = asked.target.asked("before")) {
        about.proposed = proposed_called(*before);
        if (!about.proposed) {
            return refused(422, "unfit_field", "A field does not fit",
                           "before: found another text, expected a kind of change");
        }
    } else if (!about.words.empty()) {
        about.proposed = Proposed::other;
    }
    if (const auto code = asked.target.asked("candidate")) {
        const CandidateChange* candidate = candidate_called(*code);
        if (candidate == nullptr) {
            return refused(422, "unfit_field", "A field does not fit",
                           "candidate: found another text, expected one that the plan lists");
        }
        about.proposed = candidate->proposed;
        about.words = candidate->words;
    }
    if (const auto escalation = asked.target.asked("about")) {
        const auto number = number_of("about", *escalation);
        if (!number) {
            return tl::make_unexpected(number.error());
        }
        if (std::ranges::find(standing, *number, &StandingEscalation::number) == standing.end()) {
            return refused(404, "not_found", "There is no such thing",
                           "found no escalation of this number of this client");
        }
        about.escalation = *number;
    }
    return about;
}

Drawn review_paper(Asked& asked, const std::string& name, const HandoutWishes& wishes) {
    auto input = asked_review_input(asked);
    if (!input) {
        return tl::make_unexpected(input.error());
    }
    const auto papers =
        client_for_papers(asked.store, *asked.client, std::move(*input), asked.coach, asked.acting);
    if (!papers) {
        return tl::make_unexpected(problem_of(papers.error()));
    }
    const PaperClient client = papers->paper_client();
    const std::scoped_lock lock(drawing());
    if (name == "handout") {
        return drawn_handout(handout(client, wishes), papers->review);
    }
    if (name == "talk") {
        return drawn_talk_sheet(client);
    }
    const auto about = letter_about(asked, papers->escalations);
    if (!about) {
        return tl::make_unexpected(about.error());
    }
    return drawn_letter(client, *about, papers->record());
}

// ?site=&starts=&days=
tl::expected<WearBeginning, Reply> wear_of(const Asked& asked) {
    WearBeginning wear;
    wear.of_whom = asked.client->name;
    wear.site = asked.target.asked("site").value_or("");
    wear.days = 14;
    if (const auto days = asked.target.asked("days"); days && !days->empty()) {
        const auto number = number_of("days", *days);
        if (!number) {
            return tl::make_unexpected(number.error());
        }
        if (*number < 1 || *number > 31) {
            return refused(422, "unfit_field", "A field does not fit",
                           "days: found another number, expected 1 to 31");
        }
        wear.days = *number;
    }
    if (const auto starts = asked.target.asked("starts"); starts && !starts->empty()) {
        wear.starts = day_of_text(*starts);
        if (!wear.starts) {
            return refused(422, "not_a_day", "That is no day",
                           "starts: found another text, expected a day such as 2026-03-02");
        }
    }
    return wear;
}

Drawn sheet_of_wear(Asked& asked, const std::string& name) {
    const auto record = asked_record(asked);
    const auto wear = wear_of(asked);
    if (!record || !wear) {
        return tl::make_unexpected(record ? wear.error() : record.error());
    }
    if (name == "start-page") {
        return drawn_start_page(*wear, record->care());
    }
    for (DrawnPaper& sheet : drawn_diary_sheets(*wear, record->care())) {
        if (sheet.name == name) {
            return std::move(sheet);
        }
    }
    return refused(404, "not_found", "There is no such paper",
                   "found no week of this number in a wear of so many days");
}

Drawn explaining(Asked& asked, Explains explains) {
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return tl::make_unexpected(record.error());
    }
    const std::scoped_lock lock(drawing());
    auto drawn = drawn_explaining_page(explains, {record->input, record->facts});
    if (!drawn) {
        return refused(404, "not_made", "This paper is not made",
                       "Not made, because " + drawn.error().because + ".");
    }
    return std::move(*drawn);
}

// The paper that the path names.
Drawn asked_paper(Asked& asked, const HandoutWishes& wishes = {}) {
    const std::string& name = asked.values[1];
    constexpr std::string_view explains = "explain-";
    if (name == "handout" || name == "talk" || name == "letter") {
        return review_paper(asked, name, wishes);
    }
    if (name == "start-page" || name.starts_with("diary-sheet-")) {
        return sheet_of_wear(asked, name);
    }
    if (name.starts_with(explains)) {
        if (const auto page = explaining_page_called(name.substr(explains.size()))) {
            return explaining(asked, *page);
        }
    }
    return refused(404, "not_found", "There is no such paper", "found no paper of this name");
}

Reply papers_reply(Asked& asked) {
    const bool fewer = asked.client->facts.cautions.eating.positive != Answered::no;
    Json json{{"fewer_numbers", fewer}, {"explaining", Json::array()}};
    for (const ExplainsFacts& page : all_explaining_pages()) {
        json["explaining"].push_back(
            {{"paper", fmt::format("explain-{}", page.code)}, {"title", page.title}});
    }
    return json_reply(json);
}

Json json_of_figures(const char* name, const std::vector<Figure>& figures) {
    Json json = Json::array();
    for (std::size_t i = 0; i < figures.size(); ++i) {
        json.push_back(json_of_figure(fmt::format("{}_{}", name, i), figures[i]));
    }
    return json;
}

Reply paper_reply(Asked& asked) {
    const auto drawn = asked_paper(asked);
    if (!drawn) {
        return drawn.error();
    }
    Json json{{"version", paper_json_version}, {"paper", drawn->name}};
    json.update(json_of(drawn->paper));
    json["for_coach"] = drawn->for_coach;
    const std::scoped_lock lock(drawing());
    json["figures"] = json_of_figures("figure", drawn->figures);
    json["narrow_figures"] = json_of_figures("narrow_figure", drawn->narrow_figures);
    return json_reply(json);
}

Reply page_reply(Asked& asked) {
    const auto drawn = asked_paper(asked);
    return drawn ? page_of(*drawn) : drawn.error();
}

Reply print_reply(Asked& asked) {
    const auto drawn = asked_paper(asked);
    return drawn ? print_of(*drawn) : drawn.error();
}

// The handout with its numbers in spite of the eating screen: the reason is kept as a note first,
// as the command does (safety rule 12).
Reply handout_with_numbers_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"numbers_because"});
    if (!fields) {
        return fields.error();
    }
    const std::string& because = fields->at("numbers_because");
    if (!says_something(because)) {
        return problem(422, "unfit_field", "A field does not fit",
                       "numbers_because: found nothing, expected a reason");
    }
    const auto drawn = review_paper(asked, "handout", {because});
    if (!drawn) {
        return drawn.error();
    }
    const auto kept = asked.store.add_note(
        asked.client->id,
        "Numbers on the handout in spite of the eating screen, because: " + because, asked.acting);
    if (!kept) {
        return problem_of(kept.error());
    }
    if (const auto noted =
            asked.store.note_look(asked.client->id, "handout_made_with_numbers", asked.acting);
        !noted) {
        return problem_of(noted.error());
    }
    return print_of(*drawn);
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/papers", Asks::who_may_look, papers_reply},
    {Method::get, "/api/clients/{handle}/papers/{paper}", Asks::who_may_look, paper_reply,
     Holds::never, "paper_made"},
    {Method::get, "/api/clients/{handle}/papers/{paper}/page", Asks::who_may_look, page_reply,
     Holds::never, "paper_made"},
    {Method::get, "/api/clients/{handle}/papers/{paper}/print", Asks::who_may_look, print_reply,
     Holds::never, "paper_made"},
    {Method::post, "/api/clients/{handle}/handout-with-numbers", Asks::who_may_change,
     handout_with_numbers_reply},
};

}  // namespace

std::span<const Route> paper_routes() {
    return table;
}

}  // namespace tracewright
