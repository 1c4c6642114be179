#include "intake/workbook_sheets.hpp"

#include <utility>

namespace tracewright {

namespace {

bool names_what_one_sheet_has(const IntakeOptions& options) {
    return options.source.sheet || options.header_line || options.time_column ||
           options.glucose_column;
}

bool is_table(const Intake& intake) {
    return !intake.error || intake.error->kind == FileErrorKind::needs_answer;
}

}  // namespace

void tell_sheet_not_read(Intake& intake, const OtherSheet& sheet, std::string expected) {
    intake.ledger.remark({0, 0, Fate::stored, "sheet_not_read",
                          "sheet '" + sheet.name + "' with " + std::to_string(sheet.rows) +
                              (sheet.rows == 1 ? " row" : " rows") + ", not read",
                          std::move(expected)});
}

std::vector<Intake> bring_in_sheets(const std::string& path, const IntakeOptions& options) {
    IntakeOptions of_one = options;
    of_one.tell_other_sheets = names_what_one_sheet_has(options);
    std::vector<Intake> intakes;
    intakes.push_back(bring_in(path, of_one));
    if (of_one.tell_other_sheets) {
        return intakes;
    }
    const std::vector<OtherSheet> others = intakes.front().facts.other_sheets;
    std::vector<OtherSheet> left_out;
    for (const OtherSheet& other : others) {
        if (other.rows == 0) {
            continue;
        }
        of_one.source.sheet = other.name;
        of_one.called = path + " [" + other.name + "]";
        Intake intake = bring_in(path, of_one);
        if (!is_table(intake)) {
            left_out.push_back(other);
            continue;
        }
        intakes.push_back(std::move(intake));
    }
    if (!is_table(intakes.front()) && intakes.size() > 1) {
        const SourceFacts& facts = intakes.front().facts;
        left_out.push_back({facts.sheet, facts.sheet_rows});
        intakes.erase(intakes.begin());
    }
    for (const OtherSheet& sheet : left_out) {
        tell_sheet_not_read(intakes.front(), sheet, "dates and times beside values");
    }
    return intakes;
}

}  // namespace tracewright
