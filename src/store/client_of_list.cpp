#include "store/client_of_list.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"
#include "store/client_review_input.hpp"
#include "store/kept_trials.hpp"
#include "store/standing_escalations.hpp"

#include <algorithm>
#include <span>

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

// Of what was read of a longer stretch, as the store would give the window alone.
std::vector<StoredWear> within(std::vector<StoredWear> wears, Interval window) {
    const auto outside = [&](const Reading& reading) { return !window.contains(reading.at); };
    for (StoredWear& stored : wears) {
        std::erase_if(stored.wear.readings, outside);
        std::erase_if(stored.wear.held, outside);
    }
    std::erase_if(wears, [](const StoredWear& stored) { return stored.wear.empty(); });
    return wears;
}

std::span<const DiaryEntry> within(const Diary& diary, Interval window) {
    return {std::ranges::lower_bound(diary, window.from, {}, &DiaryEntry::at),
            std::ranges::lower_bound(diary, window.to, {}, &DiaryEntry::at)};
}

Interval hull(const Interval& one, const Interval& other) {
    return {std::min(one.from, other.from), std::max(one.to, other.to)};
}

std::vector<Wear> wears_in(std::vector<StoredWear> stored) {
    std::vector<Wear> wears;
    for (StoredWear& one : stored) {
        wears.push_back(std::move(one.wear));
    }
    return wears;
}

// Fills in wears, diary and what is to be told. That is looked for in what the last review's days
// show, however old they are; of a longer wear in the last 30 days. Most often they are the days
// of the list as well, and are read once.
Stored<void> give_days(CaseloadClient& client, PracticeStore& store, std::int64_t id,
                       Instant as_of) {
    const ZoneHistory clock = client_clock(client.facts);
    const Interval listed = caseload_window(clock, as_of);
    const bool long_ago = !client.last_reading || *client.last_reading < listed.from;
    Interval last_days = listed;
    if (client.last_reading) {
        last_days = {*client.last_reading - caseload_span,
                     *client.last_reading + std::chrono::seconds{1}};
    }
    auto wears = store.wears(id, long_ago ? last_days : hull(listed, last_days));
    if (!wears) {
        return tl::make_unexpected(wears.error());
    }
    std::vector<StoredWear> reviewed = within(*wears, last_days);
    client.wears = wears_in(within(std::move(*wears), listed));
    keep_last_wear(reviewed);
    const Interval reviewed_days = reviewed.empty() ? listed : with_the_night_before(reviewed);
    auto diary = store.diary(id, long_ago ? listed : hull(listed, reviewed_days));
    if (!diary) {
        return tl::make_unexpected(diary.error());
    }
    const auto of_list = within(*diary, listed);
    client.diary.assign(of_list.begin(), of_list.end());
    if (reviewed.empty()) {
        return {};
    }
    if (long_ago) {
        diary = store.diary(id, reviewed_days);
        if (!diary) {
            return tl::make_unexpected(diary.error());
        }
    }
    const MedicineTimeline medicines = client_medicines(client.facts, clock);
    client.to_tell = care_to_tell({client.facts, wears_in(std::move(reviewed)),
                                   within(*diary, reviewed_days), medicines, clock, as_of});
    return {};
}

}  // namespace

Stored<CaseloadClient> client_of_list(PracticeStore& store, const ClientLine& line, Instant as_of) {
    const auto record = store.client(line.id);
    if (!record) {
        return tl::make_unexpected(record.error());
    }
    auto standing = standing_escalations(store, line.id, record->facts);
    const auto promises = store.promises(line.id);
    const auto audit = store.audit(line.id);
    auto trials = kept_trials(store, line.id, client_clock(record->facts));
    if (!trials) {
        return tl::make_unexpected(trials.error());
    }
    if (!standing || !promises || !audit) {
        return tl::make_unexpected(!standing   ? standing.error()
                                   : !promises ? promises.error()
                                               : audit.error());
    }
    CaseloadClient client{line.handle, line.name, record->facts,    {}, {}, std::move(*standing),
                          {},          {},        line.last_reading};
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
    if (const auto given = give_days(client, store, line.id, as_of); !given) {
        return tl::make_unexpected(given.error());
    }
    return client;
}

}  // namespace tracewright
