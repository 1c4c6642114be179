#pragma once

#include "serve/route.hpp"

namespace tracewright {

/// One file of a client's export, to be kept by the coach.
Reply export_reply(Asked& asked);

/// Erases a client whose handle is said in {"confirm"}; 422 before an export, unless
/// {"without_export"} is "yes": the client wants none.
Reply erase_reply(Asked& asked);

}  // namespace tracewright
