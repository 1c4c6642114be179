#pragma once

#include "cli/command.hpp"

#include <sstream>
#include <string>
#include <vector>

namespace tracewright::testing {

struct Ran {
    Exit exit = Exit::done;
    std::string out;
    std::string err;
};

/// Runs the command as main does, the clock set to 17 March 2026 09:00 UTC, and trying a passphrase
/// of a practice that is made costs little.
inline Ran run(const std::vector<std::string>& args,
               PassphraseWork passphrase_work = PassphraseWork::least) {
    std::ostringstream out;
    std::ostringstream err;
    const Instant now =
        std::chrono::sys_days{std::chrono::year{2026} / 3 / 17} + std::chrono::hours{9};
    const Exit exit = run_command(args, {out, err, false, now, passphrase_work});
    return {exit, out.str(), err.str()};
}

}  // namespace tracewright::testing
