#include "serve/service.hpp"

#include "serve/page_files.hpp"

#include <algorithm>

namespace tracewright {

namespace {

bool changes_something(Method method) {
    return method != Method::get && method != Method::head;
}

Reply not_signed_in() {
    return problem(401, "not_signed_in", "Nobody is signed in",
                   "Sign in first, or again: the sitting has ended");
}

Reply too_busy() {
    Reply reply = problem(503, "too_busy", "Too much waits already", "Ask again in a moment");
    reply.headers.emplace_back("Retry-After", "1");
    return reply;
}

// The window a request speaks of, as the audit tells looks apart.
std::string window_of(const RequestTarget& target, const Found& found) {
    std::string window;
    for (std::size_t i = 1; i < found.values.size(); ++i) {
        window += "/" + found.values[i];
    }
    return window + "?" + target.asked("from").value_or("") + "&" +
           target.asked("to").value_or("") + "&" + target.asked("days").value_or("");
}

std::string look_of(const RequestTarget& target, const Found& found) {
    const std::string client = found.values.empty() ? std::string() : found.values.front();
    return std::string(found.route->looked) + " " + client + " " + window_of(target, found);
}

// A reader who looks makes no review: the coach is still owed to the client.
const char* deed_of(const Route& route, const Coach& coach) {
    constexpr const char* readers_deed = "review_seen";
    const bool review = std::string_view(route.looked) == "review_made";
    return review && coach.role == CoachRole::reader ? readers_deed : route.looked;
}

bool may(const Coach& coach, Asks asks) {
    switch (asks) {
        case Asks::anyone:
        case Asks::who_may_look:
            return true;
        case Asks::who_may_change:
            return coach.role != CoachRole::reader;
        case Asks::owner:
            return coach.role == CoachRole::owner;
    }
    return false;
}

}  // namespace

Json session_json(const Coach& coach, const std::string& token) {
    return {{"coach", coach.handle},
            {"name", coach.name},
            {"role", name_of(coach.role)},
            {"licence", name_of(coach.licence)},
            {"token", token}};
}

Service::Service(ServiceOptions options, Clocks clocks)
    : options_(std::move(options)),
      clocks_(std::move(clocks)),
      origin_scheme_(options_.secure ? "https://" : "http://"),
      sessions_(options_.sessions),
      tries_(options_.tries),
      key_tries_(options_.tries),
      kept_(options_.most_kept_bytes),
      practice_desk_(options_.workers, options_.most_waiting),
      sign_in_desk_(1, 16) {}

Service::~Service() {
    stop();
}

void Service::answer_for(std::vector<std::string> hosts) {
    hosts_ = std::move(hosts);
}

void Service::stop() {
    hub_.end_all();
    sign_in_desk_.stop();
    practice_desk_.stop();
    watcher_.request_stop();
    watch_bell_.notify_all();
    if (watcher_.joinable()) {
        watcher_.join();
    }
}

std::size_t Service::longest_body(const Request& request) const {
    const auto target = target_of(request.target);
    const Found found = target ? route_of(request.method, *target) : Found{};
    return found.route != nullptr && changes_something(request.method) ? found.route->longest_body
                                                                       : 64UL * 1024;
}

std::optional<Reply> Service::refused_unread(const Request& request) {
    if (auto refused = refusal(request)) {
        return refused;
    }
    const auto target = target_of(request.target);
    const Found found = target ? route_of(request.method, *target) : Found{};
    std::optional<Session> session;
    std::optional<Coach> coach;
    return found.route == nullptr ? std::nullopt
                                  : refused_to(request, *found.route, session, coach);
}

// What no request may be, whoever sends it.
std::optional<Reply> Service::refusal(const Request& request) const {
    if (!request.one_host || std::ranges::find(hosts_, request.host) == hosts_.end()) {
        return problem(421, "foreign_host", "This is another host",
                       "found a Host that is not this service's, expected the address it printed");
    }
    if (!request.origin.empty() &&
        (!request.origin.starts_with(origin_scheme_) ||
         std::string_view(request.origin).substr(origin_scheme_.size()) != request.host)) {
        return problem(403, "foreign_origin", "Another page may not ask",
                       "found an Origin that is not this service's");
    }
    if (request.fetch_site == "cross-site" && changes_something(request.method)) {
        return problem(403, "foreign_origin", "Another page may not ask",
                       "found a request from another site");
    }
    if (request.method == Method::other) {
        return problem(405, "unknown_method", "No such method here",
                       "expected GET, HEAD, POST, PUT or DELETE");
    }
    return std::nullopt;
}

std::optional<Coach> Service::coach_of(std::int64_t id) {
    const std::scoped_lock lock(coaches_mutex_);
    const auto found = coaches_.find(id);
    return found == coaches_.end() || found->second.left ? std::nullopt
                                                         : std::optional(found->second);
}

// Whether this request may go to this route; sets who asks.
std::optional<Reply> Service::refused_to(const Request& request, const Route& route,
                                         std::optional<Session>& session,
                                         std::optional<Coach>& coach) {
    if (route.asks == Asks::anyone) {
        return std::nullopt;
    }
    const auto secret = cookie_called("session", request.cookies);
    session = secret ? sessions_.of(*secret, clocks_.tick()) : std::nullopt;
    coach = session ? coach_of(session->coach) : std::nullopt;
    if (!coach) {
        return not_signed_in();
    }
    if (changes_something(request.method) && !same_secret(request.token, session->token)) {
        return problem(
            403, "missing_token", "The request lacks its token",
            "found no X-Tracewright-Token of this session, expected the one it was given");
    }
    if (!may(*coach, route.asks)) {
        return problem(403, "not_allowed", "This coach may not do it",
                       std::string("found a coach who is ") + name_of(coach->role));
    }
    return std::nullopt;
}

Reply Service::page_file(const Request& request, const RequestTarget& target) const {
    const std::string path = target.path();
    const bool a_view = path == "/" || path.find('.') == std::string::npos;
    const std::string_view wanted = a_view ? "/index.html" : std::string_view(path);
    const auto files = page_files();
    const auto file =
        std::ranges::find_if(files, [&](const PageFile& one) { return one.path == wanted; });
    if (file == files.end()) {
        return problem(404, "not_found", "There is no such place", "found nothing under this path");
    }
    const auto type_of = [](std::string_view name) {
        return name.ends_with(".html")  ? "text/html; charset=utf-8"
               : name.ends_with(".js")  ? "text/javascript; charset=utf-8"
               : name.ends_with(".css") ? "text/css; charset=utf-8"
               : name.ends_with(".svg") ? "image/svg+xml"
                                        : "application/octet-stream";
    };
    Reply reply;
    reply.content_type = type_of(wanted);
    reply.keeps = true;
    const std::string tag =
        "\"" + std::to_string(std::hash<std::string_view>{}(file->bytes)) + "\"";
    reply.headers.emplace_back("ETag", tag);
    if (request.if_none_match == tag) {
        reply.status = 304;
        return reply;
    }
    reply.body = std::make_shared<const std::string>(file->bytes);
    return reply;
}

// Session, signing out, events: what needs no practice.
std::optional<Reply> Service::own(const Request& request, const Route& route,
                                  const Session& session, const Coach& coach) {
    if (route.pattern == "/api/session") {
        return json_reply(session_json(coach, session.token));
    }
    if (route.pattern == "/api/sign-out") {
        sessions_.close(session.number);
        hub_.end_unless([&](std::uint64_t number) { return number != session.number; });
        Reply reply = no_content();
        reply.headers.emplace_back("Set-Cookie",
                                   "session=; HttpOnly; SameSite=Strict; Path=/; Max-Age=0");
        return reply;
    }
    if (route.pattern == "/api/events") {
        Reply reply;
        if (request.method != Method::head) {
            reply.events = hub_.open(session.number);
        }
        return reply;
    }
    return std::nullopt;
}

std::string Service::kept_as(const Request& request, const Route& route) const {
    return route.holds == Holds::for_the_minute
               ? request.target + " " +
                     std::to_string(clocks_.now().time_since_epoch().count() / 60)
               : request.target;
}

std::optional<Reply> Service::at_once(const Request& request) {
    if (auto refused = refusal(request)) {
        return refused;
    }
    const auto target = target_of(request.target);
    if (!target) {
        return problem(400, "malformed_target", "That is no place here",
                       "found a path or query that can't be read");
    }
    const Found found = route_of(request.method, *target);
    if (found.route == nullptr) {
        const bool api = !target->segments.empty() &&
                         (target->segments.front() == "api" || target->segments.front() == "share");
        if (found.other_method || (!api && changes_something(request.method))) {
            return problem(405, "unknown_method", "No such method here",
                           "found a method that this place does not know");
        }
        return api ? problem(404, "not_found", "There is no such place",
                             "found nothing under this path")
                   : page_file(request, *target);
    }
    const Route& route = *found.route;
    std::optional<Session> session;
    std::optional<Coach> coach;
    if (auto refused = refused_to(request, route, session, coach)) {
        return refused;
    }
    if (!session) {
        return std::nullopt;
    }
    if (route.handler == nullptr) {
        return own(request, route, *session, *coach);
    }
    if (route.holds != Holds::never &&
        (route.looked == nullptr ||
         sessions_.has_looked(session->number, look_of(*target, found)))) {
        return kept_.of(kept_as(request, route), changes_.version_of(found.values.front()));
    }
    return std::nullopt;
}

void Service::answer(const std::shared_ptr<const Request>& request,
                     const std::function<void(Reply)>& done) {
    const auto target = target_of(request->target);
    const Found found = target ? route_of(request->method, *target) : Found{};
    std::optional<Session> session;
    std::optional<Coach> coach;
    if (found.route == nullptr) {
        done(problem(404, "not_found", "There is no such place", "found nothing under this path"));
        return;
    }
    if (auto refused = refused_to(*request, *found.route, session, coach)) {
        done(std::move(*refused));
        return;
    }
    if (found.route->handler == nullptr) {
        sign_in(request, done);
        return;
    }
    if (!open_) {
        done(found.route->asks == Asks::anyone ? share_closed_for_now() : not_signed_in());
        return;
    }
    const bool given = practice_desk_.give(
        [this, request, target, found, session, coach, done](std::size_t thread) {
            done(from_practice(*request, *target, found, session, coach, workers_[thread]));
        },
        [done] { done(fault_of_ours()); });
    if (!given) {
        done(too_busy());
    }
}

Reply Service::from_practice(const Request& request, const RequestTarget& target,
                             const Found& found, const std::optional<Session>& session,
                             const std::optional<Coach>& coach, Worker& worker) {
    SqlitePractice& store = *worker.store;
    const Route& route = *found.route;
    const bool of_client = route.pattern.starts_with("/api/clients/{handle}");
    const std::string client = of_client ? found.values.front() : std::string();
    const std::uint64_t version = changes_.version_of(client);
    const std::string kept = kept_as(request, route);
    Asked asked{request,
                target,
                found.values,
                store,
                {session ? session->coach : 0, clocks_.now()},
                coach.value_or(Coach{}),
                worker.shelf,
                version,
                key_tries_,
                clocks_.tick(),
                {},
                options_.secure};
    if (of_client) {
        const auto id = store.client_called(client);
        auto record = id ? store.client(*id) : tl::make_unexpected(id.error());
        if (!record) {
            return problem_of(record.error());
        }
        if (record->handle != client) {
            return problem(404, "not_found", "There is no such client",
                           "found no client of this handle");
        }
        asked.client = std::move(*record);
    }
    if (route.looked != nullptr && session) {
        // Before the answer: what was looked at is in the audit, or it was not looked at.
        const std::string look = look_of(target, found);
        if (!sessions_.has_looked(session->number, look)) {
            if (const auto noted = store.note_look(asked.client ? asked.client->id : 0,
                                                   deed_of(route, asked.coach), asked.acting);
                !noted) {
                return problem_of(noted.error());
            }
            sessions_.looked(session->number, look);
        }
    }
    if (route.holds != Holds::never) {
        if (auto again = kept_.of(kept, version)) {
            return std::move(*again);
        }
    }
    Reply reply = route.handler(asked);
    if (reply.status == 200 && route.holds != Holds::never) {
        kept_.keep(kept, version, reply);
    }
    if (changes_something(route.method) && !route.only_reads && reply.status < 300) {
        client.empty() ? changes_.all_changed() : changes_.changed(client);
        const std::scoped_lock lock(watch_mutex_);
        look_now_ = true;
        watch_bell_.notify_all();
    }
    return reply;
}

}  // namespace tracewright
