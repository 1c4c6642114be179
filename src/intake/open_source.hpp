#pragma once

#include "intake/file_error.hpp"
#include "intake/row_source.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <memory>
#include <optional>
#include <string>

namespace tracewright {

/// What the user knows better than the guess.
struct SourceOptions {
    std::optional<std::string> encoding;
    std::optional<char> delimiter;
    std::optional<std::string> sheet;  ///< name or 1-based number
    std::size_t most_bytes = std::size_t{1} << 30;
};

/// Opens a file on disk: recognises what it is from its bytes (never its name) and how it is
/// written.
tl::expected<std::unique_ptr<RowSource>, FileError> open_source(const std::string& path,
                                                                const SourceOptions& options = {});

/// The same of bytes in memory; `name` is what errors and facts call it.
tl::expected<std::unique_ptr<RowSource>, FileError> open_source_bytes(
    std::string bytes, const std::string& name, const SourceOptions& options = {});

}  // namespace tracewright
