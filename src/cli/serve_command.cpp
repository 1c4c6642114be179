#include "cli/serve_command.hpp"

#include "cli/file_options.hpp"
#include "serve/http_server.hpp"
#include "serve/service.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <ostream>

namespace tracewright {

namespace {

// Read anew each time: a machine that slept must not think old readings young.
Instant machine_time() {
    return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

std::vector<std::string> hosts_of(const ServeWords& words, std::uint16_t port, bool secure) {
    const bool in_brackets = words.address.find(':') != std::string::npos;
    std::vector<std::string> hosts{in_brackets ? "[" + words.address + "]" : words.address,
                                   "localhost"};
    hosts.insert(hosts.end(), words.names.begin(), words.names.end());
    std::vector<std::string> all;
    for (const std::string& host : hosts) {
        all.push_back(fmt::format("{}:{}", host, port));
        // A browser leaves a scheme's own port out.
        if (port == (secure ? 443 : 80)) {
            all.push_back(host);
        }
    }
    return all;
}

}  // namespace

Exit serve(const PracticeOptions& options, const ServeWords& words, const Streams& streams) {
    const auto wrong = [&](const std::string& sentence) {
        streams.err << "tracewright: " << sentence << "\n";
        return Exit::wrong_usage;
    };
    if (options.practice.empty()) {
        return wrong("found no --practice, expected the practice's file");
    }
    std::function<Instant()> now = machine_time;
    if (!options.as_of.empty()) {
        const auto told = time_on_command_line(options.as_of, ZoneHistory(Zone::floating()));
        if (!told) {
            return wrong(told.error());
        }
        now = [at = *told] { return at; };
    }
    std::error_code none;
    if (!std::filesystem::is_regular_file(options.practice, none)) {
        return said({StoreErrorKind::not_found,
                     options.practice + ": found no practice here, expected one made by init"},
                    streams);
    }
    const bool secure = !words.certificate.empty();
    ServiceOptions how;
    how.practice = options.practice;
    how.secure = secure;
    Service service(how, {now, [] { return std::chrono::steady_clock::now(); }});
    if (!options.passphrase_file.empty() || !options.recovery_key_file.empty()) {
        const auto opened = SqlitePractice::open(options.practice, unlocking_of(options));
        if (!opened) {
            return said(opened.error(), streams);
        }
        if (const auto ready = service.open((*opened)->key()); !ready) {
            return said(ready.error(), streams);
        }
    }
    ListenOptions at;
    at.address = words.address;
    at.port = words.port;
    at.certificate = words.certificate;
    at.key = words.key;
    auto server = HttpServer::listening(service, at);
    if (!server) {
        return wrong(server.error());
    }
    const auto hosts = hosts_of(words, (*server)->port(), secure);
    service.answer_for(hosts);
    streams.out << fmt::format("The practice is served at {}://{}/\n", secure ? "https" : "http",
                               words.names.empty()
                                   ? hosts.front()
                                   : fmt::format("{}:{}", words.names.front(), (*server)->port()))
                << (words.address.starts_with("127.") || words.address == "::1"
                        ? "Only this machine reaches it. Stop it with Ctrl-C.\n"
                        : "Stop it with Ctrl-C.\n")
                << std::flush;
    (*server)->run(true);
    return Exit::done;
}

}  // namespace tracewright
