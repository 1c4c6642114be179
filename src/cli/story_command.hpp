#pragma once

#include "cli/client_of_change.hpp"
#include "cli/streams.hpp"

#include <string>

namespace tracewright {

struct StoryOptions {
    std::string html;  ///< a file to write as a page
};

/// Labs, wears, medicines, changes and trials on one line of dates, what was kept, what is not
/// known.
Exit story(const WhoseChange& whose, const StoryOptions& options, const Streams& streams);

}  // namespace tracewright
