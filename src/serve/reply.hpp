#pragma once

#include "intake/file_error.hpp"
#include "render/review_json.hpp"
#include "serve/event_stream.hpp"
#include "store/store_error.hpp"

#include <chrono>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tracewright {

/// What goes back over HTTP. Cheap to copy: the body is shared.
struct Reply {
    int status = 200;
    std::string content_type = "application/json";
    std::vector<std::pair<std::string, std::string>> headers;  ///< besides those all bear
    std::shared_ptr<const std::string> body;
    std::shared_ptr<EventStream> events;  ///< set: the reply goes on as a stream of events
    bool keeps = false;                   ///< may be kept by the browser, to be asked about anew
    std::string policy{};  ///< a content security policy of its own; empty: the page's
};

Reply json_reply(const Json& json, int status = 200);
Reply text_reply(std::string text, std::string content_type);
Reply no_content();

/// Problem details (RFC 9457) with a stable code: docs/api/README.md has them all.
Reply problem(int status, std::string_view code, std::string_view title, std::string_view detail);
/// The same of a file that gave nothing, with its line and column where there is one.
Reply problem_of(const FileError& error);
/// What the practice refused.
Reply problem_of(const StoreError& error);

/// What the program threw at, told without its words: they may hold what is a client's.
Reply fault_of_ours();
/// Until the next try of a secret may be made, so long.
Reply too_many_tries(std::chrono::seconds wait);

/// Status line and headers as sent, with what every reply bears: the content security policy, no
/// guessing of types, no referrer, no framing, and no keeping of personal data.
std::string head_of(const Reply& reply, std::string_view date, bool keep_alive);

/// The policy under which the page runs: its own files only, no inline script or style.
std::string_view page_policy();
/// A policy for a whole document of ours that loads nothing: its own style blocks by their SHA-256.
std::string document_policy(std::string_view html);

}  // namespace tracewright
