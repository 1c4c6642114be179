#include "diary/table_cells.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

using Rows = std::vector<std::vector<std::string>>;

TEST(TableCells, quotes_keep_commas_and_line_ends_together) {
    EXPECT_EQ(table_cells("a,\"b, c\"\r\n\"d\ne\",\n"), (Rows{{"a", "b, c"}, {"d\ne", ""}, {""}}));
    EXPECT_EQ(table_cells("\"say \"\"a\"\"\""), (Rows{{"say \"a\""}}));
    EXPECT_EQ(table_cells(""), (Rows{{""}}));
}

}  // namespace
}  // namespace tracewright
