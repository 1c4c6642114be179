#pragma once

#include "render/drawn_paper.hpp"
#include "serve/reply.hpp"

namespace tracewright {

/// The paper as a page of its own, with the policy that allows its own style alone.
Reply page_of(const DrawnPaper& drawn);
/// The same in print; 422 paper_too_long where it does not fit on its one sheet.
Reply print_of(const DrawnPaper& drawn);

}  // namespace tracewright
