#pragma once

#include "intake/bring_in.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// As `bring_in`, and beside it every further sheet of a workbook that is a table of its own, as a
/// file called "FILE [SHEET]". Sheets that are none are noted with the first. Where a sheet, a
/// column or a line of titles is named, which are of one sheet, that one alone is read. Never
/// empty.
std::vector<Intake> bring_in_sheets(const std::string& path, const IntakeOptions& options = {});

/// Notes that a sheet was left out.
void tell_sheet_not_read(Intake& intake, const OtherSheet& sheet, std::string expected);

}  // namespace tracewright
