#pragma once

#include <string>

namespace tracewright {

/// A text as a cell of a CSV file (RFC 4180, section 2). One that a spreadsheet would work out as a
/// formula (it begins with = + - @, a tab or a carriage return) has an apostrophe before it. For
/// texts alone: a number may begin with its sign.
std::string csv_cell(const std::string& text);

}  // namespace tracewright
