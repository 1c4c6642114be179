#pragma once

#include "intake/sample_row.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What a cell looks like before anyone knows what its column means.
enum class Content { empty, time, date, clock, number, limit_word, text };

bool time_like(Content content);

/// What one cell holds, read once.
struct CellContent {
    Content content = Content::empty;
    bool unix_time = false;  ///< a number until a title says time
    std::optional<double> number;
};

CellContent content_of(const std::string& cell, CellForm form, const SourceFacts& facts);

/// What the cells of one column hold.
struct ColumnContent {
    std::map<Content, std::size_t> counts;
    std::size_t filled = 0;
    std::size_t unix_times = 0;
    std::size_t loose_clocks = 0;  ///< "evening", "ca. 20:00"
    std::vector<double> numbers;

    /// More than half of the filled cells.
    bool mostly(Content content) const;
    double median() const;  ///< of the numbers; 0 if there are none
};

ColumnContent column_content(const std::vector<SampleRow>& sample, std::size_t from,
                             std::size_t column, const SourceFacts& facts);

/// Numbers that may be glucose, by their median: 2 to 25 or 40 to 400.
bool glucose_like(const ColumnContent& content);

}  // namespace tracewright
