#include "calibration/cells.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <iostream>

namespace tracewright {

void progress(int done, int of) {
    if (::isatty(STDERR_FILENO) == 1 && (done % 20 == 0 || done == of)) {
        std::cerr << fmt::format("\r[{:<40}] {} of {}{}",
                                 std::string(static_cast<std::size_t>(40 * done / of), '#'), done,
                                 of, done == of ? "\n" : "");
    }
}

}  // namespace tracewright
