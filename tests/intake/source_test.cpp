#include "intake/open_source.hpp"

#include "intake/delimited_source.hpp"
#include "intake/encoding.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <xlsxwriter.h>

#include <filesystem>
#include <fstream>
#include <sstream>

using namespace tracewright;

namespace {

using Table = std::vector<std::vector<std::string>>;

Table rows_of(RowSource& source) {
    Table table;
    source.rewind();
    for (Row row; source.next(row);) {
        auto& cells = table.emplace_back();
        for (const Cell& cell : row.cells) {
            cells.emplace_back(cell.text);
        }
    }
    return table;
}

Table random_table(const std::vector<std::string>& alphabet) {
    Table table;
    const int columns = *rc::gen::inRange(2, 6);
    for (int r = *rc::gen::inRange(1, 8); r > 0; --r) {
        auto& row = table.emplace_back();
        for (int c = 0; c < columns; ++c) {
            std::string cell = c == 0 ? "x" : "";  // a row of nothing is a blank line
            for (int n = *rc::gen::inRange(0, 6); n > 0; --n) {
                cell += alphabet[static_cast<std::size_t>(
                    *rc::gen::inRange<int>(0, static_cast<int>(alphabet.size())))];
            }
            row.push_back(cell);
        }
    }
    return table;
}

// RFC 4180 by hand.
std::string written(const Table& table, char delimiter) {
    std::string text;
    for (const auto& row : table) {
        for (std::size_t c = 0; c < row.size(); ++c) {
            std::string cell = "\"";
            for (const char ch : row[c]) {
                cell += ch == '"' ? "\"\"" : std::string(1, ch);
            }
            text += (c > 0 ? std::string(1, delimiter) : "") + cell + "\"";
        }
        text += "\r\n";
    }
    return text;
}

}  // namespace

RC_GTEST_PROP(DelimitedSource, reads_back_any_table_in_any_delimiter, ()) {
    const Table table = random_table({"a", "1", ",", ";", "\t", "|", "\"", "\n", "\xC3\xA4", " "});
    for (const char delimiter : {',', ';', '\t', '|'}) {
        DelimitedSource source(written(table, delimiter), {}, delimiter);
        RC_ASSERT(rows_of(source) == table);
        RC_ASSERT(rows_of(source) == table);  // twice the same
    }
}

RC_GTEST_PROP(DelimitedSource, any_bytes_come_to_an_end, ()) {
    const auto bytes = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
    DelimitedSource source(bytes, {}, std::nullopt);
    (void)rows_of(source);
    RC_ASSERT(valid_utf8(decoded(bytes)->text));
}

TEST(DelimitedSource, columns_are_counted_in_characters) {
    DelimitedSource source("\xC3\xA4\xC3\xB6,b,c\n", {}, std::nullopt);
    Row row;
    ASSERT_TRUE(source.next(row));
    EXPECT_EQ(row.cells[1].column, 4U);
    EXPECT_EQ(row.cells[2].column, 6U);
}

// Fields with line breaks strung together past the limit of a row, or up to a fault, are read once:
// from each of their lines anew this would take hours.
TEST(DelimitedSource, a_row_too_long_is_one_fault_and_reading_goes_on_behind_it) {
    const std::string field = "\"a\nb\",";
    const auto fields = [&](std::size_t bytes) {
        std::string text;
        while (text.size() < bytes) {
            text += field;
        }
        return text;
    };
    DelimitedSource long_row(fields(DelimitedSource::most_line_bytes) + "c\nx,y\n", {}, ',');
    Row row;
    ASSERT_TRUE(long_row.next(row));
    EXPECT_EQ(row.fault, RowFault::line_too_long);
    ASSERT_TRUE(long_row.next(row));
    ASSERT_EQ(row.cells.size(), 2U);
    EXPECT_EQ(row.cells[1].text, "y");
    EXPECT_FALSE(long_row.next(row));

    DelimitedSource open_end(fields(1 << 20) + "\"c\nx,y\n", {}, ',');
    ASSERT_TRUE(open_end.next(row));
    EXPECT_EQ(row.fault, RowFault::unclosed_quote);
    ASSERT_TRUE(open_end.next(row));
    EXPECT_EQ(row.cells[1].text, "y");
    EXPECT_FALSE(open_end.next(row));
}

TEST(DelimitedSource, a_row_that_ends_just_past_the_limit_loses_no_line_behind_it) {
    std::string text;
    while (text.size() + 2000 <= DelimitedSource::most_line_bytes) {
        text += std::string(1000, 'a') + ",";
    }
    DelimitedSource source(text + std::string(5000, 'b') + "\nx,y\n", {}, ',');
    Row row;
    ASSERT_TRUE(source.next(row));
    ASSERT_TRUE(source.next(row));
    ASSERT_EQ(row.cells.size(), 2U);
    EXPECT_EQ(row.cells[0].text, "x");
}

TEST(DelimitedSource, a_doubled_quote_is_one_and_an_open_one_beyond_the_limit_is_told_as_too_long) {
    DelimitedSource source("\"a\"\"b\",c\n\"" +
                               std::string(DelimitedSource::most_field_bytes + 1, 'x') +
                               "\n\"\nx,y\n",
                           {}, ',');
    Row row;
    ASSERT_TRUE(source.next(row));
    EXPECT_EQ(row.cells[0].text, "a\"b");
    ASSERT_TRUE(source.next(row));
    EXPECT_EQ(row.fault, RowFault::field_too_long);
}

// Without quotes all delimiters are counted at once; a quoted field beyond the rows that are looked
// at changes nothing, one within them sends the text through the count for each.
RC_GTEST_PROP(Dialect, is_the_same_by_one_count_and_by_one_for_each_delimiter, ()) {
    const auto letter = rc::gen::element('a', '1', ' ', ';', ',', '\t', '|', '\n', '\r');
    const auto lines = *rc::gen::container<std::string>(letter);
    const std::string table = *rc::gen::element("a;1,5;x\n", "a,1.5,x\n", "a|b\n", "\n");
    std::string text = lines;
    for (int i = *rc::gen::inRange(0, 8); i > 0; --i) {
        text += table;
    }
    // A lone quoted field on a line of its own is a row of one field, which counts for none.
    RC_ASSERT(dialect_of(text + "\n").delimiter == dialect_of("\"q\"\n" + text + "\n").delimiter);
}

TEST(Dialect, decimal_commas_do_not_fool_the_delimiter) {
    EXPECT_EQ(dialect_of("a;b;c\n1,5;2,5;3,5\n1,5;2,5;3\n").delimiter, ';');
    EXPECT_EQ(dialect_of("a\tb\n1,5\t2\n").delimiter, '\t');
    EXPECT_EQ(dialect_of("title\n\na,b\n1,2\n3,4\n").delimiter, ',');
}

TEST(Encoding, a_name_that_is_no_encoding_is_refused) {
    EXPECT_FALSE(decoded("abc", "no-such-encoding").has_value());
    EXPECT_EQ(decoded("\xE4", "Windows-1252")->text, "\xC3\xA4");
}

// The same table written by a general spreadsheet library and as text reads alike.
TEST(Workbook, an_xlsx_reads_as_the_same_table_in_text) {
    const auto path = std::filesystem::temp_directory_path() /
                      ("tracewright-" + std::to_string(::getpid()) + ".xlsx");
    lxw_workbook* book = workbook_new(path.c_str());
    lxw_worksheet* sheet = workbook_add_worksheet(book, "Wear");
    lxw_format* date = workbook_add_format(book);
    format_set_num_format(date, "dd.mm.yyyy hh:mm");
    const char* titles[] = {"Time", "Glucose (mg/dL)", "Note"};
    for (lxw_col_t c = 0; c < 3; ++c) {
        worksheet_write_string(sheet, 0, c, titles[c], nullptr);
    }
    for (lxw_row_t r = 0; r < 8; ++r) {
        worksheet_write_number(sheet, r + 1, 0, 46083.0 + r / 96.0, date);
        worksheet_write_number(sheet, r + 1, 1, 5.7 * 18, nullptr);  // 102.60000000000001
    }
    worksheet_write_string(sheet, 3, 2, "rich & <odd>", nullptr);
    worksheet_write_boolean(sheet, 4, 2, 1, nullptr);
    workbook_add_worksheet(book, "Other");
    ASSERT_EQ(workbook_close(book), LXW_NO_ERROR);

    auto source = open_source(path.string());
    ASSERT_TRUE(source.has_value()) << source.error().sentence();
    EXPECT_EQ((*source)->facts().kind, "xlsx workbook");
    EXPECT_EQ((*source)->facts().sheet, "Wear");
    ASSERT_EQ((*source)->facts().other_sheets.size(), 1U);
    EXPECT_EQ((*source)->facts().other_sheets[0].name, "Other");
    EXPECT_EQ((*source)->facts().other_sheets[0].rows, 0U);
    const Table table = rows_of(**source);
    ASSERT_EQ(table.size(), 9U);
    EXPECT_EQ(table[0][1], "Glucose (mg/dL)");
    EXPECT_EQ(table[1][0], "46083");
    EXPECT_EQ(table[3][2], "rich & <odd>");
    EXPECT_EQ(table[4][2], "TRUE");
    Row row;
    (*source)->rewind();
    (*source)->next(row);
    (*source)->next(row);
    EXPECT_EQ(row.cells[0].form, CellForm::date);
    EXPECT_EQ(row.cells[1].form, CellForm::number);

    SourceOptions other;
    other.sheet = "3";
    EXPECT_FALSE(open_source(path.string(), other).has_value());
    std::filesystem::remove(path);
}

TEST(OpenSource, what_cannot_be_opened_is_told) {
    const auto missing = open_source("/nowhere/at/all.csv");
    ASSERT_FALSE(missing.has_value());
    EXPECT_EQ(missing.error().kind, FileErrorKind::not_readable);
    SourceOptions small;
    small.most_bytes = 3;
    EXPECT_EQ(open_source_bytes("abcdef", "x", small).error().kind, FileErrorKind::too_large);
}

// Every way of cutting a workbook short gives an error and never a crash.
TEST(OpenSource, workbooks_cut_short_are_refused) {
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/fuzz/corpus/xlsx/small.xlsx",
                       std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    const std::string whole = text.str();
    ASSERT_GT(whole.size(), 1000U);
    EXPECT_TRUE(open_source_bytes(whole, "x").has_value());
    for (std::size_t size = 4; size < whole.size(); size += 97) {
        const auto cut = open_source_bytes(whole.substr(0, size), "x");
        ASSERT_FALSE(cut.has_value()) << size;
        EXPECT_NE(cut.error().found.find("cut off or broken"), std::string::npos) << size;
    }
    const auto most = open_source_bytes(whole.substr(0, whole.size() / 2), "x");
    EXPECT_EQ(most.error().kind, FileErrorKind::broken_workbook);
    EXPECT_EQ(most.error().found, "a workbook that is cut off or broken");
}
