#pragma once

#include "serve/http_server.hpp"
#include "serve/service.hpp"
#include "store/practice_for_tests.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <atomic>
#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <thread>

namespace tracewright::testing {

/// What came back over a socket.
struct Got {
    int status = 0;                              ///< 0: nothing came
    std::map<std::string, std::string> headers;  ///< names in small letters
    std::string body;

    nlohmann::json json() const { return nlohmann::json::parse(body, nullptr, false); }
    std::string code() const;  ///< of a problem
};

/// One connection to a port of this machine. Blocking, with a time-out of 20 s.
class Wire {
  public:
    explicit Wire(std::uint16_t port);
    ~Wire();
    Wire(const Wire&) = delete;
    Wire& operator=(const Wire&) = delete;

    bool open() const { return socket_ >= 0; }
    void send(std::string_view bytes);
    /// One reply, by its Content-Length; of a stream only the head.
    Got take(bool head_only = false);
    /// Whatever comes until `word` has come or the time is over.
    std::string until(std::string_view word, std::chrono::milliseconds within);
    /// True if the other side closed within the time.
    bool closed_within(std::chrono::milliseconds time);

  private:
    int socket_ = -1;
    std::string read_;
};

/// Who signed in.
struct Sitting {
    std::string cookie;
    std::string token;
};

/// A practice with three coaches (o1 owner, k1 coach, r1 reader, each with a passphrase of their
/// own but the owner) and two clients (c1 with a fortnight of readings and meals, c2 without),
/// served on loopback. Everybody in it is invented.
class ServedPractice {
  public:
    explicit ServedPractice(ServiceOptions options = {}, ListenOptions listen = {});
    ~ServedPractice();
    ServedPractice(const ServedPractice&) = delete;
    ServedPractice& operator=(const ServedPractice&) = delete;

    std::uint16_t port() const { return server_->port(); }
    std::string host() const { return "127.0.0.1:" + std::to_string(port()); }
    std::string path() const { return folder_.file("practice"); }
    Service& service() { return *service_; }
    /// The sessions' clock runs on by so much.
    void wait(std::chrono::seconds time) { seconds_ += time.count(); }
    /// Today moves on by so many days.
    void days_on(int days) { days_ += days; }

    Sitting signed_in(const std::string& coach = "o1", const std::string& passphrase = {});
    Got get(const std::string& target, const Sitting& who = {},
            const std::map<std::string, std::string>& headers = {});
    Got send(const std::string& method, const std::string& target, const nlohmann::json& body,
             const Sitting& who = {}, const std::map<std::string, std::string>& headers = {});
    /// A POST of a file's bytes.
    Got send_file(const std::string& target, const std::string& bytes, const Sitting& who = {},
                  const std::string& type = "application/octet-stream");
    std::string written(const std::string& method, const std::string& target, const Sitting& who,
                        std::map<std::string, std::string> headers, const std::string& body) const;
    void stop();

    /// Midnight, UTC, of the day after the last reading.
    static Instant today();

  private:
    Folder folder_;
    std::atomic<std::int64_t> seconds_{0};
    std::atomic<int> days_{0};
    std::unique_ptr<Service> service_;
    std::unique_ptr<HttpServer> server_;
    std::thread runs_;
};

/// Of age, not pregnant, metformin alone, every caution asked and answered no, the eyes just
/// checked: no gate is closed.
void nothing_to_be_careful_about(ClientFacts& facts);

}  // namespace tracewright::testing
