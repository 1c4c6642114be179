#pragma once

#include "intake/bring_in.hpp"
#include "intake/client_message.hpp"
#include "store/import_plan.hpp"

#include <span>
#include <string>

namespace tracewright {

/// Takes the readings and the diary out of `intake` for the practice; its ledger and guesses stay.
/// The source is the file's own name, without its folder.
BroughtIn brought_in_file(Intake& intake);

/// What a client wrote, as an import, so that it is undone as any other.
BroughtIn brought_in_message(std::span<const ProposedEntry> message, const std::string& source);

}  // namespace tracewright
