#include "cli/command_for_tests.hpp"
#include "cli/json_schema.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
namespace fs = std::filesystem;
using nlohmann::json;

namespace {

/// A folder of its own with an invented wear, a diary and facts.
class SheetCommands : public ::testing::Test {
  protected:
    SheetCommands()
        : folder_(fs::temp_directory_path() /
                  ("tracewright-sheets-" + std::to_string(::getpid()))) {
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        std::string rows = "time,glucose mg/dL\n";
        for (int day = 2; day < 16; ++day) {
            for (int quarter = 0; quarter < 96; ++quarter) {
                const int after_lunch = quarter - 48;
                const bool risen = after_lunch > 0 && after_lunch < 8;
                rows += "2026-03-" + two(day) + " " + two(quarter / 4) + ":" +
                        two(quarter % 4 * 15) + "," +
                        std::to_string((risen ? 130 + 4 * (day % 7) : 110) + quarter % 3) + "\n";
            }
        }
        write("wear.csv", rows);
        std::string meals = "time,eaten\n";
        for (int day = 2; day < 16; ++day) {
            meals += "2026-03-" + two(day) + " 12:00,rice\n";
        }
        write("meals.csv", meals);
        write("facts.json",
              R"json({"born_year": 1966, "medicines_asked_on": "2026-02-20", "medicines": [
                     {"written": "metformin 500"}], "cautions": {"pregnancy": "no",
                     "eating_screen": {"asked_on": "2026-02-01", "by": "Larch (invented)",
                     "positive": "no"}}})json");
    }
    ~SheetCommands() override { fs::remove_all(folder_); }

    static std::string two(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }
    void write(const std::string& name, const std::string& text) {
        std::ofstream(path(name), std::ios::binary) << text;
    }
    std::string path(const std::string& name) const { return (folder_ / name).string(); }
    Ran ran(std::vector<std::string> words, bool files = true) const {
        if (files) {
            words.insert(words.begin() + 1, {path("wear.csv"), path("meals.csv")});
        }
        words.insert(words.end(), {"--zone", "Europe/Berlin", "--as-of", "2026-03-16T12:00",
                                   "--facts", path("facts.json")});
        return run(words);
    }

    fs::path folder_;
};

json schema_of_sheets() {
    std::ifstream file(fs::path(TRACEWRIGHT_SOURCE_FOLDER) / "docs/formats/sheets.schema.json");
    return json::parse(file);
}

}  // namespace

TEST_F(SheetCommands, start_page_and_diary_sheets_need_no_readings) {
    const Ran start =
        ran({"start-page", "--site", "left arm", "--starts", "2026-03-17", "--out", path("papers")},
            false);
    EXPECT_EQ(start.exit, Exit::done) << start.err;
    EXPECT_THAT(start.out,
                AllOf(HasSubstr("Place: left arm."), HasSubstr("Last day: Mon 30 March 2026."),
                      HasSubstr("There is no sensor reading yet."),
                      HasSubstr("No telephone number is known (Your clinic)")));
    const Ran diary =
        ran({"diary-sheet", "--starts", "2026-03-17", "--out", path("papers")}, false);
    EXPECT_EQ(diary.exit, Exit::done) << diary.err;
    for (const char* name :
         {"start-page.pdf", "start-page.html", "diary-sheet-1.pdf", "diary-sheet-2.html"}) {
        EXPECT_TRUE(fs::exists(folder_ / "papers" / name)) << name;
    }
    const Ran wrong = ran({"start-page", "--starts", "soon"}, false);
    EXPECT_EQ(wrong.exit, Exit::wrong_usage);
    EXPECT_THAT(wrong.err, HasSubstr("found 'soon', expected a date"));
}

TEST_F(SheetCommands, explain_makes_what_the_data_can_draw_and_says_what_not) {
    const Ran all = ran({"explain", "--out", path("papers")});
    EXPECT_EQ(all.exit, Exit::done) << all.err;
    EXPECT_THAT(all.out, AllOf(HasSubstr("Glucose goes up after food."), HasSubstr("Shown: lunch"),
                               HasSubstr("Not made: explain-lab, because no laboratory A1c is on "
                                         "record."),
                               HasSubstr("Not made: explain-walking, because")));
    EXPECT_TRUE(fs::exists(folder_ / "papers/explain-food.pdf"));
    EXPECT_FALSE(fs::exists(folder_ / "papers/explain-lab.pdf"));
    const Ran lab = ran({"explain", "--page", "lab"});
    EXPECT_EQ(lab.exit, Exit::cannot_answer);
    const Ran wrong = ran({"explain", "--page", "weather"});
    EXPECT_EQ(wrong.exit, Exit::wrong_usage);
    EXPECT_THAT(wrong.err, HasSubstr("found --page 'weather'"));
    EXPECT_THAT(run({"explain", "--list"}).out, HasSubstr("one-meal"));
}

TEST_F(SheetCommands, their_json_is_as_its_schema_says) {
    for (const auto& words : std::vector<std::vector<std::string>>{
             {"start-page", "--json"}, {"diary-sheet", "--json"}, {"explain", "--json"}}) {
        const Ran made = ran(words, words[0] == "explain");
        EXPECT_EQ(made.exit, Exit::done) << made.err;
        const json schema = schema_of_sheets();
        EXPECT_THAT(misfits(json::parse(made.out), schema, schema), IsEmpty()) << words[0];
    }
}

TEST_F(SheetCommands, the_same_input_gives_the_same_bytes) {
    const auto bytes = [&](const char* folder) {
        EXPECT_EQ(ran({"explain", "--page", "food", "--out", path(folder)}).exit, Exit::done);
        std::ifstream file(folder_ / folder / "explain-food.pdf", std::ios::binary);
        std::ostringstream text;
        text << file.rdbuf();
        return text.str();
    };
    const std::string once = bytes("once");
    EXPECT_THAT(once, Not(IsEmpty()));
    EXPECT_EQ(once, bytes("twice"));
}
