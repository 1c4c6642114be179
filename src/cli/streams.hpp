#pragma once

#include "access/sealing.hpp"
#include "time/instant.hpp"

#include <iosfwd>

namespace tracewright {

/// What a command may touch of the world around it.
struct Streams {
    std::ostream& out;
    std::ostream& err;
    bool terminal = false;  ///< err is a terminal: progress may be shown
    Instant now;            ///< the machine's clock, read once by main
    /// What a try of the passphrase costs on a practice that is made; main leaves it as it is.
    PassphraseWork passphrase_work = PassphraseWork::moderate;
};

/// Exit codes of every command.
enum class Exit : int {
    done = 0,
    cannot_answer = 1,  ///< an answer is needed first, or the data hold none
    wrong_usage = 2,
    bad_input = 3  ///< a file could not be read; the others were still done
};

}  // namespace tracewright
