#pragma once

#include "intake/sample_row.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace tracewright {

/// Where in a sample the titles stand and where data begin, as indices into it. What there is none
/// of lies at or past `data`, and `data` past the sample.
struct TableOutline {
    std::size_t header = 0;
    std::size_t units = static_cast<std::size_t>(-1);  ///< a second header row, of units
    std::size_t data = 0;
};

/// Finds data by content, a time beside something else, and the titles above it; or takes the line
/// of titles that was named.
TableOutline outline_of(const std::vector<SampleRow>& sample, const SourceFacts& facts,
                        std::optional<std::uint32_t> header_line);

/// The line of titles, one of them of a time, with nothing below but blank lines and units; empty
/// if there is something below, or no such titles.
std::optional<std::uint32_t> titles_without_data(const std::vector<SampleRow>& sample,
                                                 const SourceFacts& facts);

/// The most common count of cells from a row on.
std::size_t usual_width(const std::vector<SampleRow>& sample, std::size_t from);

}  // namespace tracewright
