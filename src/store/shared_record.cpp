#include "store/shared_record.hpp"

#include "store/client_review_input.hpp"
#include "store/standing_escalations.hpp"

#include <algorithm>

namespace tracewright {

Stored<SharedRecord> shared_record(PracticeStore& store, const ClientRecord& client,
                                   const Share& share, std::int64_t coach, Instant now) {
    auto input =
        client_review_input(store, client.id, client.facts, Interval{now - share.window, now});
    auto escalations = standing_escalations(store, client.id, client.facts);
    const auto line = store.client_line(client.id);
    const auto coaches = store.coaches();
    if (!input || !escalations || !line || !coaches) {
        return tl::make_unexpected(!input         ? input.error()
                                   : !escalations ? escalations.error()
                                   : !line        ? line.error()
                                                  : coaches.error());
    }
    SharedRecord record;
    record.input = std::move(*input);
    record.input.as_of = now;
    record.name = client.name;
    record.facts = client.facts;
    record.escalations = std::move(*escalations);
    record.last_reading = line->last_reading;
    if (const auto who = std::ranges::find(*coaches, coach, &CoachRecord::id);
        who != coaches->end()) {
        record.coach = who->coach.name;
        record.licence = who->coach.licence;
    }
    return record;
}

}  // namespace tracewright
