#include "cli/escalation_records.hpp"

#include "cli/practice_options.hpp"
#include "coaching/client_clock.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

Exit say_escalations(PracticeStore& store, std::int64_t client, const ClientFacts& facts,
                     const Acting& acting, const Streams& streams) {
    if (const auto looked = record_escalations(store, client, facts, acting); !looked) {
        return said(looked.error(), streams);
    }
    const auto standing = standing_escalations(store, client, facts);
    if (!standing) {
        return said(standing.error(), streams);
    }
    const ZoneHistory clock = client_clock(facts);
    for (const StandingEscalation& one : *standing) {
        if (one.answer.empty()) {
            streams.out << fmt::format(
                "! {} ({}): {} {}\n", name_of(one.escalation.rung), one.number,
                escalation_sentence(one.escalation, clock, one.first_seen, acting.at),
                one.escalation.whom);
        }
    }
    return Exit::done;
}

}  // namespace tracewright
