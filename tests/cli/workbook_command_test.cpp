// A workbook of several sheets, by the commands that read files.
#include "cli/command_for_tests.hpp"
#include "intake/invented_workbook.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

constexpr int two_days = 192;  // readings

const InventedSheet meals = invented_meals("Meals");
const InventedSheet about{"About", {{"Example Person", "invented"}, {"a note", "another"}}};

}  // namespace

TEST(WorkbookCommand, reads_every_sheet_that_is_a_table_and_names_the_one_that_is_none) {
    const InventedFile file(workbook_of(
        {invented_wear("First", 0, two_days), invented_wear("Second", 7, two_days), meals, about}));
    const Ran look = run({"look", file.path(), "--json"});
    EXPECT_EQ(look.exit, Exit::done) << look.err;
    const auto files = nlohmann::json::parse(look.out)["files"];
    ASSERT_EQ(files.size(), 3U);
    EXPECT_EQ(files[1]["file"], file.path() + " [Second]");
    EXPECT_EQ(files[1]["readings"], 192);
    EXPECT_EQ(files[2]["diary_entries"], 2);
    EXPECT_THAT(run({"look", file.path()}).out, HasSubstr("sheet 'About' with 2 rows, not read"));

    const Ran measures = run({"measures", file.path()});
    EXPECT_EQ(measures.exit, Exit::done) << measures.err;
    EXPECT_THAT(measures.out, HasSubstr("[Second]"));
    EXPECT_THAT(measures.out, Not(HasSubstr("[Meals]")));
    EXPECT_THAT(measures.out, HasSubstr("sheet 'Meals' with 3 rows, not read"));
    EXPECT_THAT(measures.out, HasSubstr("sheet 'About' with 2 rows, not read"));
}

TEST(WorkbookCommand, reviews_every_sheet_and_says_what_it_left_out) {
    const InventedFile file(workbook_of({invented_wear("Wear", 0, two_days), meals, about}));
    const std::string out = file.path() + ".review";
    const Ran review = run({"review", file.path(), "--as-of", "2026-03-04", "--out", out});
    const std::string said = review.out + review.err;
    EXPECT_THAT(said, HasSubstr("[Meals]: rows read 2, stored 2"));
    EXPECT_THAT(said, HasSubstr("sheet 'About' with 2 rows, not read"));
    const Ran one =
        run({"review", file.path(), "--as-of", "2026-03-04", "--sheet", "Wear", "--out", out});
    EXPECT_THAT(one.out + one.err, HasSubstr("sheet 'Meals' with 3 rows, not read"));
    std::filesystem::remove_all(out);
}
