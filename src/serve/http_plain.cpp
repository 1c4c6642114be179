#include "serve/http_connection.hpp"

namespace tracewright {

boost::asio::awaitable<void> serve_plain(boost::asio::ip::tcp::socket socket, Loop& loop,
                                         Hall& hall) {
    boost::beast::tcp_stream stream(std::move(socket));
    Line line(stream.socket());
    const Place place(line, loop, hall);
    co_await Conversation(stream, loop, hall).go_on(line);
}

}  // namespace tracewright
