#include "findings/wording.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"

namespace tracewright {

namespace {

// The same moment in each way there is, so that one chooses by looking.
Json samples(Instant now) {
    const CivilDate day{std::chrono::floor<std::chrono::days>(now.time_since_epoch())};
    const WallTime clock = day + std::chrono::hours{14} + std::chrono::minutes{40};
    return {{"dates",
             {{"day first", full_date(day, {})}, {"month first", full_date(day, {true, false})}}},
            {"hours", {{"24", clock_time(clock, {})}, {"12", clock_time(clock, {false, true})}}}};
}

Reply writing_reply(Asked& asked) {
    const auto writing = asked.store.writing();
    if (!writing) {
        return problem_of(writing.error());
    }
    Json json = Json::parse(writing_document(*writing));
    json["samples"] = samples(asked.acting.at);
    return json_reply(json);
}

Reply write_reply(Asked& asked) {
    const auto body = object_of(asked.request, {"dates", "hours", "glucose"});
    if (!body) {
        return body.error();
    }
    const auto writing = writing_changed({}, body->dump());
    if (!writing) {
        return problem(422, "unfit_writing", "There is no such way of writing", writing.error());
    }
    const auto set = asked.store.set_writing(*writing, asked.acting);
    return set ? no_content() : problem_of(set.error());
}

constexpr Route table[] = {
    {Method::get, "/api/writing", Asks::who_may_look, writing_reply},
    {Method::post, "/api/writing", Asks::who_may_change, write_reply},
};

}  // namespace

std::span<const Route> writing_routes() {
    return table;
}

}  // namespace tracewright
