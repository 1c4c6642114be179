#pragma once

// One connection's conversation, the same over a plain and a TLS stream: included by the source of
// each, which are apart because each costs the compiler much.
//
// g++ 12 makes wrong code of an await within a condition, and destroys twice what a lambda written
// within an await's own expression holds: such values and lambdas have names here.

#include "serve/http_loop.hpp"

#include <boost/asio/buffer.hpp>
#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/this_coro.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/core/stream_traits.hpp>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/http/parser.hpp>
#include <boost/beast/http/read.hpp>
#include <boost/beast/http/string_body.hpp>

#include <array>
#include <memory>
#include <optional>

namespace tracewright {

template <typename Stream>
class Conversation {
  public:
    Conversation(Stream& stream, Loop& loop, Hall& hall)
        : stream_(stream),
          lowest_(boost::beast::get_lowest_layer(stream)),
          loop_(loop),
          hall_(hall) {}

    boost::asio::awaitable<void> go_on(Line& line) {
        bool more = true;
        while (more && !loop_.stopping) {
            line.waits = true;
            more = co_await one_request(line);
        }
    }

  private:
    using Parser = boost::beast::http::request_parser<boost::beast::http::string_body>;
    static constexpr auto& token = boost::asio::use_awaitable;
    /// A longer one is read only from who may send it.
    static constexpr std::size_t short_body = 1024UL * 1024;

    static Method method_of(boost::beast::http::verb asked) {
        using boost::beast::http::verb;
        return asked == verb::get       ? Method::get
               : asked == verb::head    ? Method::head
               : asked == verb::post    ? Method::post
               : asked == verb::put     ? Method::put
               : asked == verb::delete_ ? Method::delete_
                                        : Method::other;
    }

    static std::string text_of(boost::beast::string_view text) {
        return {text.data(), text.size()};
    }

    static Request request_of(Parser& parser) {
        using boost::beast::http::field;
        auto& message = parser.get();
        Request request;
        request.method = method_of(message.method());
        request.target = text_of(message.target());
        request.host = text_of(message[field::host]);
        request.origin = text_of(message[field::origin]);
        request.fetch_site = text_of(message["Sec-Fetch-Site"]);
        request.cookies = text_of(message[field::cookie]);
        request.token = text_of(message["X-Tracewright-Token"]);
        request.if_none_match = text_of(message[field::if_none_match]);
        request.content_type = text_of(message[field::content_type]);
        request.one_host = message.count(field::host) == 1 && message.count(field::cookie) <= 1;
        return request;
    }

    // False: the connection is over.
    boost::asio::awaitable<bool> one_request(Line& line) {
        namespace http = boost::beast::http;
        boost::system::error_code error;
        Parser parser;
        parser.header_limit(16 * 1024);
        parser.body_limit(boost::none);
        if (buffer_.size() == 0) {
            lowest_.expires_after(hall_.options.idle);
            // A line that says nothing costs no more than this read.
            const auto space = buffer_.prepare(2048);
            const auto got =
                co_await stream_.async_read_some(space, boost::asio::redirect_error(token, error));
            if (error) {
                co_return false;
            }
            buffer_.commit(got);
        }
        line.waits = false;
        lowest_.expires_after(hall_.options.head_within);
        co_await http::async_read_header(stream_, buffer_, parser,
                                         boost::asio::redirect_error(token, error));
        if (error) {
            co_return co_await refuse_head(error);
        }
        Request request = request_of(parser);
        const std::size_t most = hall_.service.longest_body(request);
        const auto length = parser.content_length();
        if (length && *length > most) {
            co_return co_await refuse(413, "body_too_long", "The request's body is too long");
        }
        if (most > short_body) {
            if (auto refused = hall_.service.refused_unread(request)) {
                const bool sent = co_await send(*refused, false, false);
                if (sent) {
                    co_await drain();
                }
                co_return false;
            }
        }
        parser.body_limit(most);
        if (boost::beast::iequals(parser.get()[http::field::expect], "100-continue")) {
            static constexpr std::string_view go_on = "HTTP/1.1 100 Continue\r\n\r\n";
            co_await boost::asio::async_write(stream_, boost::asio::buffer(go_on),
                                              boost::asio::redirect_error(token, error));
        }
        lowest_.expires_after(hall_.options.body_within);
        if (!parser.is_done()) {
            co_await http::async_read(stream_, buffer_, parser,
                                      boost::asio::redirect_error(token, error));
        }
        if (error == http::error::body_limit) {
            co_return co_await refuse(413, "body_too_long", "The request's body is too long");
        }
        if (error) {
            co_return co_await refuse_head(error);
        }
        request.body = std::move(parser.get().body());
        const bool keep_alive = parser.get().keep_alive() && !loop_.stopping;
        const bool head_only = request.method == Method::head;
        lowest_.expires_never();
        const Reply reply = co_await answer(std::move(request));
        const bool sent = co_await send(reply, keep_alive, head_only);
        if (!sent) {
            co_return false;
        }
        if (reply.events && !head_only) {
            co_await pour(reply.events);
            co_return false;
        }
        co_return keep_alive;
    }

    // From the service, at once or from another thread.
    boost::asio::awaitable<Reply> answer(Request request) {
        if (auto reply = hall_.service.at_once(request)) {
            co_return std::move(*reply);
        }
        const auto executor = co_await boost::asio::this_coro::executor;
        auto kept = std::make_shared<Request>(std::move(request));
        const auto begin = [this, executor, kept](auto handler) {
            auto shared = std::make_shared<decltype(handler)>(std::move(handler));
            hall_.service.answer(kept, [executor, shared](Reply reply) {
                boost::asio::post(executor, [shared, reply = std::move(reply)]() mutable {
                    (*shared)(std::move(reply));
                });
            });
        };
        Reply reply =
            co_await boost::asio::async_initiate<decltype(token), void(Reply)>(begin, token);
        co_return reply;
    }

    boost::asio::awaitable<bool> send(const Reply& reply, bool keep_alive, bool head_only) {
        boost::system::error_code error;
        const std::string head = head_of(reply, loop_.date_now(), keep_alive && !reply.events);
        std::array<boost::asio::const_buffer, 2> buffers{boost::asio::buffer(head), {}};
        if (reply.body && !head_only && reply.status != 204 && reply.status != 304) {
            buffers[1] = boost::asio::buffer(*reply.body);
        }
        lowest_.expires_after(hall_.options.body_within);
        co_await boost::asio::async_write(stream_, buffers,
                                          boost::asio::redirect_error(token, error));
        co_return !error;
    }

    boost::asio::awaitable<bool> refuse(int status, std::string_view code, std::string_view title) {
        const Reply reply = problem(status, code, title, title);
        const bool sent = co_await send(reply, false, false);
        if (sent) {
            co_await drain();
        }
        co_return false;
    }

    boost::asio::awaitable<bool> refuse_head(boost::system::error_code error) {
        namespace http = boost::beast::http;
        if (error == http::error::header_limit || error == http::error::buffer_overflow) {
            co_return co_await refuse(431, "headers_too_long",
                                      "The request's headers are too long");
        }
        if (error == boost::beast::error::timeout) {
            co_return false;
        }
        if (error.category() == http::make_error_code(http::error::bad_method).category() &&
            error != http::error::end_of_stream && error != http::error::partial_message) {
            co_return co_await refuse(400, "malformed_request", "That is no request in HTTP/1.1");
        }
        co_return false;
    }

    // What is still on its way is read and forgotten for a moment, or the refusal would be lost
    // with the connection.
    boost::asio::awaitable<void> drain() {
        boost::system::error_code error;
        lowest_.socket().shutdown(boost::asio::ip::tcp::socket::shutdown_send, error);
        lowest_.expires_after(std::chrono::seconds{1});
        std::array<char, 4096> forgotten{};
        for (int i = 0; i < 512 && !error; ++i) {
            co_await stream_.async_read_some(boost::asio::buffer(forgotten),
                                             boost::asio::redirect_error(token, error));
        }
    }

    boost::asio::awaitable<void> pour(std::shared_ptr<EventStream> events) {
        const auto executor = co_await boost::asio::this_coro::executor;
        auto bell = std::make_shared<boost::asio::steady_timer>(executor);
        bell->expires_at(boost::asio::steady_timer::time_point::max());
        events->on_wake(
            [executor, bell] { boost::asio::post(executor, [bell] { bell->cancel(); }); });
        auto gone = std::make_shared<bool>(false);
        // Or the read that notices who leaves would end with the time of what was sent before.
        lowest_.expires_never();
        boost::asio::co_spawn(executor, notice_leaving(events, gone), boost::asio::detached);
        boost::system::error_code error;
        while (!error && !events->ended() && !loop_.stopping) {
            const auto frames = events->take();
            if (frames.empty()) {
                boost::system::error_code woken;
                co_await bell->async_wait(boost::asio::redirect_error(token, woken));
                continue;
            }
            std::vector<boost::asio::const_buffer> buffers;
            buffers.reserve(frames.size());
            for (const Frame& frame : frames) {
                buffers.push_back(boost::asio::buffer(*frame));
            }
            lowest_.expires_after(std::chrono::seconds{30});
            co_await boost::asio::async_write(stream_, buffers,
                                              boost::asio::redirect_error(token, error));
            lowest_.expires_never();
        }
        events->end();
        lowest_.close();
        // The reader looks at this connection: it ends first.
        while (!*gone) {
            boost::system::error_code woken;
            co_await bell->async_wait(boost::asio::redirect_error(token, woken));
        }
        events->on_wake({});
    }

    // Who went away is noticed by a read that ends.
    boost::asio::awaitable<void> notice_leaving(std::shared_ptr<EventStream> events,
                                                std::shared_ptr<bool> gone) {
        boost::system::error_code error;
        std::array<char, 64> ignored{};
        while (!error) {
            co_await stream_.async_read_some(boost::asio::buffer(ignored),
                                             boost::asio::redirect_error(token, error));
        }
        *gone = true;
        events->end();
    }

    Stream& stream_;
    boost::beast::tcp_stream& lowest_;
    Loop& loop_;
    Hall& hall_;
    boost::beast::flat_buffer buffer_{80 * 1024};
};

/// The line's place in its loop, for as long as it is open.
class Place {
  public:
    Place(Line& line, Loop& loop, Hall& hall) : line_(line), loop_(loop), hall_(hall) {
        loop_.lines.insert(&line_);
        ++hall_.open;
    }
    ~Place() {
        loop_.lines.erase(&line_);
        --hall_.open;
    }
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;

  private:
    Line& line_;
    Loop& loop_;
    Hall& hall_;
};

}  // namespace tracewright
