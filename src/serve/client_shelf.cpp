#include "serve/client_shelf.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/eating_care.hpp"
#include "findings/day_sheets.hpp"
#include "findings/wear_ends.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::size_t most_clients = 16;

}  // namespace

Stored<ClientShelf::Sheets> ClientShelf::sheets(PracticeStore& store, const ClientRecord& client,
                                                std::uint64_t version) {
    const auto found = std::ranges::find(shelf_, client.handle, &Standing::handle);
    if (found != shelf_.end() && found->version == version) {
        shelf_.splice(shelf_.begin(), shelf_, found);
        return shelf_.front().sheets;
    }
    if (found != shelf_.end()) {
        shelf_.erase(found);
    }
    auto wears = store.wears(client.id);
    auto diary = store.diary(client.id);
    auto told = store.told_stretches(client.id);
    if (!wears || !diary || !told) {
        return tl::make_unexpected(!wears ? wears.error() : !diary ? diary.error() : told.error());
    }
    ReviewInput input;
    input.suspect.told = std::move(*told);
    input.diary = std::move(*diary);
    for (StoredWear& stored : *wears) {
        input.wears.push_back(std::move(stored.wear));
    }
    set_ends_told(input.wears, input.diary);
    input.zones = client_clock(client.facts);
    input.unit = client.facts.unit;
    input.goals = goals_that_hold(client.facts);
    input.foods_left_off = numbers_turned_down(client.facts.cautions.eating);
    auto sheets = std::make_shared<const FirstReview>(day_sheets_of(std::move(input)));
    shelf_.push_front({client.handle, version, sheets});
    if (shelf_.size() > most_clients) {
        shelf_.pop_back();
    }
    return sheets;
}

}  // namespace tracewright
