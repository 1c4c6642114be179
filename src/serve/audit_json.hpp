#pragma once

#include "serve/reply.hpp"
#include "store/sqlite_practice.hpp"

#include <optional>
#include <span>

namespace tracewright {

/// Lines of the audit in words: {"lines": [...]}, each with when, who, what, and the client or
/// coach it was about (null where it was about none). When is told by that client's clock; by UTC,
/// and says so, where there is no client or no zone of theirs is known.
Stored<Json> json_of_audit(SqlitePractice& practice, std::span<const AuditLine> lines);

/// {"label": when, "coach": name} of one line about no client; null for none.
Stored<Json> json_of_last(SqlitePractice& practice, const std::optional<AuditLine>& line);

}  // namespace tracewright
