#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tracewright {

enum class Method : std::uint8_t { get, head, post, put, delete_, other };

/// Where a request goes: the path's segments and the query's pairs, percent signs decoded.
struct RequestTarget {
    std::vector<std::string> segments;
    std::vector<std::pair<std::string, std::string>> query;

    std::optional<std::string> asked(std::string_view name) const;
    std::string path() const;  ///< "/api/clients/c1"
};

/// Reads an origin-form target ("/api/clients/c1?from=2026-03-02"). Empty for anything else: longer
/// than 2048 bytes, without its slash, a percent sign without two digits, a control sign, a slash
/// or a zero byte that was encoded, bytes that are no UTF-8, or a segment of dots (a way out of the
/// place).
std::optional<RequestTarget> target_of(std::string_view text);

/// The value of one cookie of a Cookie header (RFC 6265); empty if there is none, or two of it.
std::optional<std::string> cookie_called(std::string_view name, std::string_view header);

/// One request over HTTP, as what answers it sees it. Knows no library.
struct Request {
    Method method = Method::other;
    std::string target;
    std::string host;
    std::string origin;      ///< empty: none was sent
    std::string fetch_site;  ///< Sec-Fetch-Site
    std::string cookies;
    std::string token;  ///< X-Tracewright-Token
    std::string if_none_match;
    std::string content_type;
    std::string body;
    bool one_host = true;  ///< exactly one Host header
};

}  // namespace tracewright
