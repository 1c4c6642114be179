// Who comes in: sign-in, opening the practice, and who works here.
#include "serve/request_body.hpp"
#include "serve/service.hpp"
#include "store/practice_door.hpp"

namespace tracewright {

namespace {

constexpr Route own_routes[] = {
    {Method::post, "/api/sign-in", Asks::anyone, nullptr, Holds::never, nullptr, 4096},
    {Method::post, "/api/sign-out", Asks::who_may_look, nullptr, Holds::never, nullptr, 4096},
    {Method::get, "/api/session", Asks::who_may_look, nullptr},
    {Method::get, "/api/events", Asks::who_may_look, nullptr},
};

Reply stays_out() {
    return problem(401, "wrong_passphrase", "That does not open the practice",
                   "found a coach or passphrase that does not open it, expected both as they were "
                   "set");
}

}  // namespace

std::span<const Route> session_routes() {
    return own_routes;
}

Stored<void> Service::open(const SecretKey& key) {
    const std::scoped_lock lock(opening_);
    if (open_) {
        return {};
    }
    const auto one_more = [&] {
        return SqlitePractice::open(
            options_.practice,
            [&](const LockedPracticeKey&) -> tl::expected<SecretKey, std::string> {
                return key.copy();
            });
    };
    std::vector<Worker> workers(options_.workers);
    for (Worker& worker : workers) {
        auto store = one_more();
        if (!store) {
            return tl::make_unexpected(store.error());
        }
        worker.store = std::move(*store);
    }
    auto watched = one_more();
    if (!watched) {
        return tl::make_unexpected(watched.error());
    }
    watched_ = std::move(*watched);
    workers_ = std::move(workers);
    read_coaches(*watched_);
    open_ = true;
    watcher_ = std::jthread([this](const std::stop_token& stop) { watch(stop); });
    return {};
}

void Service::read_coaches(SqlitePractice& store) {
    const auto records = store.coaches();
    if (!records) {
        return;
    }
    const std::scoped_lock lock(coaches_mutex_);
    coaches_.clear();
    for (const CoachRecord& record : *records) {
        coaches_.emplace(record.id, record.coach);
    }
}

void Service::sign_in(const std::shared_ptr<const Request>& request,
                      const std::function<void(Reply)>& done) {
    const auto fields = fields_of(*request, {"coach", "passphrase"});
    if (!fields) {
        done(fields.error());
        return;
    }
    const auto work = [this, fields = *fields, done](std::size_t) {
        const std::string& handle = fields.at("coach");
        // Asked here, where one is tried after the other: many at once gain nothing.
        if (const auto wait = tries_.wait(handle, clocks_.tick())) {
            done(too_many_tries(*wait));
            return;
        }
        const auto door = PracticeDoor::of_coach(options_.practice, handle);
        if (!door) {
            done(problem_of(door.error()));
            return;
        }
        const auto key = door->opened(fields.at("passphrase"));
        if (!key) {
            tries_.failed(handle, clocks_.tick());
            done(stays_out());
            return;
        }
        tries_.succeeded(handle);
        if (const auto opened = open(*key); !opened) {
            done(problem_of(opened.error()));
            return;
        }
        const bool given = practice_desk_.give(
            [this, coach = door->coach(), done](std::size_t thread) {
                SqlitePractice& store = *workers_[thread].store;
                read_coaches(store);
                const auto noted = store.note_deed("signed_in", {coach, clocks_.now()});
                done(noted ? signed_in(coach) : problem_of(noted.error()));
            },
            [done] { done(fault_of_ours()); });
        if (!given) {
            done(problem(503, "too_busy", "Too much waits already", "Ask again in a moment"));
        }
    };
    if (!sign_in_desk_.give(work, [done] { done(fault_of_ours()); })) {
        done(problem(503, "too_busy", "Too much waits already", "Ask again in a moment"));
    }
}

Reply Service::signed_in(std::int64_t id) {
    const auto coach = coach_of(id);
    if (!coach) {
        return stays_out();
    }
    const SessionBook::Opened opened = sessions_.open(id, clocks_.tick());
    Reply reply = json_reply(session_json(*coach, opened.session.token));
    reply.headers.emplace_back("Set-Cookie", "session=" + opened.secret +
                                                 "; HttpOnly; SameSite=Strict; Path=/" +
                                                 (options_.secure ? "; Secure" : ""));
    return reply;
}

}  // namespace tracewright
