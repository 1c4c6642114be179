#pragma once

#include "intake/row_source.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>

namespace tracewright {

/// Which of a file's sensors each row is of, by the column that names them; a row that names none
/// is of the same as the row before it.
class RowSensor {
  public:
    /// Without a column all rows are of one sensor.
    explicit RowSensor(std::optional<std::size_t> column) : column_(column) {}

    /// 0 for the first sensor of the file, 1 for the next. Rows in the order of the file.
    std::uint32_t of(const Row& row);

  private:
    std::optional<std::size_t> column_;
    std::map<std::string, std::uint32_t> known_;
    std::uint32_t last_ = 0;
};

}  // namespace tracewright
