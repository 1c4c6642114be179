#pragma once

#include "serve/reply.hpp"
#include "serve/request.hpp"
#include "time/zone_history.hpp"

#include <tl/expected.hpp>

#include <optional>

namespace tracewright {

/// The most days that one request is answered for: what is worked out grows with each.
constexpr std::chrono::days longest_window{93};

/// ?from=2026-03-02&to=2026-03-15, both days whole by the client's clock. Empty: neither was asked
/// for. Error: 422 for one without the other, what is no day, a window that ends before it begins,
/// and more than `longest_window`.
tl::expected<std::optional<Interval>, Reply> asked_window(const RequestTarget& target,
                                                          const ZoneHistory& clock);

}  // namespace tracewright
