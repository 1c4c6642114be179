#pragma once

#include "coaching/client_facts.hpp"
#include "coaching/share.hpp"

#include <cstdint>
#include <string_view>

namespace tracewright {

/// What a holder asks for.
struct ShareRequest {
    enum class Act : std::uint8_t { look, change };

    std::string_view client;  ///< handle
    SharedKind kind = SharedKind::hours_in_range;
    Interval data;  ///< what stretch of data; an empty one asks for nothing and is refused
    Act act = Act::look;
};

/// Open, or the first reason against it; the reason is for the practice's own list of look-ups.
enum class ShareAnswer : std::uint8_t {
    open,
    not_given_yet,
    revoked,
    ended,
    no_consent,
    another_client,
    nothing_can_be_changed,
    not_in_scope,
    turned_down,  ///< by the eating screen, safety rule 12
    outside_window
};

/// The one place that decides what a holder sees, asked anew at every request, so that an end holds
/// at the next one. `facts` are of the share's own client and as they are now; `today` is the date
/// of `now` on that client's wall. Consent that was never given, begins later, ended (its last day
/// still counts) or was withdrawn closes every share. A positive or unanswered eating screen closes
/// hours in range, day sheets, food amounts, meal photos and weight whatever was given; lows,
/// medicines and the letter stay, for whoever must help.
ShareAnswer answer_to_holder(const Share& share, const ClientFacts& facts,
                             const ShareRequest& request, Instant now, CivilDate today);

/// What of a share is open at this moment, by the same decision asked of each kind.
struct OpenKinds {
    SharedKinds kinds;
    ShareAnswer answer = ShareAnswer::not_in_scope;  ///< open if one is; else the reason
};
OpenKinds open_kinds(const Share& share, const ClientFacts& facts, Instant now, CivilDate today);

/// The kinds that the eating screen closes now in every share of a client, whatever was given.
SharedKinds closed_by_eating_screen(const ClientFacts& facts);

/// Whether the consent holds on this date.
bool consent_holds(const Consent& consent, CivilDate today);

/// For the list of look-ups: "open", "revoked". Bears nothing of the client.
const char* name_of(ShareAnswer answer);

/// What a refused holder is told: the same words for every reason, so that nothing is learnt from
/// them. Empty where open.
std::string_view words_for_holder(ShareAnswer answer);

}  // namespace tracewright
