#include "access/share_answer.hpp"

#include "coaching/eating_care.hpp"

namespace tracewright {

namespace {

bool eating_screen_closes(SharedKind kind) {
    switch (kind) {
        case SharedKind::hours_in_range:
        case SharedKind::day_sheets:
        case SharedKind::food_amounts:
        case SharedKind::meal_photos:
        case SharedKind::weight:
        case SharedKind::letter:  // it tells the hours in range; printed it still goes to the
                                  // clinic
            return true;
        case SharedKind::lows:
        case SharedKind::diary:
        case SharedKind::mood:
        case SharedKind::notes:
        case SharedKind::medicines:
            return false;
    }
    return true;
}

bool inside_window(const Share& share, const Interval& data, Instant now) {
    return data.from < data.to && now - share.window <= data.from && data.to <= now;
}

}  // namespace

SharedKinds closed_by_eating_screen(const ClientFacts& facts) {
    SharedKinds closed;
    for (const SharedKind kind : every_shared_kind) {
        if (numbers_turned_down(facts.cautions.eating) && eating_screen_closes(kind)) {
            closed.add(kind);
        }
    }
    return closed;
}

bool consent_holds(const Consent& consent, CivilDate today) {
    const bool given = consent.given_on && *consent.given_on <= today;
    const bool over = consent.until && *consent.until < today;
    const bool withdrawn = consent.withdrawn_on && *consent.withdrawn_on <= today;
    return given && !over && !withdrawn;
}

ShareAnswer answer_to_holder(const Share& share, const ClientFacts& facts,
                             const ShareRequest& request, Instant now, CivilDate today) {
    if (share.revoked_at && *share.revoked_at <= now) {
        return ShareAnswer::revoked;
    }
    if (now < share.given_at) {
        return ShareAnswer::not_given_yet;
    }
    if (share.until <= now) {
        return ShareAnswer::ended;
    }
    if (!consent_holds(facts.consent, today)) {
        return ShareAnswer::no_consent;
    }
    if (request.client != share.client) {
        return ShareAnswer::another_client;
    }
    if (request.act != ShareRequest::Act::look) {
        return ShareAnswer::nothing_can_be_changed;
    }
    if (!share.kinds.has(request.kind)) {
        return ShareAnswer::not_in_scope;
    }
    if (closed_by_eating_screen(facts).has(request.kind)) {
        return ShareAnswer::turned_down;
    }
    if (!inside_window(share, request.data, now)) {
        return ShareAnswer::outside_window;
    }
    return ShareAnswer::open;
}

OpenKinds open_kinds(const Share& share, const ClientFacts& facts, Instant now, CivilDate today) {
    OpenKinds open;
    for (const SharedKind kind : every_shared_kind) {
        if (!share.kinds.has(kind)) {
            continue;
        }
        const ShareAnswer answer = answer_to_holder(
            share, facts, {share.client, kind, {now - share.window, now}}, now, today);
        if (answer == ShareAnswer::open) {
            open.kinds.add(kind);
        }
        if (open.answer != ShareAnswer::open) {
            open.answer = answer;
        }
    }
    return open;
}

const char* name_of(ShareAnswer answer) {
    switch (answer) {
        case ShareAnswer::open:
            return "open";
        case ShareAnswer::not_given_yet:
            return "not given yet";
        case ShareAnswer::revoked:
            return "revoked";
        case ShareAnswer::ended:
            return "ended";
        case ShareAnswer::no_consent:
            return "no consent";
        case ShareAnswer::another_client:
            return "another client";
        case ShareAnswer::nothing_can_be_changed:
            return "nothing can be changed";
        case ShareAnswer::not_in_scope:
            return "not in scope";
        case ShareAnswer::turned_down:
            return "turned down";
        case ShareAnswer::outside_window:
            return "outside the window";
    }
    return "";
}

std::string_view words_for_holder(ShareAnswer answer) {
    return answer == ShareAnswer::open ? "" : "Not allowed.";
}

}  // namespace tracewright
