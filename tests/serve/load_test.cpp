// Slow clients, many listeners, stopping, and being killed: over real sockets.
#include "serve/served_practice.hpp"

#include <fmt/format.h>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <deque>

namespace tracewright::testing {
namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;

TEST(Load, fifty_slow_clients_keep_nobody_waiting) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    std::deque<Wire> slow;
    for (int i = 0; i < 50; ++i) {
        slow.emplace_back(served.port());
        slow.back().send("GET /api/caseload HTTP/1.1\r\nHost: ");
    }
    std::deque<Wire> trickle;
    for (int i = 0; i < 50; ++i) {
        trickle.emplace_back(served.port());
        trickle.back().send(served.written("POST", "/api/clients/c1/notes", who,
                                           {{"Content-Length", "1000"}}, "{"));
    }
    for (int i = 0; i < 20; ++i) {
        EXPECT_EQ(served.get("/api/clients/c1/measures", who).status, 200);
        for (Wire& wire : slow) {
            wire.send("1");
        }
    }
}

TEST(Load, who_does_not_finish_a_request_is_cut_off) {
    ListenOptions listen;
    listen.head_within = seconds{1};
    listen.body_within = seconds{1};
    listen.idle = seconds{1};
    ServedPractice served({}, listen);
    const Sitting who = served.signed_in();
    Wire silent(served.port());
    Wire half_a_head(served.port());
    half_a_head.send("GET / HTTP/1.1\r\n");
    Wire half_a_body(served.port());
    half_a_body.send(
        served.written("POST", "/api/clients/c1/notes", who, {{"Content-Length", "1000"}}, "{"));
    EXPECT_TRUE(silent.closed_within(seconds{10}));
    EXPECT_TRUE(half_a_head.closed_within(seconds{10}));
    EXPECT_TRUE(half_a_body.closed_within(seconds{10}));
}

TEST(Load, many_listeners_hear_of_a_change_while_others_read) {
    rlimit files{};
    ::getrlimit(RLIMIT_NOFILE, &files);
    files.rlim_cur = files.rlim_max;
    ::setrlimit(RLIMIT_NOFILE, &files);
    // Both ends are in this process.
    const auto listeners =
        std::min<std::size_t>(10'000, (static_cast<std::size_t>(files.rlim_cur) - 200) / 2);
    RecordProperty("listeners", static_cast<int>(listeners));
    ServedPractice served;
    const Sitting who = served.signed_in();
    std::deque<Wire> wires;
    const std::string ask = served.written("GET", "/api/events", who, {}, "");
    for (std::size_t i = 0; i < listeners; ++i) {
        wires.emplace_back(served.port());
        ASSERT_TRUE(wires.back().open()) << i;
        wires.back().send(ask);
    }
    for (Wire& wire : wires) {
        ASSERT_EQ(wire.take().status, 200);
    }
    EXPECT_EQ(served.service().listeners(), listeners);
    for (int i = 0; i < 100; ++i) {
        EXPECT_EQ(served.get("/api/clients/c1/measures", who).status, 200);
    }
    ASSERT_EQ(served.send("POST", "/api/clients/c2/notes", {{"text", "Invented"}}, who).status,
              201);
    std::size_t heard = 0;
    for (Wire& wire : wires) {
        heard +=
            wire.until("note_added", seconds{20}).find("\"c2\"") != std::string::npos ? 1U : 0U;
    }
    EXPECT_EQ(heard, listeners);
}

TEST(Load, more_work_than_fits_is_told_to_come_back) {
    ServiceOptions options;
    options.most_waiting = 0;
    ServedPractice served(options);
    const Got got = served.send("POST", "/api/sign-in",
                                {{"coach", "o1"}, {"passphrase", "invented passphrase"}});
    EXPECT_EQ(got.status, 503);
    EXPECT_EQ(got.code(), "too_busy");
}

TEST(Stopping, ends_streams_and_finishes_what_is_under_way) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    Wire idle(served.port());
    Wire stream(served.port());
    stream.send(served.written("GET", "/api/events", who, {}, ""));
    ASSERT_EQ(stream.take().status, 200);
    Wire asks(served.port());
    asks.send(served.written("GET", "/api/clients/c1/review", who, {}, ""));
    std::this_thread::sleep_for(milliseconds{20});
    std::thread stopping([&] { served.stop(); });
    const Got got = asks.take();
    EXPECT_TRUE(got.status == 200 || got.status == 0);
    EXPECT_TRUE(stream.closed_within(seconds{10}));
    EXPECT_TRUE(idle.closed_within(seconds{10}));
    stopping.join();
    EXPECT_FALSE(Wire(served.port()).open());
}

// A server in a process of its own; its port comes through a pipe.
class ServedElsewhere {
  public:
    explicit ServedElsewhere(const std::string& path) {
        int pipe[2];
        if (::pipe(pipe) != 0) {
            return;
        }
        process_ = ::fork();
        if (process_ == 0) {
            ServiceOptions options;
            options.practice = path;
            Service service(
                options, {ServedPractice::today, [] { return std::chrono::steady_clock::now(); }});
            auto server = HttpServer::listening(service, {});
            const std::uint16_t port = (*server)->port();
            service.answer_for({"127.0.0.1:" + std::to_string(port)});
            if (::write(pipe[1], &port, sizeof port) != sizeof port) {
                ::_exit(1);
            }
            (*server)->run(true);
            ::_exit(0);
        }
        if (::read(pipe[0], &port_, sizeof port_) != sizeof port_) {
            port_ = 0;
        }
        ::close(pipe[0]);
        ::close(pipe[1]);
    }
    ~ServedElsewhere() { end(SIGKILL); }
    ServedElsewhere(const ServedElsewhere&) = delete;
    ServedElsewhere& operator=(const ServedElsewhere&) = delete;

    std::uint16_t port() const { return port_; }
    int end(int signal) {
        if (process_ <= 0) {
            return -1;
        }
        ::kill(process_, signal);
        int status = 0;
        ::waitpid(process_, &status, 0);
        process_ = 0;
        return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    }

  private:
    pid_t process_ = 0;
    std::uint16_t port_ = 0;
};

std::string asked(std::uint16_t port, const std::string& target, const std::string& headers,
                  const std::string& body) {
    return "POST " + target + " HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(port) +
           "\r\nContent-Type: application/json\r\n" + headers +
           "Content-Length: " + std::to_string(body.size()) + "\r\n\r\n" + body;
}

TEST(Killed, under_load_loses_nothing_that_was_acknowledged) {
    const Folder folder;
    const std::string path = folder.file("practice");
    {
        const auto practice = new_practice(path);
        ASSERT_TRUE(practice->add_client("c1", "Tansy (invented)", {}, acting()));
    }
    std::vector<std::string> acknowledged;
    for (int round = 0; round < 5; ++round) {
        ServedElsewhere served(path);
        ASSERT_NE(served.port(), 0);
        Wire wire(served.port());
        wire.send(asked(served.port(), "/api/sign-in", "",
                        R"({"coach":"o1","passphrase":"invented passphrase"})"));
        const Got in = wire.take();
        ASSERT_EQ(in.status, 200) << in.body;
        const std::string cookie = in.headers.at("set-cookie");
        const std::string headers = "Cookie: " + cookie.substr(0, cookie.find(';')) +
                                    "\r\nX-Tracewright-Token: " + in.json().value("token", "") +
                                    "\r\n";
        std::mutex mutex;
        std::atomic<bool> on{true};
        std::atomic<int> served_so_far{0};
        std::vector<std::thread> writers;
        for (int w = 0; w < 3; ++w) {
            writers.emplace_back([&, w] {
                Wire own(served.port());
                for (int i = 0; on; ++i) {
                    const std::string text =
                        std::to_string(round) + "-" + std::to_string(w) + "-" + std::to_string(i);
                    own.send(asked(served.port(), "/api/clients/c1/notes", headers,
                                   "{\"text\":\"" + text + "\"}"));
                    if (own.take().status != 201) {
                        return;
                    }
                    const std::scoped_lock lock(mutex);
                    acknowledged.push_back(text);
                    ++served_so_far;
                }
            });
        }
        // The command writes to the same practice meanwhile.
        const auto practice = opened_practice(path);
        for (int i = 0; i < 20; ++i) {
            const std::string text = std::to_string(round) + "-command-" + std::to_string(i);
            if (practice->add_note(1, text, acting())) {
                const std::scoped_lock lock(mutex);
                acknowledged.push_back(text);
            }
        }
        // On a busy machine the command may be through before the service has written anything.
        for (int waited = 0; served_so_far < 10 && waited < 3'000; ++waited) {
            std::this_thread::sleep_for(std::chrono::milliseconds{10});
        }
        served.end(SIGKILL);
        on = false;
        for (std::thread& writer : writers) {
            writer.join();
        }
        EXPECT_GE(served_so_far, 10);
    }
    const auto practice = opened_practice(path);
    std::set<std::string> kept;
    const auto notes = practice->notes(1);
    for (const NoteRecord& note : *notes) {
        kept.insert(note.text);
    }
    EXPECT_GT(acknowledged.size(), 100U);
    for (const std::string& text : acknowledged) {
        EXPECT_TRUE(kept.contains(text)) << text;
    }
    EXPECT_TRUE(practice->faults()->empty());
}

TEST(Stopping, a_signal_ends_it_in_order) {
    const Folder folder;
    const std::string path = folder.file("practice");
    new_practice(path);
    ServedElsewhere served(path);
    ASSERT_NE(served.port(), 0);
    Wire wire(served.port());
    wire.send(fmt::format("GET / HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n", served.port()));
    // An answer: it heeds signals by now.
    ASSERT_EQ(wire.take().status, 200);
    EXPECT_EQ(served.end(SIGTERM), 0);
}

TEST(Listening, beyond_this_machine_needs_a_certificate) {
    ServiceOptions options;
    Service service(options, {ServedPractice::today, [] { return Tick{}; }});
    ListenOptions at;
    at.address = "0.0.0.0";
    const auto refused = HttpServer::listening(service, at);
    ASSERT_FALSE(refused);
    EXPECT_NE(refused.error().find("certificate"), std::string::npos);
    at.address = "no address";
    EXPECT_FALSE(HttpServer::listening(service, at));
}

}  // namespace
}  // namespace tracewright::testing
