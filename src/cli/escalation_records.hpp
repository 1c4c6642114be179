#pragma once

#include "cli/streams.hpp"
#include "store/standing_escalations.hpp"

namespace tracewright {

/// Records what is new and says what is not answered, at once when something was stored: not only
/// when somebody asks for a review.
Exit say_escalations(PracticeStore& store, std::int64_t client, const ClientFacts& facts,
                     const Acting& acting, const Streams& streams);

}  // namespace tracewright
