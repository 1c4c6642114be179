#pragma once

#include "access/coach.hpp"
#include "access/session_book.hpp"
#include "access/try_limit.hpp"
#include "serve/reply.hpp"
#include "serve/request.hpp"
#include "store/sqlite_practice.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

class ClientShelf;

/// What a handler is given: the request, read; the practice; who asks.
struct Asked {
    const Request& request;
    const RequestTarget& target;
    std::vector<std::string> values;  ///< of the pattern's braces, in order
    SqlitePractice& store;
    Acting acting;
    Coach coach;
    ClientShelf& shelf;                    ///< clients opened already
    std::uint64_t version;                 ///< of the client's data, as of before it is read
    TryLimit& key_tries;                   ///< of the recovery key
    Tick tick;                             ///< now, for limits
    std::optional<ClientRecord> client{};  ///< of a route below /api/clients/{handle}
    bool secure = false;                   ///< over TLS
};

/// Who may ask.
enum class Asks : std::uint8_t { anyone, who_may_look, who_may_change, owner };

/// How long a reply to a GET holds: it is then given again without asking the practice.
enum class Holds : std::uint8_t { never, while_unchanged, for_the_minute };

using Handler = Reply (*)(Asked&);

/// One line of what the service knows. Every one stands in docs/api/openapi.json; a test compares.
struct Route {
    Method method = Method::get;
    std::string_view pattern;  ///< "/api/clients/{handle}/days/{date}"
    Asks asks = Asks::who_may_look;
    Handler handler = nullptr;  ///< none: the service itself answers (session, events)
    Holds holds = Holds::never;
    /// What the audit notes, once for each session, client and window. Empty: nothing.
    const char* looked = nullptr;
    std::size_t longest_body = 1024UL * 1024;
    bool only_reads = false;  ///< sent as a change for its body's sake, yet nothing changes
};

// A part of the API adds its own table here and to `routes`.
std::span<const Route> practice_routes();  ///< caseload, clients
std::span<const Route> review_routes();    ///< review and its papers, measures
std::span<const Route> day_routes();       ///< days, day sheets, traces
std::span<const Route> record_routes();    ///< escalations, notes, promises
std::span<const Route> import_routes();    ///< files: seen before they are kept, kept, undone
std::span<const Route> diary_routes();     ///< a day's entries, messages, corrections
std::span<const Route> client_routes();    ///< a new client, facts told, copies, erasing
std::span<const Route> trust_routes();     ///< how far data go, stretches marked and unmarked
std::span<const Route> plan_routes();      ///< the plan, agreeing on one change, ending it
std::span<const Route> paper_routes();     ///< handout, talk sheet, letter, sheets of a wear
std::span<const Route> progress_routes();  ///< before and after, laboratory, the story so far
std::span<const Route> sensor_routes();    ///< how long wears last, how far they read from blood
std::span<const Route> trial_routes();     ///< trials: planned, kept, told, read
std::span<const Route> question_routes();  ///< what goes with it, asked in words
std::span<const Route> meal_routes();  ///< foods compared, rises to ask about, finger-prick pairs
std::span<const Route> writing_routes();      ///< how the practice writes dates, times, glucose
std::span<const Route> audit_routes();        ///< who did and saw what
std::span<const Route> safekeeping_routes();  ///< backup, recovery key
std::span<const Route> share_routes();        ///< shares: given, listed, revoked
std::span<const Route> share_page_routes();   ///< what the holder of a share sees
std::span<const Route> session_routes();      ///< sign-in, session, events: the service's own

/// All of them.
const std::vector<Route>& routes();

/// What the holder of a share is told while nobody has opened the practice since it was started.
Reply share_closed_for_now();

/// A route with what stood in its braces.
struct Found {
    const Route* route = nullptr;  ///< none: no such place
    std::vector<std::string> values;
    bool other_method = false;  ///< the place is known, but not for this method
};
/// Below a share any method and any depth leads to its page, which refuses and lists it.
Found route_of(Method method, const RequestTarget& target);

const char* name_of(Method method);

}  // namespace tracewright
