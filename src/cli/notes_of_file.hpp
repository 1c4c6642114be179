#pragma once

#include "intake/ledger.hpp"

#include <iosfwd>

namespace tracewright {

/// What may be missing from all of a file, a line each: sheets that were not read, words that stand
/// often where glucose should.
void say_of_whole_file(const Ledger& ledger, std::ostream& out);

}  // namespace tracewright
