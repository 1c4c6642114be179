#pragma once

#include <cstdint>
#include <string>

namespace tracewright {

/// Why a file as a whole gave nothing. The closed list is for machines; `found` and `expected` are
/// for people.
enum class FileErrorKind : std::uint8_t {
    not_readable,
    empty,
    not_a_table,  ///< binary, or text without a table in it
    archive,      ///< a zip whose members are to be brought in one by one
    broken_workbook,
    too_large,
    no_time_column,
    no_value_column,  ///< times, but neither glucose nor diary
    needs_answer      ///< a question must be answered first: see Intake::questions
};

/// The stable code: "not_readable", "empty", ...
const char* code_of(FileErrorKind kind);

/// An error with an address. Line and column are 1-based; 0 where the whole file is meant.
struct FileError {
    FileErrorKind kind = FileErrorKind::not_readable;
    std::string file;
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    std::string found;
    std::string expected;
    std::string what_to_do;

    /// "FILE:LINE:COLUMN: found ..., expected ...; ..." in one line.
    std::string sentence() const;
};

}  // namespace tracewright
