#pragma once

#include "intake/read_row.hpp"

#include <cstddef>
#include <cstdint>
#include <map>

namespace tracewright {

/// Columns that say something in rows that were read and were not read themselves: what stands
/// there is lost, and the file is told so once for each column, with how many rows.
class UnreadColumns {
  public:
    void see(const ReadRow& row);
    void tell(const TableShape& shape, Ledger& ledger) const;

  private:
    struct Seen {
        std::uint64_t rows = 0;
        std::uint32_t first_line = 0;
    };
    std::map<std::size_t, Seen> columns_;
};

}  // namespace tracewright
