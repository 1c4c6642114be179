#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <set>
#include <string>

namespace tracewright {

/// The different texts of one column, as far as it takes to say whether they name what many rows
/// are of (a person, a sensor) or number the rows.
class ColumnValues {
  public:
    /// A filled cell, in the order of the file.
    void see(const std::string& text);

    /// Up to `most` different ones.
    const std::set<std::string>& values() const { return values_; }
    bool differ() const { return values_.size() > 1; }
    /// Whether each row has a value of its own (nearly: rows are written twice), or the values
    /// count on from row to row. Fewer than six rows can't tell that.
    bool number_the_rows() const;

    static constexpr std::size_t most = 1000;

  private:
    std::set<std::string> values_;
    std::uint64_t filled_ = 0;
    std::uint64_t counted_on_ = 0;  // rows whose number is that of the row before and one
    std::optional<std::int64_t> previous_;
};

}  // namespace tracewright
