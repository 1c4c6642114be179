#include "store/kept_trials.hpp"

#include "store/trial_document.hpp"

#include <algorithm>

namespace tracewright {

Stored<std::vector<KeptTrial>> kept_trials(PracticeStore& store, std::int64_t client,
                                           const ZoneHistory& clock) {
    const auto records = store.trials(client);
    if (!records) {
        return tl::make_unexpected(records.error());
    }
    std::vector<KeptTrial> all;
    for (const TrialRecord& record : *records) {
        auto trial = trial_read(record.document);
        if (!trial) {
            return store_error(StoreErrorKind::broken, trial.error());
        }
        KeptTrial kept{record.id, std::move(*trial), {}, {}, {}};
        for (const TrialDayRecord& told : record.days) {
            const auto found = std::ranges::find(arms_done, told.done);
            if (found != arms_done.end()) {
                kept.done[told.day] = static_cast<ArmDone>(found - arms_done.begin());
            }
        }
        if (record.stopped) {
            kept.stopped_on = clock.date_at(record.stopped->at);
            kept.stopped_because = record.stopped->why;
        }
        all.push_back(std::move(kept));
    }
    return all;
}

}  // namespace tracewright
