#pragma once

#include "client_life.hpp"
#include "file_dialect.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace tracewright {

/// One file as a coach receives it, with what is in it (for the manifest and for tests).
struct ClientFile {
    std::string name;   ///< "invented-wear-1.csv"
    std::string holds;  ///< "readings", "diary", "readings and diary"
    std::string wear;   ///< label; empty for a diary over several wears
    FileDialect dialect;
    WrittenTable table{};
    std::size_t readings = 0;  ///< rows with a reading that can be read
    std::size_t entries = 0;   ///< rows with something of the diary
    std::size_t repeated_rows = 0;
    std::size_t unreadable_rows = 0;

    /// The bytes of a delimited text; not of a workbook.
    std::string bytes() const { return delimited(table, dialect); }
};

/// The files of a life: one for each wear, and one for the diary of those wears that don't hold it
/// themselves.
std::vector<ClientFile> client_files(const ClientLife& life);

}  // namespace tracewright
