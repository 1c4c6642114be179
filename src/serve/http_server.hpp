#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

namespace tracewright {

class Service;

/// Where and how the service listens.
struct ListenOptions {
    std::string address = "127.0.0.1";
    std::uint16_t port = 0;           ///< 0: one that is free
    std::string certificate{};        ///< a chain in PEM; beyond this machine only with one
    std::string key{};                ///< its private key in PEM
    int threads = 2;                  ///< that read and write; the practice has its own
    std::size_t most_lines = 12'000;  ///< open connections; one more is closed at once
    std::chrono::seconds head_within{15};
    std::chrono::seconds body_within{120};
    std::chrono::seconds idle{75};
    std::chrono::seconds grace{3};  ///< for what is under way when it is told to stop
};

/// Accepts connections and carries requests to a service until it is told to stop. The libraries
/// for HTTP and TLS stay inside.
class HttpServer {
  public:
    /// Error: a sentence (the place is taken, not of this machine, a certificate that can't be
    /// read, an address beyond this machine without one).
    static tl::expected<std::unique_ptr<HttpServer>, std::string> listening(
        Service& service, const ListenOptions& options);

    virtual ~HttpServer() = default;
    virtual std::uint16_t port() const = 0;
    /// Until `stop`, SIGTERM or SIGINT (where `heed_signals`): then takes no more, ends streams,
    /// lets what is under way finish within the grace time.
    virtual void run(bool heed_signals) = 0;
    /// From any thread.
    virtual void stop() = 0;
};

}  // namespace tracewright
