#pragma once

#include "cli/file_options.hpp"
#include "cli/streams.hpp"

namespace tracewright {

/// A first review straight from files, several files being one client's wears: review.html,
/// review.pdf and review.json in the folder `out`.
Exit review(const FileOptions& options, const std::vector<std::string>& diaries,
            const std::string& out, const Streams& streams);

}  // namespace tracewright
