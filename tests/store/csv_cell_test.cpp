// RFC 4180 (Shafranovich 2005), section 2; which signs begin a formula: from memory.
#include "store/csv_cell.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

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

}  // namespace
}  // namespace tracewright
