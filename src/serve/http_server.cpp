#include "serve/http_server.hpp"

#include "serve/http_loop.hpp"

#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/use_awaitable.hpp>

#include <algorithm>
#include <csignal>
#include <ctime>
#include <thread>

namespace tracewright {

namespace asio = boost::asio;
using asio::ip::tcp;

const std::string& Loop::date_now() {
    const std::time_t now = std::time(nullptr);
    if (now != dated) {
        dated = now;
        std::tm utc{};
        ::gmtime_r(&now, &utc);
        // Names of days and months must not follow the machine's language (RFC 9110, 5.6.7).
        static constexpr const char* days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
        static constexpr const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                 "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
        std::array<char, 40> text{};
        const int length =
            std::snprintf(text.data(), text.size(), "%s, %02d %s %04d %02d:%02d:%02d GMT",
                          days[utc.tm_wday], utc.tm_mday, months[utc.tm_mon], utc.tm_year + 1900,
                          utc.tm_hour, utc.tm_min, utc.tm_sec);
        date.assign(text.data(), static_cast<std::size_t>(length));
    }
    return date;
}

namespace {

class Listening final : public HttpServer {
  public:
    Listening(Service& service, ListenOptions options)
        : service_(service), options_(std::move(options)), hall_{service_, options_} {
        for (int i = 0; i < std::max(1, options_.threads); ++i) {
            loops_.push_back(std::make_unique<Loop>());
        }
        acceptor_.emplace(loops_.front()->context);
    }

    /// Error: a sentence.
    std::string open() {
        boost::system::error_code error;
        const auto address = asio::ip::make_address(options_.address, error);
        if (error) {
            return options_.address +
                   ": found no address in numbers, expected one such as 127.0.0.1";
        }
        if (!address.is_loopback() && options_.certificate.empty()) {
            return options_.address +
                   ": found an address beyond this machine without a certificate, expected "
                   "--certificate and --key: names and readings would cross the network in the "
                   "clear";
        }
        if (!options_.certificate.empty()) {
            if (std::string sentence = open_tls(); !sentence.empty()) {
                return sentence;
            }
        }
        const tcp::endpoint at(address, options_.port);
        acceptor_->open(at.protocol(), error);
        acceptor_->set_option(tcp::acceptor::reuse_address(true), error);
        acceptor_->bind(at, error);
        if (!error) {
            acceptor_->listen(4096, error);
        }
        if (!error) {
            port_ = acceptor_->local_endpoint(error).port();
        }
        if (error) {
            return options_.address + ":" + std::to_string(options_.port) +
                   ": found no way to listen here (" + error.message() + "), expected a free port";
        }
        return {};
    }

    std::uint16_t port() const override { return port_; }

    void run(bool heed_signals) override {
        asio::signal_set signals(loops_.front()->context);
        if (heed_signals) {
            signals.add(SIGTERM);
            signals.add(SIGINT);
            signals.async_wait([this](boost::system::error_code error, int) {
                if (!error) {
                    stop();
                }
            });
        }
        asio::co_spawn(loops_.front()->context, accept(), asio::detached);
        std::vector<std::jthread> threads;
        for (std::size_t i = 1; i < loops_.size(); ++i) {
            threads.emplace_back([this, i] {
                const auto stays = asio::make_work_guard(loops_[i]->context);
                loops_[i]->context.run();
            });
        }
        {
            const auto stays = asio::make_work_guard(loops_.front()->context);
            loops_.front()->context.run();
        }
        threads.clear();
        // What the practice still answers goes nowhere, but into loops that are still there.
        service_.stop();
    }

    void stop() override {
        asio::post(loops_.front()->context, [this] {
            boost::system::error_code none;
            acceptor_->close(none);
        });
        for (const auto& loop : loops_) {
            asio::post(loop->context, [this, &loop = *loop] { end(loop); });
        }
    }

  private:
    std::string open_tls() {
        boost::system::error_code error;
        tls_.emplace(asio::ssl::context::tls_server);
        tls_->set_options(asio::ssl::context::default_workarounds | asio::ssl::context::no_sslv2 |
                          asio::ssl::context::no_sslv3 | asio::ssl::context::no_tlsv1 |
                          asio::ssl::context::no_tlsv1_1);
        tls_->use_certificate_chain_file(options_.certificate, error);
        if (!error) {
            tls_->use_private_key_file(options_.key, asio::ssl::context::pem, error);
        }
        return error ? "found no certificate with its key (" + error.message() +
                           "), expected both as PEM files that belong together"
                     : std::string{};
    }

    asio::awaitable<void> accept() {
        std::size_t next = 0;
        while (acceptor_->is_open()) {
            Loop& loop = *loops_[next++ % loops_.size()];
            boost::system::error_code error;
            tcp::socket socket = co_await acceptor_->async_accept(
                loop.context, asio::redirect_error(asio::use_awaitable, error));
            if (error) {
                if (!acceptor_->is_open()) {
                    co_return;
                }
                // No more files may be opened just now: not all at once anew.
                asio::steady_timer pause(loops_.front()->context, std::chrono::milliseconds{50});
                boost::system::error_code none;
                co_await pause.async_wait(asio::redirect_error(asio::use_awaitable, none));
                continue;
            }
            if (hall_.open >= options_.most_lines) {
                continue;  // closed as it goes
            }
            boost::system::error_code none;
            socket.set_option(tcp::no_delay(true), none);
            asio::co_spawn(loop.context,
                           tls_ ? serve_tls(std::move(socket), loop, hall_, *tls_)
                                : serve_plain(std::move(socket), loop, hall_),
                           asio::detached);
        }
    }

    void end(Loop& loop) {
        if (loop.stopping) {
            return;
        }
        loop.stopping = true;
        service_.end_streams();
        for (Line* line : loop.lines) {
            if (line->waits) {
                line->cut();
            }
        }
        watch_the_end(loop, std::chrono::steady_clock::now() + options_.grace);
    }

    // Stops the loop when its last line is gone, or the grace time is over.
    void watch_the_end(Loop& loop, std::chrono::steady_clock::time_point at_last) {
        if (loop.lines.empty() || std::chrono::steady_clock::now() >= at_last) {
            loop.context.stop();
            return;
        }
        auto timer =
            std::make_shared<asio::steady_timer>(loop.context, std::chrono::milliseconds{20});
        timer->async_wait([this, timer, &loop, at_last](boost::system::error_code) {
            watch_the_end(loop, at_last);
        });
    }

    Service& service_;
    ListenOptions options_;
    Hall hall_;
    std::vector<std::unique_ptr<Loop>> loops_;
    std::optional<tcp::acceptor> acceptor_;
    std::uint16_t port_ = 0;
    std::optional<asio::ssl::context> tls_;
};

}  // namespace

tl::expected<std::unique_ptr<HttpServer>, std::string> HttpServer::listening(
    Service& service, const ListenOptions& options) {
    auto server = std::make_unique<Listening>(service, options);
    if (std::string sentence = server->open(); !sentence.empty()) {
        return tl::make_unexpected(std::move(sentence));
    }
    return server;
}

}  // namespace tracewright
