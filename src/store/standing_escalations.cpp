#include "store/standing_escalations.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string_view>

namespace tracewright {

namespace {

std::string document_of(const Escalation& escalation) {
    return nlohmann::ordered_json{{"rung", static_cast<int>(escalation.rung)},
                                  {"at", escalation.at.time_since_epoch().count()},
                                  {"what", escalation.what},
                                  {"whom", escalation.whom}}
        .dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

Escalation escalation_of(const EscalationRecord& record) {
    const auto document = nlohmann::json::parse(record.document, nullptr, false);
    Escalation escalation;
    escalation.event = record.event;
    if (document.is_object()) {
        escalation.rung = static_cast<Rung>(document.value("rung", 1));
        escalation.at = Instant{std::chrono::seconds{document.value("at", std::int64_t{0})}};
        escalation.what = document.value("what", "");
        escalation.whom = document.value("whom", "");
    }
    return escalation;
}

// Of what is known, that which these events are not.
void forget_arising(std::vector<EscalationRecord>& records,
                    const std::vector<Escalation>& arising) {
    std::erase_if(records, [&](const EscalationRecord& record) {
        const Escalation kept = escalation_of(record);
        return std::ranges::any_of(arising,
                                   [&](const Escalation& one) { return is_kept_as(one, kept); });
    });
}

// Of a chain of lows its latest is told; a medicine that left the list ends the chain, not the
// lows.
void forget_chains(std::vector<EscalationRecord>& records, const std::vector<Escalation>& arising,
                   const std::vector<Escalation>& at_worst) {
    constexpr std::string_view chain = "lows_in_7_days@";
    const auto told_later = [&](const std::vector<Escalation>& all, Instant at) {
        return std::ranges::any_of(all, [&](const Escalation& one) {
            return one.event.starts_with(chain) && one.at >= at;
        });
    };
    std::erase_if(records, [&](const EscalationRecord& record) {
        const Instant at = escalation_of(record).at;
        return record.event.starts_with(chain) && !told_later(arising, at) &&
               told_later(at_worst, at);
    });
}

// Without an answer, and no more in what is kept: a file was undone, an entry struck out. What is
// changed of the facts takes nothing away: a low after a change is still one when the change has
// ended, and a list of medicines told later was not the list on that day for sure.
std::vector<std::int64_t> arising_no_more(std::vector<EscalationRecord> known,
                                          const std::vector<Escalation>& arising,
                                          const LadderInput& ladder) {
    std::erase_if(known, [](const EscalationRecord& record) { return !record.answers.empty(); });
    forget_arising(known, arising);
    if (!known.empty()) {
        const MedicineTimeline not_answered = client_medicines(ClientFacts{}, ladder.clock);
        const LadderInput at_worst{ladder.wears, ladder.diary, not_answered, ladder.clock,
                                   ladder.unit,  Instant{},    ladder.labs};
        const auto could_arise = escalations(at_worst);
        forget_arising(known, could_arise);
        forget_chains(known, arising, could_arise);
    }
    std::vector<std::int64_t> gone;
    for (const EscalationRecord& record : known) {
        gone.push_back(record.id);
    }
    return gone;
}

}  // namespace

Stored<void> record_escalations(PracticeStore& store, std::int64_t client, const ClientFacts& facts,
                                const Acting& acting) {
    auto stored = store.wears(client);
    const auto diary = store.diary(client);
    if (!stored || !diary) {
        return tl::make_unexpected(stored ? diary.error() : stored.error());
    }
    std::vector<Wear> wears;
    for (StoredWear& one : *stored) {
        wears.push_back(std::move(one.wear));
    }
    const ZoneHistory clock = client_clock(facts);
    const MedicineTimeline medicines = client_medicines(facts, clock);
    LadderInput ladder{wears, *diary, medicines, clock, facts.unit, {}, facts.labs};
    if (facts.agreed_change && facts.agreed_change->agreed_on) {
        ladder.change_agreed = clock.day_of(*facts.agreed_change->agreed_on).from;
    }
    const auto known = store.escalations(client);
    if (!known) {
        return tl::make_unexpected(known.error());
    }
    const std::vector<Escalation> arising = escalations(ladder);
    std::vector<EscalationRecord> records;
    for (const Escalation& escalation : arising) {
        EscalationRecord record{0, escalation.event, {}, document_of(escalation), {}};
        const bool stands = std::ranges::any_of(*known, [&](const EscalationRecord& one) {
            return is_kept_as(escalation, escalation_of(one)) && one.document == record.document;
        });
        if (!stands) {
            records.push_back(std::move(record));
        }
    }
    // A look that finds nothing new is no change: who listens for changes would look again.
    if (!records.empty()) {
        if (auto put = store.put_escalations(client, records, acting); !put) {
            return put;
        }
    }
    const auto gone = arising_no_more(*known, arising, ladder);
    return gone.empty() ? Stored<void>{} : store.withdraw_escalations(client, gone, acting);
}

Stored<std::vector<StandingEscalation>> standing_escalations(PracticeStore& store,
                                                             std::int64_t client,
                                                             const ClientFacts& facts,
                                                             std::optional<Interval> window) {
    const auto records = store.escalations(client);
    if (!records) {
        return tl::make_unexpected(records.error());
    }
    const ZoneHistory clock = client_clock(facts);
    std::vector<StandingEscalation> standing;
    for (const EscalationRecord& record : *records) {
        StandingEscalation one{escalation_of(record), record.first_seen, {}};
        one.number = record.id;
        if (!record.answers.empty()) {
            const AcknowledgementRecord& answer = record.answers.back();
            one.answer =
                fmt::format("{}, {}: {}", day_and_time(clock.wall_time(answer.at), clock.writing()),
                            answer.by, answer.done);
        }
        if (!window || window->contains(one.escalation.at)) {
            standing.push_back(std::move(one));
        }
    }
    std::ranges::stable_sort(
        standing, [](const StandingEscalation& a, const StandingEscalation& b) {
            return a.escalation.rung != b.escalation.rung ? a.escalation.rung < b.escalation.rung
                                                          : a.escalation.at > b.escalation.at;
        });
    return standing;
}

}  // namespace tracewright
