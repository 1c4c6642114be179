#include "coaching/client_clock.hpp"
#include "render/caseload_json.hpp"
#include "serve/care_json.hpp"
#include "serve/client_shelf.hpp"
#include "serve/day_json.hpp"
#include "serve/route.hpp"
#include "store/client_document.hpp"

#include <algorithm>

namespace tracewright {

namespace {

Reply caseload_reply(Asked& asked) {
    const auto lines = asked.shelf.caseload().lines(asked.store, asked.acting.at);
    return lines ? json_reply(json_of_caseload(*lines, asked.acting.at))
                 : problem_of(lines.error());
}

Reply clients_reply(Asked& asked) {
    const auto clients = asked.store.clients();
    if (!clients) {
        return problem_of(clients.error());
    }
    const ZoneHistory utc(Zone::fixed(std::chrono::seconds{0}));
    Json list = Json::array();
    for (const ClientLine& line : *clients) {
        list.push_back({{"handle", line.handle},
                        {"name", line.name},
                        {"last_reading",
                         line.last_reading ? Json(iso_time(*line.last_reading, utc)) : Json()}});
    }
    return json_reply({{"clients", std::move(list)}});
}

Reply client_reply(Asked& asked) {
    const ClientRecord& client = *asked.client;
    const auto line = asked.store.client_line(client.id);
    if (!line) {
        return problem_of(line.error());
    }
    return json_reply(
        {{"handle", client.handle},
         {"name", client.name},
         {"revision", client.revision},
         {"last_reading",
          json_of_last_reading(line->last_reading, client_clock(client.facts), asked.acting.at)},
         {"facts", Json::parse(client_document(client.facts))},
         {"care", json_of_care(client.facts, asked.coach.licence, asked.acting.at)}});
}

constexpr Route table[] = {
    {Method::get, "/api/caseload", Asks::who_may_look, caseload_reply, Holds::never,
     "caseload_seen"},
    {Method::get, "/api/clients", Asks::who_may_look, clients_reply},
    {Method::get, "/api/clients/{handle}", Asks::who_may_look, client_reply, Holds::never,
     "client_seen"},
};

}  // namespace

std::span<const Route> practice_routes() {
    return table;
}

}  // namespace tracewright
