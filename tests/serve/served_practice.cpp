#include "serve/served_practice.hpp"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>

namespace tracewright::testing {

namespace {

constexpr int fortnight = 14 * 288;

std::string small(std::string text) {
    std::ranges::transform(text, text.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

}  // namespace

std::string Got::code() const {
    const auto problem = json();
    return problem.is_object() ? problem.value("code", "") : "";
}

Wire::Wire(std::uint16_t port) {
    socket_ = ::socket(AF_INET, SOCK_STREAM, 0);
    sockaddr_in at{};
    at.sin_family = AF_INET;
    at.sin_port = htons(port);
    at.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    timeval patience{20, 0};
    ::setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
    ::setsockopt(socket_, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
    if (::connect(socket_, reinterpret_cast<const sockaddr*>(&at), sizeof at) != 0) {
        ::close(socket_);
        socket_ = -1;
    }
}

Wire::~Wire() {
    if (socket_ >= 0) {
        ::close(socket_);
    }
}

void Wire::send(std::string_view bytes) {
    while (!bytes.empty()) {
        const auto sent = ::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
        if (sent <= 0) {
            return;
        }
        bytes.remove_prefix(static_cast<std::size_t>(sent));
    }
}

Got Wire::take(bool head_only) {
    const auto more = [&] {
        char buffer[16384];
        const auto got = ::recv(socket_, buffer, sizeof buffer, 0);
        if (got <= 0) {
            return false;
        }
        read_.append(buffer, static_cast<std::size_t>(got));
        return true;
    };
    Got got;
    auto end = read_.find("\r\n\r\n");
    while (end == std::string::npos) {
        if (!more()) {
            return got;
        }
        end = read_.find("\r\n\r\n");
    }
    const std::string head = read_.substr(0, end + 2);
    read_.erase(0, end + 4);
    got.status = std::stoi(head.substr(9, 3));
    for (auto at = head.find("\r\n") + 2; at < head.size();) {
        const auto line_end = head.find("\r\n", at);
        const std::string line = head.substr(at, line_end - at);
        const auto colon = line.find(": ");
        if (colon != std::string::npos) {
            got.headers[small(line.substr(0, colon))] = line.substr(colon + 2);
        }
        at = line_end + 2;
    }
    if (!head_only && got.headers.contains("content-length")) {
        const auto length = std::stoul(got.headers["content-length"]);
        while (read_.size() < length && more()) {
        }
        got.body = read_.substr(0, length);
        read_.erase(0, length);
    }
    return got;
}

std::string Wire::until(std::string_view word, std::chrono::milliseconds within) {
    const auto end = std::chrono::steady_clock::now() + within;
    while (read_.find(word) == std::string::npos) {
        const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(
            end - std::chrono::steady_clock::now());
        pollfd waits{socket_, POLLIN, 0};
        if (left.count() <= 0 || ::poll(&waits, 1, static_cast<int>(left.count())) <= 0) {
            break;
        }
        char buffer[4096];
        const auto got = ::recv(socket_, buffer, sizeof buffer, 0);
        if (got <= 0) {
            break;
        }
        read_.append(buffer, static_cast<std::size_t>(got));
    }
    return std::exchange(read_, {});
}

bool Wire::closed_within(std::chrono::milliseconds time) {
    const auto end = std::chrono::steady_clock::now() + time;
    while (std::chrono::steady_clock::now() < end) {
        pollfd waits{socket_, POLLIN, 0};
        if (::poll(&waits, 1, 50) > 0) {
            char buffer[4096];
            if (::recv(socket_, buffer, sizeof buffer, 0) <= 0) {
                return true;
            }
        }
    }
    return false;
}

Instant ServedPractice::today() {
    return at_second(std::int64_t{fortnight} * 300 + 3600);
}

ServedPractice::ServedPractice(ServiceOptions options, ListenOptions listen) {
    {
        auto practice = new_practice(path());
        const auto coach = practice->add_coach({"k1", "Yarrow (invented)"}, acting());
        const auto reader =
            practice->add_coach({"r1", "Sedge (invented)", CoachRole::reader}, acting());
        EXPECT_TRUE(coach && reader);
        EXPECT_TRUE(practice->set_coach_passphrase(*coach, "passphrase of k1", acting()));
        EXPECT_TRUE(practice->set_coach_passphrase(*reader, "passphrase of r1", acting()));
        ClientFacts facts;
        facts.zones.push_back({"Europe/Berlin", {}});
        facts.unit = GlucoseUnit::mg_per_dl;
        const auto client = practice->add_client("c1", "Tansy (invented)", facts, acting());
        EXPECT_TRUE(client);
        EXPECT_TRUE(practice->add_client("c2", "Bracken (invented)", facts, acting()));
        EXPECT_TRUE(practice->bring_in(*client, with_meals(file_of(0, fortnight), 56),
                                       WhoseFile::not_asked, acting(60)));
    }
    options.practice = path();
    service_ = std::make_unique<Service>(
        options,
        Clocks{[this] { return today() + std::chrono::days{days_.load()}; },
               [this] { return Tick{std::chrono::seconds{1'000'000 + seconds_.load()}}; }});
    auto server = HttpServer::listening(*service_, listen);
    EXPECT_TRUE(server) << server.error();
    server_ = std::move(*server);
    service_->answer_for({host(), "localhost:" + std::to_string(port())});
    runs_ = std::thread([this] { server_->run(false); });
}

void nothing_to_be_careful_about(ClientFacts& facts) {
    const CivilDate lately =
        std::chrono::floor<std::chrono::days>(ServedPractice::today().time_since_epoch()) +
        CivilDate{} - std::chrono::days{3};
    facts.born_year = 1970;
    facts.medicines_asked_on = lately;
    facts.medicines.push_back({"metformin", lately - std::chrono::days{1000}, {}});
    Cautions& cautions = facts.cautions;
    cautions.pregnancy = Pregnancy::no;
    cautions.eating = {lately, "Yarrow (invented)", Answered::no};
    cautions.last_eye_check = lately;
    for (Answered* one :
         {&cautions.severe_low_before, &cautions.kidney_disease, &cautions.liver_disease,
          &cautions.heart_disease, &cautions.chest_symptoms, &cautions.eye_disease,
          &cautions.numb_feet_or_wound, &cautions.stomach_surgery, &cautions.frail,
          &cautions.another_autoimmune_disease}) {
        *one = Answered::no;
    }
}

ServedPractice::~ServedPractice() {
    stop();
}

void ServedPractice::stop() {
    if (runs_.joinable()) {
        server_->stop();
        runs_.join();
    }
}

Sitting ServedPractice::signed_in(const std::string& coach, const std::string& passphrase) {
    const std::string with = !passphrase.empty() ? passphrase
                             : coach == "o1"     ? "invented passphrase"
                                                 : "passphrase of " + coach;
    const Got got = send("POST", "/api/sign-in", {{"coach", coach}, {"passphrase", with}});
    EXPECT_EQ(got.status, 200) << got.body;
    const auto cookie = got.headers.find("set-cookie");
    if (got.status != 200 || cookie == got.headers.end()) {
        return {};
    }
    return {cookie->second.substr(0, cookie->second.find(';')), got.json().value("token", "")};
}

std::string ServedPractice::written(const std::string& method, const std::string& target,
                                    const Sitting& who, std::map<std::string, std::string> headers,
                                    const std::string& body) const {
    headers.try_emplace("Host", host());
    if (!who.cookie.empty()) {
        headers.try_emplace("Cookie", who.cookie);
    }
    if (method != "GET" && method != "HEAD") {
        headers.try_emplace("X-Tracewright-Token", who.token);
        headers.try_emplace("Content-Type", "application/json");
        headers.try_emplace("Content-Length", std::to_string(body.size()));
    }
    std::string text = method + " " + target + " HTTP/1.1\r\n";
    for (const auto& [name, value] : headers) {
        text += value.empty() ? "" : name + ": " + value + "\r\n";
    }
    return text + "\r\n" + body;
}

Got ServedPractice::get(const std::string& target, const Sitting& who,
                        const std::map<std::string, std::string>& headers) {
    Wire wire(port());
    wire.send(written("GET", target, who, headers, ""));
    return wire.take();
}

Got ServedPractice::send(const std::string& method, const std::string& target,
                         const nlohmann::json& body, const Sitting& who,
                         const std::map<std::string, std::string>& headers) {
    Wire wire(port());
    wire.send(written(method, target, who, headers, body.is_null() ? "" : body.dump()));
    return wire.take();
}

Got ServedPractice::send_file(const std::string& target, const std::string& bytes,
                              const Sitting& who, const std::string& type) {
    Wire wire(port());
    wire.send(written("POST", target, who, {{"Content-Type", type}}, bytes));
    return wire.take();
}

}  // namespace tracewright::testing
