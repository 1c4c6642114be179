#pragma once

#include "cli/json_text.hpp"
#include "coaching/plan.hpp"

namespace tracewright {

/// docs/formats/plan.schema.json.
Json json_of_plan(const Plan& plan, const ClientFacts& facts, const ReviewInput& input,
                  Licence licence);

Json json_of_change(const AgreedChange& change);

}  // namespace tracewright
