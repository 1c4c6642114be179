#pragma once

#include "coaching/client_facts.hpp"
#include "coaching/licence.hpp"
#include "coaching/plan.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int plan_json_version = 1;

/// docs/formats/plan.schema.json.
Json json_of_plan(const Plan& plan, const ClientFacts& facts, const ReviewInput& input,
                  Licence licence);

Json json_of_change(const AgreedChange& change);

}  // namespace tracewright
