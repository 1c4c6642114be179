#pragma once

#include "client_life.hpp"

#include "findings/review_input.hpp"

namespace tracewright {

/// What a coach would have of a life that was played out: the sensors' readings and the diary as
/// the client wrote it.
ReviewInput input_of(const ClientLife& life);

}  // namespace tracewright
