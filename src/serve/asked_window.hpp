#pragma once

#include "serve/reply.hpp"
#include "serve/request.hpp"
#include "time/zone_history.hpp"

#include <tl/expected.hpp>

#include <optional>

namespace tracewright {

/// ?from=2026-03-02&to=2026-03-15, both days whole by the client's clock; either alone is open on
/// the other side within `all`. Empty: neither was asked for. Error: 422 for what is no day, or a
/// window that ends before it begins.
tl::expected<std::optional<Interval>, Reply> asked_window(const RequestTarget& target,
                                                          const ZoneHistory& clock, Interval all);

}  // namespace tracewright
