#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"
#include "serve/asked_number.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "store/standing_escalations.hpp"
#include "time/day_text.hpp"

namespace tracewright {

namespace {

Reply escalations_reply(Asked& asked) {
    const ClientRecord& client = *asked.client;
    if (const auto looked = record_escalations(asked.store, client.id, client.facts, asked.acting);
        !looked) {
        return problem_of(looked.error());
    }
    const auto standing = standing_escalations(asked.store, client.id, client.facts);
    if (!standing) {
        return problem_of(standing.error());
    }
    const ZoneHistory clock = client_clock(client.facts);
    Json list = Json::array();
    for (const StandingEscalation& one : *standing) {
        list.push_back({{"id", one.number},
                        {"rung", name_of(one.escalation.rung)},
                        {"at", iso_time(one.escalation.at, clock)},
                        {"first_seen", iso_time(one.first_seen, clock)},
                        {"sentence", escalation_sentence(one.escalation, clock, one.first_seen,
                                                         asked.acting.at)},
                        {"whom", one.escalation.whom},
                        {"answer", one.answer.empty() ? Json() : Json(one.answer)}});
    }
    return json_reply({{"escalations", std::move(list)}});
}

Reply acknowledge_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"by", "done"});
    if (!fields) {
        return fields.error();
    }
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    const auto done = asked.store.acknowledge(asked.client->id, *number, fields->at("by"),
                                              fields->at("done"), asked.acting);
    return done ? no_content() : problem_of(done.error());
}

Reply notes_reply(Asked& asked) {
    const auto notes = asked.store.notes(asked.client->id);
    if (!notes) {
        return problem_of(notes.error());
    }
    const ZoneHistory clock = client_clock(asked.client->facts);
    Json list = Json::array();
    for (const NoteRecord& note : *notes) {
        list.push_back({{"id", note.id},
                        {"at", iso_time(note.at, clock)},
                        {"on", full_date(clock.date_at(note.at), clock.writing())},
                        {"text", note.text}});
    }
    return json_reply({{"notes", std::move(list)}});
}

Reply add_note_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"text"});
    if (!fields) {
        return fields.error();
    }
    const auto added = asked.store.add_note(asked.client->id, fields->at("text"), asked.acting);
    return added ? json_reply({{"id", *added}}, 201) : problem_of(added.error());
}

Reply promises_reply(Asked& asked) {
    const auto promises = asked.store.promises(asked.client->id);
    if (!promises) {
        return problem_of(promises.error());
    }
    const ZoneHistory clock = client_clock(asked.client->facts);
    Json list = Json::array();
    for (const PromiseRecord& promise : *promises) {
        list.push_back(
            {{"id", promise.id},
             {"text", promise.text},
             {"due", day_text(promise.due)},
             {"due_words", day_words(promise.due, clock.writing())},
             {"made_at", iso_time(promise.made_at, clock)},
             {"kept_at", promise.kept_at ? Json(iso_time(*promise.kept_at, clock)) : Json()},
             {"kept_words", promise.kept_at
                                ? Json(day_words(clock.date_at(*promise.kept_at), clock.writing()))
                                : Json()}});
    }
    return json_reply({{"promises", std::move(list)}});
}

Reply add_promise_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"text", "due"});
    if (!fields) {
        return fields.error();
    }
    const auto due = day_of_text(fields->at("due"));
    if (!due) {
        return problem(422, "not_a_day", "That is no day",
                       "due: found another text, expected a day such as 2026-03-02");
    }
    const auto added =
        asked.store.add_promise(asked.client->id, fields->at("text"), *due, asked.acting);
    return added ? json_reply({{"id", *added}}, 201) : problem_of(added.error());
}

Reply keep_promise_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    const auto kept = asked.store.keep_promise(asked.client->id, *number, asked.acting);
    return kept ? no_content() : problem_of(kept.error());
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/escalations", Asks::who_may_look, escalations_reply,
     Holds::never, "escalations_seen"},
    {Method::post, "/api/clients/{handle}/escalations/{id}/acknowledge", Asks::who_may_change,
     acknowledge_reply},
    {Method::get, "/api/clients/{handle}/notes", Asks::who_may_look, notes_reply, Holds::never,
     "notes_seen"},
    {Method::post, "/api/clients/{handle}/notes", Asks::who_may_change, add_note_reply},
    {Method::get, "/api/clients/{handle}/promises", Asks::who_may_look, promises_reply,
     Holds::never, "promises_seen"},
    {Method::post, "/api/clients/{handle}/promises", Asks::who_may_change, add_promise_reply},
    {Method::post, "/api/clients/{handle}/promises/{id}/keep", Asks::who_may_change,
     keep_promise_reply},
};

}  // namespace

std::span<const Route> record_routes() {
    return table;
}

}  // namespace tracewright
