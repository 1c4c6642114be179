#include "cli/client_asked_for_papers.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"
#include "store/client_review_input.hpp"

#include <ostream>

namespace tracewright {

namespace {

using Papers = tl::expected<ClientAskedForPapers, Exit>;

// The ladder, asked of files: first seen now and answered by nobody.
std::vector<StandingEscalation> escalations_now(const ClientOfChange& client) {
    const ReviewInput& input = client.input;
    const MedicineTimeline medicines = client_medicines(client.facts, input.zones);
    LadderInput ladder{input.wears, input.diary, medicines,        input.zones,
                       input.unit,  {},          client.facts.labs};
    if (const auto& change = client.facts.agreed_change; change && change->agreed_on) {
        ladder.change_agreed = input.zones.day_of(*change->agreed_on).from;
    }
    std::vector<StandingEscalation> standing;
    for (Escalation& escalation : escalations(ladder)) {
        StandingEscalation one;
        one.escalation = std::move(escalation);
        one.first_seen = input.as_of;
        one.number = static_cast<std::int64_t>(standing.size()) + 1;
        standing.push_back(std::move(one));
    }
    return standing;
}

Papers of_files(const WhoseChange& whose, const Streams& streams) {
    auto client = client_of_change(whose, "", streams);
    if (!client) {
        return tl::make_unexpected(client.error());
    }
    ClientAskedForPapers papers;
    papers.exit = client->exit;
    papers.facts = client->facts;
    papers.escalations = escalations_now(*client);
    papers.wears = client->input.wears;
    papers.diary = client->input.diary;
    papers.review =
        client_review({std::move(client->input), {}, client->facts, papers.escalations});
    return papers;
}

// A wrong word on the command line, said.
tl::unexpected<Exit> refused(const std::string& sentence, const Streams& streams) {
    streams.err << "tracewright: " << sentence << "\n";
    return tl::make_unexpected(Exit::wrong_usage);
}

Papers of_practice(const WhoseChange& whose, const char* looked, const std::string& note,
                   const Streams& streams) {
    const FileOptions& files = whose.files;
    if (files.files.size() != 1) {
        return refused("found " + std::to_string(files.files.size()) +
                           " names, expected one client with --practice",
                       streams);
    }
    auto open = opened_client(whose.practice, files.files.front(), streams);
    if (!open) {
        return tl::make_unexpected(open.error());
    }
    PracticeStore& store = open->store();
    const Acting& acting = open->practice.acting;
    const auto record = store.client(open->client);
    if (!record) {
        return tl::make_unexpected(said(record.error(), streams));
    }
    FileOptions by_the_clients_clock = files;
    by_the_clients_clock.zone.clear();
    by_the_clients_clock.travel.clear();
    const auto window = window_of(by_the_clients_clock, client_clock(record->facts));
    if (!window) {
        return refused(window.error(), streams);
    }
    auto input = client_review_input(store, open->client, record->facts, *window);
    if (!input) {
        return tl::make_unexpected(said(input.error(), streams));
    }
    input->unit = unit_shown(files, input->unit);
    input->as_of = acting.at;
    input->seed = files.seed;
    auto papers =
        client_for_papers(store, *record, std::move(*input), open->practice.coach, acting);
    if (!papers) {
        return tl::make_unexpected(said(papers.error(), streams));
    }
    if (!note.empty()) {
        if (const auto kept = store.add_note(open->client, note, acting); !kept) {
            return tl::make_unexpected(said(kept.error(), streams));
        }
    }
    if (const auto noted = store.note_look(open->client, looked, acting); !noted) {
        return tl::make_unexpected(said(noted.error(), streams));
    }
    return ClientAskedForPapers{std::move(*papers), Exit::done};
}

}  // namespace

tl::expected<ClientAskedForPapers, Exit> client_asked_for_papers(const WhoseChange& whose,
                                                                 const char* looked,
                                                                 const std::string& note,
                                                                 const Streams& streams) {
    if (!whose.practice.practice.empty()) {
        return of_practice(whose, looked, note, streams);
    }
    if (!note.empty()) {
        return refused(
            "found a reason to show numbers without a practice, expected --practice: the reason is "
            "kept there",
            streams);
    }
    return of_files(whose, streams);
}

}  // namespace tracewright
