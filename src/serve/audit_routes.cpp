// Who did and saw what.
#include "serve/asked_number.hpp"
#include "serve/audit_json.hpp"
#include "serve/route.hpp"

#include <limits>

namespace tracewright {

namespace {

constexpr std::int64_t at_once = 100;

// Lines and the names in them are of one moment: a client erased meanwhile is in neither.
Stored<Json> audit_of(SqlitePractice& store, std::int64_t before,
                      const std::optional<std::string>& handle) {
    return store.reading([&]() -> Stored<Json> {
        std::optional<std::int64_t> client;
        if (handle) {
            const auto found = store.client_called(*handle);
            const auto line = found.and_then([&](auto id) { return store.client_line(id); });
            if (!line) {
                return tl::make_unexpected(line.error());
            }
            if (line->handle != *handle) {  // a name would open it too
                return store_error(StoreErrorKind::not_found, "found no client of this handle");
            }
            client = line->id;
        }
        // One more than is given tells whether there are earlier ones.
        auto lines = store.audit_before(before, at_once + 1, client);
        if (!lines) {
            return tl::make_unexpected(lines.error());
        }
        const bool more = lines->size() > at_once;
        if (more) {
            lines->pop_back();
        }
        auto json = json_of_audit(store, *lines);
        if (json) {
            (*json)["earlier"] = more ? Json(lines->back().id) : Json();
        }
        return json;
    });
}

Reply audit_reply(Asked& asked) {
    const auto before = asked.target.asked("before");
    const auto line =
        before ? asked_number(*before) : std::optional(std::numeric_limits<std::int64_t>::max());
    if (!line) {
        return problem(422, "not_a_line", "There is no such line",
                       "before: found another text, expected the number of a line");
    }
    const auto json = audit_of(asked.store, *line, asked.target.asked("client"));
    return json ? json_reply(*json) : problem_of(json.error());
}

constexpr Route table[] = {
    {Method::get, "/api/audit", Asks::who_may_look, audit_reply, Holds::never, "audit_seen"},
};

}  // namespace

std::span<const Route> audit_routes() {
    return table;
}

}  // namespace tracewright
