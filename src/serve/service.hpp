#pragma once

#include "access/session_book.hpp"
#include "access/try_limit.hpp"
#include "serve/client_shelf.hpp"
#include "serve/desk.hpp"
#include "serve/event_stream.hpp"
#include "serve/kept_replies.hpp"
#include "serve/reply.hpp"
#include "serve/request.hpp"
#include "serve/route.hpp"

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace tracewright {

/// The practice's clock, and one that never goes back for sessions and limits.
struct Clocks {
    std::function<Instant()> now;
    std::function<Tick()> tick;
};

struct ServiceOptions {
    std::string practice;
    bool secure = false;  ///< over TLS: the cookie says so
    std::size_t workers = 2;
    std::size_t most_waiting = 256;  ///< requests to the practice; one more is told to come back
    std::size_t most_kept_bytes = 64UL * 1024 * 1024;
    std::chrono::milliseconds watch_every{500};
    std::chrono::seconds beat_every{15};
    SessionTimes sessions{};
    TryRules tries{};
};

/// The practice over HTTP, without HTTP's own matters: who may ask what, and what is answered. Each
/// worker has a store of its own; one more watches for changes that other programs make. For
/// several threads.
class Service {
  public:
    Service(ServiceOptions options, Clocks clocks);
    ~Service();
    Service(const Service&) = delete;
    Service& operator=(const Service&) = delete;

    /// The hosts it answers for ("127.0.0.1:8417"); any other is refused, so that no foreign name
    /// that was made to point here gets an answer. Before the first request.
    void answer_for(std::vector<std::string> hosts);
    /// Opens the practice before anybody signed in; else the first sign-in does.
    Stored<void> open(const SecretKey& key);

    std::size_t longest_body(const Request& request) const;
    /// Whom a long body is not read from at all: who may not send it.
    std::optional<Reply> refused_unread(const Request& request);
    /// Where nothing is to be waited for: refusals, the page's files, what is kept. Empty:
    /// `answer`.
    std::optional<Reply> at_once(const Request& request);
    /// `done` is called once, from another thread.
    void answer(const std::shared_ptr<const Request>& request,
                const std::function<void(Reply)>& done);

    void end_streams() { hub_.end_all(); }
    std::size_t listeners() { return hub_.listeners(); }
    /// Finishes what was begun. After it only `at_once` may be called.
    void stop();

  private:
    /// What a worker has of its own.
    struct Worker {
        std::unique_ptr<SqlitePractice> store;
        ClientShelf shelf;
    };
    std::optional<Reply> refusal(const Request& request) const;
    std::optional<Reply> refused_to(const Request& request, const Route& route,
                                    std::optional<Session>& session, std::optional<Coach>& coach);
    Reply page_file(const Request& request, const RequestTarget& target) const;
    std::optional<Reply> own(const Request& request, const Route& route, const Session& session,
                             const Coach& coach);
    void sign_in(const std::shared_ptr<const Request>& request,
                 const std::function<void(Reply)>& done);
    Reply signed_in(std::int64_t coach);
    Reply from_practice(const Request& request, const RequestTarget& target, const Found& found,
                        const std::optional<Session>& session, const std::optional<Coach>& coach,
                        Worker& worker);
    std::string kept_as(const Request& request, const Route& route) const;
    std::optional<Coach> coach_of(std::int64_t id);
    void read_coaches(SqlitePractice& store);
    void watch(const std::stop_token& stop);
    bool told_changes(std::int64_t& last_line);
    bool tell_changes(std::int64_t& last_line);

    ServiceOptions options_;
    Clocks clocks_;
    std::vector<std::string> hosts_;
    std::string origin_scheme_;
    SessionBook sessions_;
    TryLimit tries_;
    TryLimit key_tries_;  ///< apart: whoever mistypes a recovery key is still let in
    EventHub hub_;
    ChangeBook changes_;
    KeptReplies kept_;

    std::mutex coaches_mutex_;
    std::map<std::int64_t, Coach> coaches_;
    std::mutex opening_;
    std::atomic<bool> open_{false};
    std::vector<Worker> workers_;
    std::unique_ptr<SqlitePractice> watched_;
    std::mutex watch_mutex_;
    std::condition_variable_any watch_bell_;
    bool look_now_ = false;
    Desk practice_desk_;
    Desk sign_in_desk_;
    std::jthread watcher_;
};

/// The session as the page reads it.
Json session_json(const Coach& coach, const std::string& token);

}  // namespace tracewright
