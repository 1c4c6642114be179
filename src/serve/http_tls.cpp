#include "serve/http_connection.hpp"

#include <boost/asio/ssl/stream.hpp>
#include <boost/beast/ssl/ssl_stream.hpp>

namespace tracewright {

boost::asio::awaitable<void> serve_tls(boost::asio::ip::tcp::socket socket, Loop& loop, Hall& hall,
                                       boost::asio::ssl::context& tls) {
    boost::beast::ssl_stream<boost::beast::tcp_stream> stream(std::move(socket), tls);
    auto& lowest = boost::beast::get_lowest_layer(stream);
    Line line(lowest.socket());
    const Place place(line, loop, hall);
    boost::system::error_code error;
    lowest.expires_after(hall.options.head_within);
    co_await stream.async_handshake(boost::asio::ssl::stream_base::server,
                                    boost::asio::redirect_error(boost::asio::use_awaitable, error));
    if (!error) {
        co_await Conversation(stream, loop, hall).go_on(line);
    }
}

}  // namespace tracewright
