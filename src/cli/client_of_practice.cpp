#include "cli/client_of_practice.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wear_ends.hpp"
#include "store/foods_of_client.hpp"

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

// What was taken when a wear began stands as an entry of it, so that a change between wears is
// seen.
void medicines_of_facts(ReviewInput& input, const ClientFacts& facts) {
    for (const Wear& wear : input.wears) {
        if (wear.empty()) {
            continue;
        }
        const Instant at = wear.readings.front().at;
        const CivilDate day = input.zones.date_at(at);
        for (const MedicineLine& line : facts.medicines) {
            const bool begun = !line.from || *line.from <= day;
            const bool ended = line.until && *line.until < day;
            if (begun && !ended) {
                DiaryEntry entry;
                entry.kind = DiaryKind::medicine;
                entry.at = at;
                entry.written = input.zones.wall_time(at);
                entry.text = line.written;
                input.diary.push_back(std::move(entry));
            }
        }
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
}

}  // namespace

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
    ReviewInput input;
    input.zones = client_clock(record->facts);
    FileOptions by_the_clients_clock = files;
    by_the_clients_clock.zone.clear();
    by_the_clients_clock.travel.clear();
    const auto window = window_of(by_the_clients_clock, input.zones);
    if (!window) {
        return refused(window.error(), Exit::wrong_usage);
    }
    auto wears = store.wears(*client, std::nullopt);
    auto diary = store.diary(*client, std::nullopt);
    if (!wears || !diary) {
        return tl::make_unexpected(said(wears ? diary.error() : wears.error(), streams));
    }
    auto foods = foods_of_client(store, *client);
    if (!foods) {
        return tl::make_unexpected(said(foods.error(), streams));
    }
    for (StoredWear& stored : *wears) {
        input.wears.push_back(std::move(stored.wear));
    }
    if (input.wears.empty()) {
        return refused("found no glucose reading of this client, expected at least one",
                       Exit::cannot_answer);
    }
    input.diary = std::move(*diary);
    set_ends_told(input.wears, input.diary);
    medicines_of_facts(input, record->facts);
    input.window = *window;
    input.unit = unit_shown(files, record->facts.unit);
    input.suspect.warm_up = std::chrono::minutes{files.warm_up_minutes};
    input.as_of = practice->acting.at;
    input.seed = files.seed;
    if (const Goals goals = goals_that_hold(record->facts); goals.kind == GoalKind::pregnancy) {
        input.goals = goals;
    }
    if (const auto noted = store.note_look(*client, looked, practice->acting); !noted) {
        return tl::make_unexpected(said(noted.error(), streams));
    }
    if (tells && record->facts.cautions.eating.positive != Answered::no) {
        streams.out << "The eating screen is positive or not answered: food, grams and meals "
                       "compared stay off the client's papers.\n\n";
    }
    return ClientOfPractice{std::move(input), record->facts, std::move(*foods),
                            OpenClient{std::move(*practice), *client}};
}

}  // namespace tracewright
