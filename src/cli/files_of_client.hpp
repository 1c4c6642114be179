#pragma once

#include "cli/file_options.hpp"
#include "cli/streams.hpp"
#include "findings/first_review.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What the files of one client gave, ready to be reviewed or asked.
struct FilesOfClient {
    ReviewInput input;
    Exit exit = Exit::done;  ///< of the reading: bad_input where a file could not be read
};

/// Reads readings and diary of one client from files, several being its wears. Each file's rows are
/// told on `told`, errors on streams.err. Error: the exit code, its sentence already said (wrong
/// usage, or no glucose reading at all).
tl::expected<FilesOfClient, Exit> files_of_client(const FileOptions& options,
                                                  const std::vector<std::string>& diaries,
                                                  const Streams& streams, std::ostream& told);

}  // namespace tracewright
