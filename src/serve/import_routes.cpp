#include "coaching/client_clock.hpp"
#include "serve/asked_intake.hpp"
#include "serve/asked_number.hpp"
#include "serve/brought_in_file.hpp"
#include "serve/import_json.hpp"
#include "serve/route.hpp"
#include "store/standing_escalations.hpp"

namespace tracewright {

namespace {

// A year of 1-minute readings of one sensor as text has about 20 MB.
constexpr std::size_t longest_file = 32UL * 1024 * 1024;

Reply preview_reply(Asked& asked) {
    auto file = asked_intake(asked.request, asked.target, asked.client->facts, asked.acting.at);
    if (!file) {
        return file.error();
    }
    const ZoneHistory clock = client_clock(asked.client->facts);
    if (file->intake.error) {
        return json_reply(json_of_import(file->intake, std::nullopt, clock));
    }
    const auto plan =
        asked.store.preview(asked.client->id, brought_in_file(file->intake), file->whose);
    return plan ? json_reply(json_of_import(file->intake, *plan, clock)) : problem_of(plan.error());
}

Reply bring_in_reply(Asked& asked) {
    const ClientRecord& client = *asked.client;
    auto file = asked_intake(asked.request, asked.target, client.facts, asked.acting.at);
    if (!file) {
        return file.error();
    }
    const ZoneHistory clock = client_clock(client.facts);
    Json json;
    std::int64_t import = 0;
    if (file->intake.error) {
        json = json_of_import(file->intake, std::nullopt, clock);
    } else {
        const auto outcome = asked.store.bring_in(client.id, brought_in_file(file->intake),
                                                  file->whose, asked.acting);
        if (!outcome) {
            return problem_of(outcome.error());
        }
        // At once, not only when somebody asks for a review.
        if (const auto looked =
                record_escalations(asked.store, client.id, client.facts, asked.acting);
            !looked) {
            return problem_of(looked.error());
        }
        json = json_of_import(file->intake, outcome->plan, clock);
        import = outcome->import;
    }
    json["import"] = import > 0 ? Json(import) : Json();
    return json_reply(json, import > 0 ? 201 : 200);
}

Reply imports_reply(Asked& asked) {
    const auto imports = asked.store.imports(asked.client->id);
    return imports ? json_reply({{"imports",
                                  json_of_imports(*imports, client_clock(asked.client->facts))}})
                   : problem_of(imports.error());
}

Reply undo_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    const auto imports = asked.store.imports(asked.client->id);
    if (!imports) {
        return problem_of(imports.error());
    }
    if (!number || std::ranges::find(*imports, *number, &ImportRecord::id) == imports->end()) {
        return no_such_number();
    }
    if (imports->back().id != *number) {
        return problem(422, "refused", "This import can't be undone",
                       "found a later import of this client, expected it to be undone first");
    }
    const ClientRecord& client = *asked.client;
    if (const auto undone = asked.store.undo(client.id, asked.acting); !undone) {
        return problem_of(undone.error());
    }
    // What the file alone told of waits for nobody any more.
    const auto looked = record_escalations(asked.store, client.id, client.facts, asked.acting);
    return looked ? no_content() : problem_of(looked.error());
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/imports", Asks::who_may_look, imports_reply, Holds::never,
     "imports_seen"},
    {Method::post, "/api/clients/{handle}/imports", Asks::who_may_change, bring_in_reply,
     Holds::never, nullptr, longest_file},
    {Method::post, "/api/clients/{handle}/imports/preview", Asks::who_may_change, preview_reply,
     Holds::never, nullptr, longest_file, true},
    {Method::post, "/api/clients/{handle}/imports/{id}/undo", Asks::who_may_change, undo_reply},
};

}  // namespace

std::span<const Route> import_routes() {
    return table;
}

}  // namespace tracewright
