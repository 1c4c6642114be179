#pragma once

#include "store/client_table.hpp"
#include "store/practice_records.hpp"
#include "store/store_error.hpp"

namespace tracewright {

enum class Needs { a_look, a_change, an_owner };

/// `refused` for whom it is not theirs to do, who has left, and who was never here.
Stored<void> may(CoachTable& coaches, const Acting& acting, Needs needs);

}  // namespace tracewright
