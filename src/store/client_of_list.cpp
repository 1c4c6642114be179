#include "store/client_of_list.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"
#include "store/client_review_input.hpp"
#include "store/kept_trials.hpp"
#include "store/standing_escalations.hpp"

#include <algorithm>

namespace tracewright {

namespace {

std::optional<Instant> last_time(const std::vector<AuditLine>& audit, const char* deed,
                                 Instant as_of) {
    std::optional<Instant> last;
    for (const AuditLine& line : audit) {
        if (line.deed == deed && line.at <= as_of) {
            last = std::max(last.value_or(line.at), line.at);
        }
    }
    return last;
}

// What the last review's days show, however old they are; of a longer wear the last 30 days.
Stored<std::vector<CareToTell>> to_tell(PracticeStore& store, const ClientLine& line,
                                        const ClientFacts& facts, Instant as_of) {
    if (!line.last_reading) {
        return std::vector<CareToTell>{};
    }
    auto stored = store.wears(line.id, Interval{*line.last_reading - caseload_span,
                                                *line.last_reading + std::chrono::seconds{1}});
    if (!stored) {
        return tl::make_unexpected(stored.error());
    }
    keep_last_wear(*stored);
    if (stored->empty()) {
        return std::vector<CareToTell>{};
    }
    const auto diary = store.diary(line.id, with_the_night_before(*stored));
    if (!diary) {
        return tl::make_unexpected(diary.error());
    }
    std::vector<Wear> wears;
    for (StoredWear& one : *stored) {
        wears.push_back(std::move(one.wear));
    }
    const ZoneHistory clock = client_clock(facts);
    const MedicineTimeline medicines = client_medicines(facts, clock);
    return care_to_tell({facts, wears, *diary, medicines, clock, as_of});
}

}  // namespace

Stored<CaseloadClient> client_of_list(PracticeStore& store, const ClientLine& line, Instant as_of) {
    const auto record = store.client(line.id);
    if (!record) {
        return tl::make_unexpected(record.error());
    }
    const Interval window = caseload_window(client_clock(record->facts), as_of);
    auto wears = store.wears(line.id, window);
    auto diary = store.diary(line.id, window);
    auto standing = standing_escalations(store, line.id, record->facts);
    const auto promises = store.promises(line.id);
    const auto audit = store.audit(line.id);
    auto trials = kept_trials(store, line.id, client_clock(record->facts));
    if (!trials) {
        return tl::make_unexpected(trials.error());
    }
    if (!wears || !diary || !standing || !promises || !audit) {
        return tl::make_unexpected(!wears      ? wears.error()
                                   : !diary    ? diary.error()
                                   : !standing ? standing.error()
                                   : !promises ? promises.error()
                                               : audit.error());
    }
    CaseloadClient client{
        line.handle, line.name, record->facts,    {}, std::move(*diary), std::move(*standing),
        {},          {},        line.last_reading};
    for (StoredWear& stored : *wears) {
        client.wears.push_back(std::move(stored.wear));
    }
    for (const PromiseRecord& promise : *promises) {
        if (!promise.kept_at) {
            client.promises.push_back({promise.due, promise.text});
        }
    }
    client.last_review = last_time(*audit, "review_made", as_of);
    const auto came = store.readings_brought_in_at(line.id);
    if (!came) {
        return tl::make_unexpected(came.error());
    }
    client.brought_in_at = *came;
    client.last_trial_read = last_time(*audit, "trial_read", as_of);
    client.trials = std::move(*trials);
    auto told = to_tell(store, line, client.facts, as_of);
    if (!told) {
        return tl::make_unexpected(told.error());
    }
    client.to_tell = std::move(*told);
    return client;
}

}  // namespace tracewright
