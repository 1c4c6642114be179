#include "serve/share_json.hpp"

#include "access/share_answer.hpp"
#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"

namespace tracewright {

namespace {

Json json_of_share(const ShareRecord& record, const ZoneHistory& clock, Instant now) {
    const Share& share = record.share;
    Json looks = Json::array();
    for (const ShareLook& look : record.looks) {
        looks.push_back({{"at", iso_time(look.at, clock)},
                         {"label", day_and_time(clock.wall_time(look.at), clock.writing())},
                         {"asked", look.asked},
                         {"answer", look.answer}});
    }
    const auto& revoked = share.revoked_at;
    return {{"id", record.id},
            {"recipient", share.recipient},
            {"purpose", share.purpose},
            {"kinds", json_of(share.kinds)},
            {"days", share.window.count()},
            {"given_at", iso_time(share.given_at, clock)},
            {"given", full_date(clock.date_at(share.given_at), clock.writing())},
            {"until", iso_time(share.until, clock)},
            {"last_day",
             full_date(clock.date_at(share.until - std::chrono::seconds{1}), clock.writing())},
            {"revoked_at", revoked ? Json(iso_time(*revoked, clock)) : Json()},
            {"revoked",
             revoked ? Json(day_and_time(clock.wall_time(*revoked), clock.writing())) : Json()},
            {"state", state_of(share, now)},
            {"looks", std::move(looks)}};
}

}  // namespace

Json json_of(const SharedKinds& kinds) {
    Json names = Json::array();
    for (const SharedKind kind : every_shared_kind) {
        if (kinds.has(kind)) {
            names.push_back(name_of(kind));
        }
    }
    return names;
}

const char* state_of(const Share& share, Instant now) {
    return share.revoked_at ? "revoked" : share.until <= now ? "ended" : "open";
}

Json json_of_shares(std::span<const ShareRecord> shares, const ClientFacts& facts, Instant now) {
    const ZoneHistory clock = client_clock(facts);
    Json list = Json::array();
    for (const ShareRecord& record : shares) {
        list.push_back(json_of_share(record, clock, now));
    }
    return {{"shares", std::move(list)},
            {"consent_holds", consent_holds(facts.consent, clock.date_at(now))},
            {"closed_kinds", json_of(closed_by_eating_screen(facts))}};
}

}  // namespace tracewright
