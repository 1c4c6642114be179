#include "cli/escalation_records.hpp"
#include "cli/practice_commands.hpp"
#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"
#include "time/day_text.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

std::string utc(Instant at) {
    return date::format(
        "%F %R UTC", date::floor<std::chrono::minutes>(date::sys_seconds{at.time_since_epoch()}));
}

Exit list_promises(OpenClient& open, const Streams& streams) {
    const auto promises = open.practice.store->promises(open.client);
    if (!promises) {
        return said(promises.error(), streams);
    }
    for (const PromiseRecord& promise : *promises) {
        streams.out << fmt::format("{}. by {}: {}{}\n", promise.id, day_text(promise.due),
                                   promise.text,
                                   promise.kept_at ? ", kept " + utc(*promise.kept_at) : "");
    }
    return Exit::done;
}

}  // namespace

Exit note(const PracticeOptions& options, const PracticeWords& words, const Streams& streams) {
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    if (words.text.empty()) {
        const auto notes = open->practice.store->notes(open->client);
        if (!notes) {
            return said(notes.error(), streams);
        }
        for (const NoteRecord& one : *notes) {
            streams.out << fmt::format("{}. {}: {}\n", one.id, utc(one.at), one.text);
        }
        return Exit::done;
    }
    const auto added =
        open->practice.store->add_note(open->client, words.text, open->practice.acting);
    if (!added) {
        return said(added.error(), streams);
    }
    streams.out << fmt::format("note {} was added.\n", *added);
    return Exit::done;
}

Exit promise(const PracticeOptions& options, const PracticeWords& words, const Streams& streams) {
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    if (words.kept) {
        const auto kept =
            open->practice.store->keep_promise(open->client, *words.kept, open->practice.acting);
        if (!kept) {
            return said(kept.error(), streams);
        }
        streams.out << fmt::format("promise {} was kept.\n", *words.kept);
        return Exit::done;
    }
    if (words.text.empty()) {
        return list_promises(*open, streams);
    }
    const auto due = day_of_text(words.due);
    if (!due) {
        streams.err << "tracewright: found no day for the promise, expected --by DATE such as "
                       "2026-03-02\n";
        return Exit::wrong_usage;
    }
    const auto added =
        open->practice.store->add_promise(open->client, words.text, *due, open->practice.acting);
    if (!added) {
        return said(added.error(), streams);
    }
    streams.out << fmt::format("promise {} was made.\n", *added);
    return Exit::done;
}

Exit acknowledge(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams) {
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    PracticeStore& store = *open->practice.store;
    if (words.number) {
        const auto answered = store.acknowledge(open->client, *words.number, words.by, words.done,
                                                open->practice.acting);
        if (!answered) {
            return said(answered.error(), streams);
        }
        streams.out << fmt::format("escalation {} was acknowledged.\n", *words.number);
        return Exit::done;
    }
    const auto record = store.client(open->client);
    if (!record) {
        return said(record.error(), streams);
    }
    const auto standing = standing_escalations(store, open->client, record->facts);
    if (!standing) {
        return said(standing.error(), streams);
    }
    const ZoneHistory clock = client_clock(record->facts);
    for (const StandingEscalation& one : *standing) {
        streams.out << fmt::format(
            "{}. {}: {}\n   {}\n", one.number, name_of(one.escalation.rung),
            escalation_sentence(one.escalation, clock, one.first_seen, open->practice.acting.at),
            one.answer.empty() ? "not acknowledged yet" : "acknowledged " + one.answer);
    }
    if (standing->empty()) {
        streams.out << "Nothing was escalated. Escalations are found when files are brought in and "
                       "when a review is made.\n";
    }
    return Exit::done;
}

}  // namespace tracewright
