#include "cli/client_of_sheet.hpp"

#include "cli/files_of_client.hpp"
#include "coaching/client_clock.hpp"

#include <ostream>

namespace tracewright {

namespace {

using Sheet = tl::expected<ClientOfSheet, Exit>;

Sheet of_practice(const WhoseChange& whose, const char* looked, const Streams& streams) {
    if (whose.files.files.size() != 1) {
        streams.err << "tracewright: found " << whose.files.files.size()
                    << " names, expected one client with --practice\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    const auto open = opened_client(whose.practice, whose.files.files.front(), streams);
    if (!open) {
        return tl::make_unexpected(open.error());
    }
    PracticeStore& store = open->store();
    const auto record = store.client(open->client);
    const auto wears = store.wears(open->client, std::nullopt);
    if (!record || !wears) {
        return tl::make_unexpected(said(record ? wears.error() : record.error(), streams));
    }
    if (const auto noted = store.note_look(open->client, looked, open->practice.acting); !noted) {
        return tl::make_unexpected(said(noted.error(), streams));
    }
    ClientOfSheet sheet;
    sheet.facts = record->facts;
    for (const StoredWear& stored : *wears) {
        sheet.input.wears.push_back(stored.wear);
    }
    sheet.input.of_whom = record->name;
    sheet.input.zones = client_clock(record->facts);
    sheet.input.unit = record->facts.unit;
    sheet.input.as_of = open->practice.acting.at;
    return sheet;
}

}  // namespace

Sheet client_of_sheet(const WhoseChange& whose, const char* looked, const Streams& streams) {
    if (!whose.practice.practice.empty()) {
        return of_practice(whose, looked, streams);
    }
    if (!whose.files.files.empty()) {
        auto client = client_of_change(whose, looked, streams);
        if (!client) {
            return tl::make_unexpected(client.error());
        }
        return ClientOfSheet{std::move(client->input), std::move(client->facts), client->exit};
    }
    auto facts = facts_in_file(whose.facts);
    if (!facts) {
        streams.err << "tracewright: " << facts.error() << "\n";
        return tl::make_unexpected(Exit::bad_input);
    }
    const auto intake = intake_options(whose.files, streams.now);
    if (!intake) {
        streams.err << "tracewright: " << intake.error() << "\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    ClientOfSheet sheet;
    sheet.facts = std::move(*facts);
    sheet.input.zones = intake->zones;
    sheet.input.unit = sheet.facts.unit;
    sheet.input.as_of = *intake->as_of;
    return sheet;
}

}  // namespace tracewright
