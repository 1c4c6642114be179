#include "coaching/client_clock.hpp"
#include "serve/asked_export.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "store/client_document.hpp"
#include "store/new_client.hpp"
#include "store/standing_escalations.hpp"
#include "time/day_text.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using Object = nlohmann::json;

// What this place changes; changes agreed and trials have places with gates of their own.
constexpr std::array<std::string_view, 17> facts_told_here{
    "why_they_came", "born_year", "told_type",
    "diagnosed_on",  "language",  "unit",
    "zones",         "contacts",  "medicines_asked_on",
    "medicines",     "labs",      "prescriber_answers",
    "cautions",      "goals",     "consent",
    "sessions",      "sensors"};

Reply unfit(const std::string& detail) {
    return problem(422, "unfit_fact", "That is no such fact", detail);
}

// The patch as it is applied: who tells the medicines has asked about them today.
tl::expected<ClientFacts, Reply> changed_by(const ClientFacts& facts, Object changes, Instant now) {
    if (!changes.is_object()) {
        return tl::make_unexpected(unfit("changes: found no object, expected one of facts"));
    }
    for (const auto& [key, value] : changes.items()) {
        if (std::ranges::find(facts_told_here, key) == facts_told_here.end()) {
            return tl::make_unexpected(unfit("changes: found a key that is not told here"));
        }
    }
    if (changes.contains("medicines") && !changes.contains("medicines_asked_on")) {
        changes["medicines_asked_on"] = day_text(client_clock(facts).date_at(now));
    }
    auto changed = client_facts_changed(facts, changes.dump());
    if (!changed) {
        return tl::make_unexpected(unfit(changed.error()));
    }
    if (surely_under_18(*changed, now)) {
        return tl::make_unexpected(
            unfit("found a year of birth under 18, expected a grown-up: under 18 is not taken on"));
    }
    return std::move(*changed);
}

Reply add_client_reply(Asked& asked) {
    const auto body = object_of(asked.request, {"name", "changes"});
    if (!body) {
        return body.error();
    }
    const Object& name = body->at("name");
    if (!name.is_string() || name.get_ref<const std::string&>().empty()) {
        return unfit("name: found none, expected a name");
    }
    const auto writing = asked.store.writing();
    if (!writing) {
        return problem_of(writing.error());
    }
    ClientFacts nothing_told;
    nothing_told.unit = writing->unit;
    const auto facts = changed_by(nothing_told, body->at("changes"), asked.acting.at);
    const auto clients = asked.store.clients();
    if (!facts || !clients) {
        return facts ? problem_of(clients.error()) : facts.error();
    }
    const std::string handle = free_handle(*clients);
    const auto added =
        asked.store.add_client(handle, name.get<std::string>(), *facts, asked.acting);
    return added ? json_reply({{"handle", handle}}, 201) : problem_of(added.error());
}

Reply change_facts_reply(Asked& asked) {
    const auto body = object_of(asked.request, {"revision", "name", "changes"});
    if (!body) {
        return body.error();
    }
    ClientRecord client = *asked.client;
    const Object& revision = body->at("revision");
    const Object& name = body->at("name");
    if (!revision.is_number_integer() || !name.is_string()) {
        return unfit("found no revision or name, expected those that were read");
    }
    if (name.get_ref<const std::string&>().empty()) {
        return unfit("name: found none, expected a name");
    }
    auto facts = changed_by(client.facts, body->at("changes"), asked.acting.at);
    if (!facts) {
        return facts.error();
    }
    client.facts = std::move(*facts);
    client.name = name.get<std::string>();
    client.revision = revision.get<std::int64_t>();
    const auto changed = asked.store.change_client(client, asked.acting);
    if (!changed) {
        return problem_of(changed.error());
    }
    // A medicine that is told makes lows that were seen before an event, at once.
    if (const auto looked = record_escalations(asked.store, client.id, client.facts, asked.acting);
        !looked) {
        return problem_of(looked.error());
    }
    // Each change counts one up: who keeps more at once states the one it was kept as.
    return json_reply({{"revision", client.revision + 1}});
}

constexpr Route table[] = {
    {Method::post, "/api/clients", Asks::who_may_change, add_client_reply},
    {Method::post, "/api/clients/{handle}/facts", Asks::who_may_change, change_facts_reply},
    {Method::get, "/api/clients/{handle}/export/{file}", Asks::who_may_change, export_reply},
    {Method::post, "/api/clients/{handle}/erase", Asks::owner, erase_reply},
};

}  // namespace

std::span<const Route> client_routes() {
    return table;
}

}  // namespace tracewright
