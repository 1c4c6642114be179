#pragma once

#include "intake/ledger.hpp"

#include <iosfwd>

namespace tracewright {

/// Which sheets of a workbook were not read, a line each.
void say_of_sheets(const Ledger& ledger, std::ostream& out);

}  // namespace tracewright
