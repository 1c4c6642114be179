#include "cli/client_of_practice.hpp"

#include "store/foods_of_client.hpp"
#include "store/whole_client_input.hpp"

#include <ostream>

namespace tracewright {

tl::expected<ClientOfPractice, Exit> client_of_practice(const PracticeOptions& options,
                                                        const FileOptions& files,
                                                        const char* looked, bool tells,
                                                        const Streams& streams) {
    const auto refused = [&](const std::string& sentence, Exit exit) {
        streams.err << "tracewright: " << sentence << "\n";
        return tl::make_unexpected(exit);
    };
    if (files.files.size() != 1) {
        return refused("found " + std::to_string(files.files.size()) +
                           " names, expected one client with --practice",
                       Exit::wrong_usage);
    }
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return tl::make_unexpected(practice.error());
    }
    PracticeStore& store = *practice->store;
    const auto client = store.client_called(files.files.front());
    if (!client) {
        return tl::make_unexpected(said(client.error(), streams));
    }
    const auto record = store.client(*client);
    if (!record) {
        return tl::make_unexpected(said(record.error(), streams));
    }
    auto input = whole_client_input(store, *client, record->facts);
    if (!input) {
        return tl::make_unexpected(said(input.error(), streams));
    }
    FileOptions by_the_clients_clock = files;
    by_the_clients_clock.zone.clear();
    by_the_clients_clock.travel.clear();
    const auto window = window_of(by_the_clients_clock, input->zones);
    if (!window) {
        return refused(window.error(), Exit::wrong_usage);
    }
    auto foods = foods_of_client(store, *client);
    if (!foods) {
        return tl::make_unexpected(said(foods.error(), streams));
    }
    if (input->wears.empty()) {
        return refused("found no glucose reading of this client, expected at least one",
                       Exit::cannot_answer);
    }
    input->window = *window;
    input->unit = unit_shown(files, record->facts.unit);
    input->suspect.warm_up = std::chrono::minutes{files.warm_up_minutes};
    input->as_of = practice->acting.at;
    input->seed = files.seed;
    if (const auto noted = store.note_look(*client, looked, practice->acting); !noted) {
        return tl::make_unexpected(said(noted.error(), streams));
    }
    if (tells && record->facts.cautions.eating.positive != Answered::no) {
        streams.out << "The eating screen is positive or not answered: food, grams and meals "
                       "compared stay off the client's papers.\n\n";
    }
    return ClientOfPractice{std::move(*input), record->facts, std::move(*foods),
                            OpenClient{std::move(*practice), *client}};
}

}  // namespace tracewright
