#include "store/whole_client_input.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wear_ends.hpp"

#include <algorithm>

namespace tracewright {

namespace {

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

Stored<ReviewInput> whole_client_input(PracticeStore& store, std::int64_t client,
                                       const ClientFacts& facts) {
    auto wears = store.wears(client, std::nullopt);
    auto diary = store.diary(client, std::nullopt);
    auto told = store.told_stretches(client);
    if (!wears || !diary || !told) {
        return tl::make_unexpected(!wears ? wears.error() : !diary ? diary.error() : told.error());
    }
    ReviewInput input;
    input.suspect.told = std::move(*told);
    input.zones = client_clock(facts);
    input.unit = facts.unit;
    for (StoredWear& stored : *wears) {
        input.wears.push_back(std::move(stored.wear));
    }
    input.diary = std::move(*diary);
    set_ends_told(input.wears, input.diary);
    medicines_of_facts(input, facts);
    if (const Goals goals = goals_that_hold(facts); goals.kind == GoalKind::pregnancy) {
        input.goals = goals;
    }
    return input;
}

}  // namespace tracewright
