#pragma once

// Inside of the HTTP server: included by its own sources only, as it shows the library.

#include "serve/http_server.hpp"
#include "serve/service.hpp"

#include <boost/asio/awaitable.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/ssl/context.hpp>
#include <boost/asio/steady_timer.hpp>

#include <atomic>
#include <set>
#include <string>

namespace tracewright {

/// A connection as its loop knows it, to be ended when the server stops.
class Line {
  public:
    explicit Line(boost::asio::ip::tcp::socket& socket) : socket_(socket) {}
    bool waits = true;  ///< between two requests
    void cut() {
        boost::system::error_code none;
        socket_.close(none);
    }

  private:
    boost::asio::ip::tcp::socket& socket_;
};

/// One thread's loop with its connections: what happens on them happens on this thread alone.
struct Loop {
    std::set<Line*> lines;
    bool stopping = false;
    std::time_t dated = 0;
    std::string date;
    /// Last, so that what is left of its connections goes while the rest is still there.
    boost::asio::io_context context{1};

    /// The Date header's value, made once a second.
    const std::string& date_now();
};

/// What all connections share.
struct Hall {
    Service& service;
    const ListenOptions& options;
    std::atomic<std::size_t> open{0};
};

boost::asio::awaitable<void> serve_plain(boost::asio::ip::tcp::socket socket, Loop& loop,
                                         Hall& hall);
boost::asio::awaitable<void> serve_tls(boost::asio::ip::tcp::socket socket, Loop& loop, Hall& hall,
                                       boost::asio::ssl::context& tls);

}  // namespace tracewright
