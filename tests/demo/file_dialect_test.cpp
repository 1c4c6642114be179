#include "file_dialect.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

namespace {

const WrittenTable table{{"Title"}, {"Time", "Eaten"}, {{"07:00", "K\xC3\xA4se"}}, "End"};

}  // namespace

// RFC 4180 (Shafranovich 2005), section 2: fields with the delimiter, a quote or a line break are
// quoted; a quote within is doubled.
TEST(FileDialect, quotes_what_has_to_be_quoted) {
    const WrittenTable odd{
        {}, {"a"}, {{"x,y"}, {"say \"hi\""}, {"two\nlines"}, {"plain; text"}}, ""};
    EXPECT_EQ(delimited(odd, {}), "a\n\"x,y\"\n\"say \"\"hi\"\"\"\n\"two\nlines\"\nplain; text\n");
    EXPECT_EQ(delimited({{}, {"a;b"}, {}, ""}, {.delimiter = ';'}), "\"a;b\"\n");
}

TEST(FileDialect, writes_titles_columns_rows_and_footer_in_turn) {
    EXPECT_EQ(delimited(table, {.delimiter = '\t', .carriage_returns = true}),
              "Title\r\nTime\tEaten\r\n07:00\tK\xC3\xA4se\r\nEnd\r\n");
}

TEST(FileDialect, writes_each_encoding) {
    const WrittenTable one{{}, {"\xC3\xA4"}, {}, ""};
    EXPECT_EQ(delimited(one, {}), "\xC3\xA4\n");
    EXPECT_EQ(delimited(one, {.encoding = FileEncoding::utf_8_marked}), "\xEF\xBB\xBF\xC3\xA4\n");
    EXPECT_EQ(delimited(one, {.encoding = FileEncoding::windows_1252}), "\xE4\n");
    EXPECT_EQ(delimited(one, {.encoding = FileEncoding::utf_16_le}),
              std::string("\xFF\xFE\xE4\0\n\0", 6));
}

TEST(FileDialect, a_workbook_that_has_no_place_says_so) {
    EXPECT_FALSE(write_workbook(table, "/nowhere/at/all/table.xlsx"));
}
