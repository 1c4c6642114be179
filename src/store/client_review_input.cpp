#include "store/client_review_input.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wear_ends.hpp"

#include <algorithm>

namespace tracewright {

void keep_last_wear(std::vector<StoredWear>& wears) {
    std::erase_if(wears, [](const StoredWear& stored) { return stored.wear.empty(); });
    const auto last = std::ranges::max_element(
        wears, {}, [](const StoredWear& stored) { return stored.wear.readings.back().at; });
    if (last == wears.end()) {
        return;
    }
    const Interval span = last->wear.sensed_span();
    std::erase_if(wears, [&](const StoredWear& stored) {
        return intersection(stored.wear.sensed_span(), span).length().count() == 0;
    });
}

Interval with_the_night_before(const std::vector<StoredWear>& wears) {
    Interval span = wears.front().wear.sensed_span();
    for (const StoredWear& stored : wears) {
        span.from = std::min(span.from, stored.wear.sensed_span().from);
        span.to = std::max(span.to, stored.wear.sensed_span().to);
    }
    return {span.from - std::chrono::hours{24}, span.to + std::chrono::hours{24}};
}

Stored<ReviewInput> client_review_input(PracticeStore& store, std::int64_t client,
                                        const ClientFacts& facts, std::optional<Interval> window) {
    ReviewInput input;
    auto wears = store.wears(client, window);
    if (!wears) {
        return tl::make_unexpected(wears.error());
    }
    if (!window) {
        keep_last_wear(*wears);
    }
    if (!wears->empty()) {
        auto diary = store.diary(client, window ? *window : with_the_night_before(*wears));
        if (!diary) {
            return tl::make_unexpected(diary.error());
        }
        input.diary = std::move(*diary);
    }
    for (StoredWear& stored : *wears) {
        input.wears.push_back(std::move(stored.wear));
    }
    set_ends_told(input.wears, input.diary);
    auto told = store.told_stretches(client);
    if (!told) {
        return tl::make_unexpected(told.error());
    }
    input.suspect.told = std::move(*told);
    input.zones = client_clock(facts);
    input.unit = facts.unit;
    input.goals = goals_that_hold(facts);
    input.window = window;
    return input;
}

}  // namespace tracewright
