// What workbooks of people and devices hold, beside what a text of the same rows would.
#include "intake/bring_in.hpp"
#include "intake/cell_time.hpp"

#include "intake/intake_for_tests.hpp"
#include "intake/invented_workbook.hpp"
#include "intake/row_reader.hpp"
#include "intake/table_shape.hpp"
#include "intake/workbook.hpp"
#include "intake/workbook_sheets.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

InventedSheet wear(const std::string& name, int days_later) {
    return invented_wear(name, days_later, 12);
}

const InventedSheet about{"About", {{"Example Person", "invented"}, {"a note", "another"}}};

Intake read_book(const std::vector<InventedSheet>& sheets, const IntakeOptions& options = {}) {
    return bring_in_bytes(workbook_of(sheets), "test.xlsx", options);
}

}  // namespace

TEST(WorkbookFile, keeps_its_titles_above_rows_that_have_a_time_and_no_value_yet) {
    InventedSheet sheet{"Wear", {{"time", "heart rate", "glucose (mg/dL)"}}};
    for (int i = 0; i < 15; ++i) {
        sheet.rows.push_back({SheetDay{second_of_march + i / 96.0}});
        if (i > 2) {
            sheet.rows.back().insert(sheet.rows.back().end(), {62.0 + i, 198.0 + i});
        }
    }
    const Intake intake = read_book({sheet});
    EXPECT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(intake.readings.at(0).hundredths(), 20100);
    EXPECT_EQ(code(intake, "no_value"), 3U);
    EXPECT_EQ(count(intake, Fate::not_data), 1U);
}

// A whole number of days is exactly midnight; in a text a date alone is taken for it and noted.
TEST(WorkbookFile, notes_nothing_on_a_midnight_of_its_own) {
    const Intake intake = read_book({invented_wear("Wear", 0, 200)});
    EXPECT_EQ(intake.readings.size(), 200U);
    EXPECT_EQ(code(intake, "clock_missing"), 0U);
    std::string text = "time,glucose mg/dL\n";
    for (int minute = 10; minute < 50; ++minute) {
        text += "2026-03-02 23:" + std::to_string(minute) + ",120\n";
    }
    const Intake of_text = read(text + "2026-03-03,121\n2026-03-0,122\n");
    EXPECT_EQ(of_text.readings.size(), 41U);
    EXPECT_EQ(code(of_text, "clock_missing"), 1U);
    EXPECT_EQ(code(of_text, "time_not_read"), 1U);
}

TEST(WorkbookFile, tells_each_sheet_that_is_not_read_by_its_name) {
    const Intake intake = read_book({wear("Wear", 0), invented_meals("Meals"), {"Empty", {}}});
    EXPECT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(code(intake, "sheet_not_read"), 1U);
    EXPECT_EQ(note(intake, "sheet_not_read").found, "sheet 'Meals' with 3 rows, not read");
    EXPECT_THAT(note(intake, "sheet_not_read").expected, HasSubstr("this is 'Wear'"));
    IntakeOptions other;
    other.source.sheet = "Meals";
    EXPECT_EQ(read_book({wear("Wear", 0), invented_meals("Meals")}, other).diary.size(), 2U);
    const Intake none = read_book({about, wear("Wear", 0)});
    ASSERT_TRUE(none.error);
    EXPECT_THAT(none.error->sentence(), HasSubstr("in sheet 'About' (there are others)"));
}

TEST(WorkbookFile, gives_every_sheet_that_is_a_table_as_a_file_of_its_own) {
    const InventedFile file(
        workbook_of({wear("Jan", 0), wear("Feb", 31), invented_meals("Meals"), about}));
    const std::vector<Intake> sheets = bring_in_sheets(file.path());
    ASSERT_EQ(sheets.size(), 3U);
    EXPECT_EQ(sheets[0].file, file.path());
    EXPECT_EQ(sheets[1].file, file.path() + " [Feb]");
    EXPECT_EQ(sheets[1].readings.size(), 12U);
    EXPECT_EQ(sheets[1].readings[0].at - sheets[0].readings[0].at, std::chrono::hours{31 * 24});
    EXPECT_EQ(sheets[2].diary.size(), 2U);
    EXPECT_EQ(sheets[2].diary[0].source, file.path() + " [Meals]");
    EXPECT_EQ(code(sheets[0], "sheet_not_read"), 1U);
    EXPECT_EQ(note(sheets[0], "sheet_not_read").found, "sheet 'About' with 2 rows, not read");
    EXPECT_EQ(code(sheets[1], "sheet_not_read"), 0U);
}

TEST(WorkbookFile, whose_first_sheet_is_no_table_is_read_from_the_others) {
    const InventedFile file(workbook_of({about, wear("Wear", 0)}));
    const std::vector<Intake> sheets = bring_in_sheets(file.path());
    ASSERT_EQ(sheets.size(), 1U);
    EXPECT_EQ(sheets[0].readings.size(), 12U);
    EXPECT_EQ(note(sheets[0], "sheet_not_read").found, "sheet 'About' with 2 rows, not read");
}

TEST(WorkbookFile, of_which_something_was_named_is_read_for_that_sheet_alone) {
    const InventedFile file(workbook_of({wear("Jan", 0), wear("Feb", 31)}));
    IntakeOptions options;
    options.source.sheet = "Feb";
    const std::vector<Intake> named = bring_in_sheets(file.path(), options);
    ASSERT_EQ(named.size(), 1U);
    EXPECT_EQ(note(named[0], "sheet_not_read").found, "sheet 'Jan' with 13 rows, not read");
    options.source.sheet.reset();
    options.glucose_column = "2";
    EXPECT_EQ(bring_in_sheets(file.path(), options).size(), 1U);
}

TEST(WorkbookFile, reads_times_that_are_bare_numbers_of_days_as_a_text_does) {
    InventedSheet sheet{"Wear", {{"time", "glucose (mg/dL)"}}};
    for (int i = 0; i < 12; ++i) {
        sheet.rows.push_back({second_of_march + (i + 1) / 96.0, 120.0 + i});
    }
    for (const bool named : {false, true}) {
        IntakeOptions options;
        if (named) {
            options.time_column = "1";
        }
        const Intake intake = read_book({sheet}, options);
        ASSERT_EQ(intake.readings.size(), 12U) << named;
        EXPECT_EQ(intake.readings[0].at,
                  Instant{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2}} +
                      std::chrono::minutes{15});
    }
}

TEST(WorkbookFile, counts_days_from_where_the_workbook_says) {
    Workbook book{"xlsx workbook", {{"Wear", {}}}, true};
    for (std::uint32_t i = 0; i < 12; ++i) {
        const std::string days = std::to_string(second_of_march - 1462 + (i + 1) / 96.0);
        book.sheets[0].rows.push_back(
            {i + 1, {{days, 1, CellForm::number}, {"120", 2, CellForm::number}}});
    }
    auto source = SheetSource::of(book, "test.xlsx", {});
    ASSERT_TRUE(source);
    const TableShape shape = table_shape(sample_of(*source), source->facts());
    EXPECT_TRUE(shape.has_time);
    ASSERT_TRUE(shape.serial_times);
    const auto time = cell_time(*shape.serial_times, CellForm::number, source->facts().serial_1904);
    ASSERT_TRUE(time);
    EXPECT_EQ(time->date(DateOrder::year_first), CivilDate{std::chrono::year{2026} / 3 / 2});
}
