// RFC 4180 (Shafranovich 2005), section 2; which signs begin a formula: from memory.
#include "store/csv_cell.hpp"

#include "diary/formula_mark.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace tracewright {
namespace {

std::string without_quotes(std::string cell) {
    if (!cell.starts_with('"')) {
        return cell;
    }
    cell = cell.substr(1, cell.size() - 2);
    for (std::size_t at = 0; (at = cell.find("\"\"", at)) != std::string::npos; ++at) {
        cell.erase(at, 1);
    }
    return cell;
}

TEST(CsvCell, is_quoted_where_it_must_and_never_a_formula) {
    EXPECT_EQ(csv_cell("porridge"), "porridge");
    EXPECT_EQ(csv_cell(""), "");
    EXPECT_EQ(csv_cell("a, b"), "\"a, b\"");
    EXPECT_EQ(csv_cell("a \"b\""), "\"a \"\"b\"\"\"");
    EXPECT_EQ(csv_cell("2-3 eggs"), "2-3 eggs");
    EXPECT_EQ(csv_cell("=1+1"), "\"'=1+1\"");
    EXPECT_EQ(csv_cell("+1"), "\"'+1\"");
    EXPECT_EQ(csv_cell("-1"), "\"'-1\"");
    EXPECT_EQ(csv_cell("@now"), "\"'@now\"");
    EXPECT_EQ(csv_cell("\tx"), "\"'\tx\"");
    EXPECT_EQ(csv_cell("=HYPERLINK(\"x\")"), "\"'=HYPERLINK(\"\"x\"\")\"");
}

RC_GTEST_PROP(CsvCell, what_is_written_is_read_again, ()) {
    const auto text =
        *rc::gen::container<std::string>(rc::gen::elementOf(std::string("'=+-@a\", ")));
    RC_ASSERT(without_formula_mark(without_quotes(csv_cell(text))) == text);
}

}  // namespace
}  // namespace tracewright
