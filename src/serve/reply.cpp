#include "serve/reply.hpp"

#include <fmt/format.h>
#include <sodium.h>

#include <array>

namespace tracewright {

namespace {

const char* reason_of(int status) {
    switch (status) {
        case 200:
            return "OK";
        case 201:
            return "Created";
        case 204:
            return "No Content";
        case 304:
            return "Not Modified";
        case 400:
            return "Bad Request";
        case 401:
            return "Unauthorized";
        case 403:
            return "Forbidden";
        case 404:
            return "Not Found";
        case 405:
            return "Method Not Allowed";
        case 408:
            return "Request Timeout";
        case 409:
            return "Conflict";
        case 413:
            return "Content Too Large";
        case 415:
            return "Unsupported Media Type";
        case 421:
            return "Misdirected Request";
        case 422:
            return "Unprocessable Content";
        case 429:
            return "Too Many Requests";
        case 431:
            return "Request Header Fields Too Large";
        case 503:
            return "Service Unavailable";
        default:
            return "Internal Server Error";
    }
}

int status_of(StoreErrorKind kind) {
    switch (kind) {
        case StoreErrorKind::not_found:
            return 404;
        case StoreErrorKind::exists:
        case StoreErrorKind::changed_meanwhile:
            return 409;
        case StoreErrorKind::refused:
            return 422;
        case StoreErrorKind::wrong_key:
            return 401;
        case StoreErrorKind::busy:
            return 503;
        case StoreErrorKind::not_a_practice:
        case StoreErrorKind::too_new:
        case StoreErrorKind::no_room:
        case StoreErrorKind::read_only:
        case StoreErrorKind::unfit_file_system:
        case StoreErrorKind::broken:
            break;
    }
    return 500;
}

}  // namespace

Reply text_reply(std::string text, std::string content_type) {
    Reply reply;
    reply.content_type = std::move(content_type);
    reply.body = std::make_shared<const std::string>(std::move(text));
    return reply;
}

Reply json_reply(const Json& json, int status) {
    Reply reply =
        text_reply(json.dump(-1, ' ', false, Json::error_handler_t::replace), "application/json");
    reply.status = status;
    return reply;
}

Reply no_content() {
    Reply reply;
    reply.status = 204;
    return reply;
}

Reply problem(int status, std::string_view code, std::string_view title, std::string_view detail) {
    Reply reply = json_reply({{"type", "about:blank"},
                              {"title", title},
                              {"status", status},
                              {"detail", detail},
                              {"code", code}},
                             status);
    reply.content_type = "application/problem+json";
    return reply;
}

Reply problem_of(const FileError& error) {
    const std::string detail =
        "found " + error.found + ", expected " + error.expected +
        // What is to be typed at the command is nothing here.
        (error.what_to_do.empty() || error.what_to_do.find("--") != std::string::npos
             ? std::string()
             : "; " + error.what_to_do);
    Json json = {{"type", "about:blank"},
                 {"title", "The file can't be brought in"},
                 {"status", 422},
                 {"detail", detail},
                 {"code", code_of(error.kind)}};
    if (error.line > 0) {
        json["line"] = error.line;
        json["column"] = error.column;
    }
    Reply reply = json_reply(json, 422);
    reply.content_type = "application/problem+json";
    return reply;
}

Reply problem_of(const StoreError& error) {
    const int status = status_of(error.kind);
    Reply reply = problem(status, code_of(error.kind), "The practice did not do it",
                          status == 500 && error.kind != StoreErrorKind::no_room
                              ? "The practice can't be used; the command 'check' says more"
                              : error.sentence);
    if (status == 503) {
        reply.headers.emplace_back("Retry-After", "1");
    }
    return reply;
}

Reply fault_of_ours() {
    return problem(500, "fault", "The service failed at this",
                   "found a fault of the program at this request; others are still answered");
}

Reply too_many_tries(std::chrono::seconds wait) {
    Reply reply =
        problem(429, "too_many_tries", "Too many tries", "Wait a little before the next one");
    reply.headers.emplace_back("Retry-After", std::to_string(wait.count()));
    return reply;
}

std::string_view page_policy() {
    return "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src "
           "'self'; font-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; "
           "frame-ancestors 'none'";
}

std::string document_policy(std::string_view html) {
    std::string styles;
    constexpr std::string_view begins = "<style>";
    for (auto at = html.find(begins); at != std::string_view::npos; at = html.find(begins, at)) {
        at += begins.size();
        const std::string_view style = html.substr(at, html.find("</style>", at) - at);
        std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
        crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(style.data()),
                           style.size());
        std::array<char, 64> text{};
        sodium_bin2base64(text.data(), text.size(), hash.data(), hash.size(),
                          sodium_base64_VARIANT_ORIGINAL);
        styles += fmt::format(" 'sha256-{}'", text.data());
    }
    return "default-src 'none'; style-src" + (styles.empty() ? " 'none'" : styles) +
           "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
}

std::string head_of(const Reply& reply, std::string_view date, bool keep_alive) {
    std::string head =
        fmt::format("HTTP/1.1 {} {}\r\nDate: {}\r\n", reply.status, reason_of(reply.status), date);
    const bool has_body = reply.status != 204 && reply.status != 304;
    if (reply.events) {
        head += "Content-Type: text/event-stream\r\n";
    } else if (has_body) {
        head += fmt::format("Content-Type: {}\r\nContent-Length: {}\r\n", reply.content_type,
                            reply.body ? reply.body->size() : 0);
    }
    head += reply.keeps ? "Cache-Control: no-cache\r\n" : "Cache-Control: no-store\r\n";
    head += "Content-Security-Policy: ";
    head += reply.policy.empty() ? page_policy() : std::string_view(reply.policy);
    head +=
        "\r\nX-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\n"
        "X-Frame-Options: DENY\r\nCross-Origin-Opener-Policy: same-origin\r\n"
        "Cross-Origin-Resource-Policy: same-origin\r\n";
    for (const auto& [name, value] : reply.headers) {
        head += fmt::format("{}: {}\r\n", name, value);
    }
    return head + (keep_alive ? "\r\n" : "Connection: close\r\n\r\n");
}

}  // namespace tracewright
