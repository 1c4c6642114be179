#include "cli/command_for_tests.hpp"

#include "cli/json_schema.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

using namespace tracewright;
using namespace tracewright::testing;
using nlohmann::json;
using ::testing::HasSubstr;
namespace fs = std::filesystem;

namespace {

const std::string source = TRACEWRIGHT_SOURCE_FOLDER;
const std::string example = source + "/data/invented-wear.csv";

json schema(const std::string& name) {
    std::ifstream file(source + "/docs/formats/" + name + ".schema.json");
    return json::parse(file);
}

void expect_fits(const json& document, const std::string& name) {
    const json s = schema(name);
    for (const std::string& misfit : misfits(document, s, s)) {
        ADD_FAILURE() << misfit;
    }
}

class TemporaryFolder {
  public:
    TemporaryFolder() {
        path_ = fs::temp_directory_path() / ("tracewright-cli-" + std::to_string(::getpid()));
        fs::create_directories(path_);
    }
    ~TemporaryFolder() { fs::remove_all(path_); }
    std::string write(const std::string& name, const std::string& text) const {
        std::ofstream(path_ / name, std::ios::binary) << text;
        return (path_ / name).string();
    }
    std::string path(const std::string& name = "") const { return (path_ / name).string(); }

  private:
    fs::path path_;
};

}  // namespace

TEST(Command, tells_its_version_with_zone_data_and_schema_versions) {
    const Ran ran = run({"--version"});
    EXPECT_EQ(ran.exit, Exit::done);
    EXPECT_THAT(ran.out, ::testing::ContainsRegex("tracewright [0-9]+\\.[0-9]+\\.[0-9]+"));
    EXPECT_THAT(ran.out, HasSubstr("zone data 20"));
    EXPECT_THAT(ran.out, HasSubstr("JSON look 1, measures 1, review 1"));
}

TEST(Command, wrong_usage_is_told_on_the_error_stream_with_exit_2) {
    const std::vector<std::vector<std::string>> wrong = {
        {},
        {"grade", example},
        {"look"},
        {"measures", example, "--unit", "grains"},
        {"measures", example, "--zone", "CET"},
        {"measures", example, "--from", "yesterday", "--to", "today"},
        {"measures", example, "--from", "2026-03-04"},
        {"measures", example, "--json", "--csv"},
        {"review", example, "--as-of", "soon"},
        {"review", example, "--travel", "2026-03-04T12:00"}};
    for (const auto& args : wrong) {
        const Ran ran = run(args);
        EXPECT_EQ(ran.exit, Exit::wrong_usage) << (args.empty() ? "" : args.back());
        EXPECT_TRUE(ran.out.empty()) << ran.out;
        EXPECT_FALSE(ran.err.empty());
    }
}

TEST(Command, help_is_there_for_each) {
    for (const char* command : {"look", "measures", "review"}) {
        const Ran ran = run({command, "--help"});
        EXPECT_EQ(ran.exit, Exit::done);
        EXPECT_THAT(ran.out, HasSubstr("--zone"));
    }
}

TEST(Command, json_is_one_object_on_the_output_and_nothing_else) {
    const Ran measures = run({"measures", example, "--json", "--zone", "Europe/Berlin"});
    EXPECT_EQ(measures.exit, Exit::done);
    EXPECT_TRUE(measures.err.empty()) << measures.err;
    expect_fits(json::parse(measures.out), "measures");
    const Ran look = run({"look", example, "--json"});
    expect_fits(json::parse(look.out), "look");
}

TEST(Command, measures_in_json_are_those_of_the_file_at_full_precision) {
    const json document = json::parse(run({"measures", example, "--json"}).out);
    const json& file = document["files"][0];
    EXPECT_EQ(file["file"], example);
    EXPECT_EQ(file["rows"]["read"], 1347);
    EXPECT_EQ(file["measures"]["mean"]["unit"], "mmol/L");
    EXPECT_EQ(file["window"]["denominator"], "from the first to the last reading");
    double sum = 0;
    for (const char* band : {"very_low", "low", "in_range", "high", "very_high"}) {
        sum += file["measures"][band]["value"].get<double>();
    }
    EXPECT_NEAR(sum, 100, 1e-9);
}

TEST(Command, show_unit_changes_levels_and_no_band) {
    const json own = json::parse(run({"measures", example, "--json"}).out)["files"][0]["measures"];
    const json shown = json::parse(
        run({"measures", example, "--json", "--show-unit", "mg/dL"}).out)["files"][0]["measures"];
    EXPECT_NEAR(shown["mean"]["value"].get<double>(), own["mean"]["value"].get<double>() * 18.016,
                1e-9);
    EXPECT_EQ(shown["in_range"]["value"], own["in_range"]["value"]);
}

TEST(Command, a_bad_file_is_told_with_its_address_and_the_others_are_still_done) {
    const TemporaryFolder folder;
    const std::string bad = folder.write("bad.csv", "");
    const Ran ran = run({"measures", bad, example, "--json"});
    EXPECT_EQ(ran.exit, Exit::bad_input);
    EXPECT_THAT(ran.err, HasSubstr(bad + ": found 0 bytes, expected a table of times and values"));
    const json document = json::parse(ran.out);
    expect_fits(document, "measures");
    EXPECT_EQ(document["files"][0]["error"]["code"], "empty");
    EXPECT_TRUE(document["files"][1].contains("measures"));
}

TEST(Command, an_open_question_is_exit_1_and_names_the_option_that_answers) {
    const TemporaryFolder folder;
    std::string text = "time,glucose mg/dL\n";
    for (int i = 0; i < 9; ++i) {
        text += "03/04/2026 0" + std::to_string(i) + ":00,120\n";
    }
    const std::string file = folder.write("open.csv", text);
    const Ran asked = run({"look", file, "--as-of", "2027-01-01"});
    EXPECT_EQ(asked.exit, Exit::cannot_answer);
    EXPECT_THAT(asked.out,
                HasSubstr("QUESTION: Is the first number of '03/04/2026 00:00' (line 2) the day"));
    EXPECT_THAT(asked.out, HasSubstr("--date-order"));
    EXPECT_EQ(run({"look", file, "--as-of", "2027-01-01", "--date-order", "day"}).exit, Exit::done);
}

TEST(Command, a_folder_is_one_call_and_keeps_its_order) {
    const TemporaryFolder folder;
    for (const char* name : {"b.csv", "a.csv", "c.csv"}) {
        folder.write(name,
                     "time,glucose mg/dL\n2026-03-02 08:00,120\n2026-03-02 08:05,121\n2026-03-02 "
                     "08:10,122\n");
    }
    folder.write(".hidden", "no");
    fs::create_directories(folder.path("within"));
    folder.write("within/d.csv", "time,glucose mg/dL\n2026-03-02 08:00,120\n");
    const Ran ran = run({"measures", folder.path(), "--json"});
    EXPECT_THAT(ran.err, HasSubstr(folder.path("within") + ": a folder within a folder, not read"));
    const json document = json::parse(ran.out);
    ASSERT_EQ(document["files"].size(), 3U);
    EXPECT_EQ(document["files"][0]["file"], folder.path("a.csv"));
    EXPECT_EQ(document["files"][2]["file"], folder.path("c.csv"));
    EXPECT_EQ(run({"measures", folder.path(), "--json", "--jobs", "1"}).out,
              run({"measures", folder.path(), "--json", "--jobs", "4"}).out);
}

// No reading: no window that isn't there, and exit 1 as the guide says.
TEST(Command, a_file_without_a_reading_has_no_window_and_is_exit_1) {
    const TemporaryFolder folder;
    const std::string meals =
        folder.write("meals.csv",
                     "time,meal,carbs g\n2026-03-02 08:00,porridge,40\n2026-03-02 12:30,soup,35\n"
                     "2026-03-02 19:00,stew,60\n");
    const Ran text = run({"measures", meals});
    EXPECT_EQ(text.exit, Exit::cannot_answer) << text.out << text.err;
    EXPECT_EQ(text.out.find("1970-01"), std::string::npos) << text.out;
    EXPECT_THAT(text.out, HasSubstr("no reading: nothing to measure"));
    EXPECT_THAT(text.err, HasSubstr(meals + ": found no reading, expected some to measure"));
    const std::string commas = folder.write("commas.csv",
                                            "time,glucose mmol/L\n2026-03-02 08:00,5,6\n"
                                            "2026-03-02 08:15,5,8\n2026-03-02 08:30,5,9\n");
    EXPECT_THAT(run({"measures", commas}).err,
                HasSubstr("expected some to measure; 3 rows were refused (too_many_fields): "
                          "`look` tells why"));
    const Ran both = run({"measures", meals, example, "--json"});
    EXPECT_EQ(both.exit, Exit::cannot_answer);
    const json document = json::parse(both.out);
    expect_fits(document, "measures");
    EXPECT_TRUE(document["files"][0]["window"].is_null());
    EXPECT_TRUE(document["files"][0]["measures"]["mean"]["value"].is_null());
    EXPECT_TRUE(document["files"][1]["window"].is_object());
}

TEST(Command, a_window_without_a_reading_is_told_as_asked_and_is_exit_1) {
    const Ran ran =
        run({"measures", example, "--json", "--from", "2019-01-01", "--to", "2019-01-03"});
    EXPECT_EQ(ran.exit, Exit::cannot_answer);
    EXPECT_THAT(ran.err, HasSubstr("found no reading in the window asked for"));
    EXPECT_THAT(json::parse(ran.out)["files"][0]["window"]["from"].get<std::string>(),
                HasSubstr("2019-01-01"));
}

TEST(Command, an_empty_folder_is_exit_1_and_named) {
    const TemporaryFolder folder;
    for (const char* command : {"measures", "look"}) {
        for (const bool as_json : {false, true}) {
            std::vector<std::string> args = {command, folder.path()};
            if (as_json) {
                args.emplace_back("--json");
            }
            const Ran ran = run(args);
            EXPECT_EQ(ran.exit, Exit::cannot_answer) << command;
            EXPECT_THAT(ran.err,
                        HasSubstr(folder.path() + ": found no file, expected some to read"));
            if (as_json) {
                expect_fits(json::parse(ran.out), command);
            }
        }
    }
}

TEST(Command, csv_has_a_row_for_each_file_and_measure) {
    const Ran ran = run({"measures", example, "--csv"});
    EXPECT_THAT(ran.out, ::testing::StartsWith(
                             "file,measure,value,unit,low95,high95,days,absent_because\r\n"));
    EXPECT_THAT(ran.out, HasSubstr(",in_range,"));
}

TEST(Command, a_review_is_written_whole) {
    const TemporaryFolder folder;
    const Ran ran =
        run({"review", example, "--zone", "Europe/Berlin", "--out", folder.path("review")});
    EXPECT_EQ(ran.exit, Exit::done) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("The review is in"));
    for (const char* file : {"review/review.html", "review/review.pdf", "review/review.json"}) {
        EXPECT_EQ(std::filesystem::status(folder.path(file)).permissions(),
                  std::filesystem::perms::owner_read | std::filesystem::perms::owner_write)
            << file;
    }
    std::ifstream html(folder.path("review/review.html"));
    std::ifstream pdf(folder.path("review/review.pdf"));
    std::ifstream text(folder.path("review/review.json"));
    EXPECT_TRUE(html && pdf && text);
    const json document = json::parse(text);
    expect_fits(document, "review");
    EXPECT_EQ(document["findings"][0]["code"], "very_low");
    EXPECT_EQ(document["as_of"], "2026-03-17T10:00:00+01:00");
}

// Safety rules 7 to 12: of files nothing is known of the client, and that counts as risky.
TEST(Command, a_review_of_files_offers_no_trial_behind_what_is_not_known) {
    const TemporaryFolder folder;
    const Ran ran =
        run({"review", example, "--zone", "Europe/Berlin", "--out", folder.path("review")});
    ASSERT_EQ(ran.exit, Exit::done) << ran.err;
    std::ifstream file(folder.path("review/review.json"));
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    EXPECT_EQ(text.find("\"run_trial\""), std::string::npos);
    EXPECT_EQ(text.find("varied by lot"), std::string::npos);
    EXPECT_NE(text.find("No trial is offered now."), std::string::npos);
}

TEST(Command, a_review_without_a_reading_is_exit_1) {
    const TemporaryFolder folder;
    const std::string diary =
        folder.write("diary.csv", "time,meal\n2026-03-02 08:00,bread\n2026-03-02 12:00,soup\n");
    EXPECT_EQ(run({"review", diary, "--out", folder.path("out")}).exit, Exit::cannot_answer);
    EXPECT_FALSE(fs::exists(folder.path("out")));
}

TEST(Command, a_folder_that_cannot_be_written_to_is_told) {
    const TemporaryFolder folder;
    const std::string file = folder.write("file", "x");
    const Ran ran = run({"review", example, "--out", file + "/below"});
    EXPECT_EQ(ran.exit, Exit::bad_input);
    EXPECT_THAT(ran.err, HasSubstr("expected a folder with room"));
}

TEST(Command, its_own_description_makes_man_page_and_completion) {
    const Ran man = run({"--describe", "man"});
    EXPECT_THAT(man.out, ::testing::StartsWith(".TH TRACEWRIGHT 1"));
    EXPECT_THAT(man.out, HasSubstr("COMMAND review"));
    EXPECT_THAT(man.out, HasSubstr("\\-\\-date\\-order"));
    EXPECT_THAT(man.out, HasSubstr(".B tracewright bring\\-in\n.I CLIENT\n.I FILE...\n.RI"));
    EXPECT_THAT(man.out, HasSubstr(".B tracewright client add\n.I NAME\n"));
    EXPECT_THAT(man.out, HasSubstr("COMMAND client export\n"));
    const Ran bash = run({"--describe", "bash"});
    EXPECT_THAT(bash.out, HasSubstr("look measures review"));
    EXPECT_THAT(bash.out, HasSubstr("--new-wear-after"));
    EXPECT_THAT(bash.out, HasSubstr("\"client export\"*) words=\" --help --out\""));
    EXPECT_THAT(bash.out, HasSubstr("\"client \"*) words=\"add list show"));
}

TEST(JsonSchema, tells_what_does_not_fit) {
    const json s = schema("measures");
    EXPECT_FALSE(misfits(json{{"version", 2}, {"files", json::array()}}, s, s).empty());
    EXPECT_FALSE(misfits(json{{"version", 1}}, s, s).empty());
    EXPECT_FALSE(
        misfits(json{{"version", 1}, {"files", json::array({json{{"fil", "x"}}})}}, s, s).empty());
}

namespace {

// A reading every 5 minutes from `first` to before `last`, in minutes of 2 March 2026; of a lower
// hour when `shift` is set.
std::string sensor_file(int first, int last, int shift = 0) {
    std::string text = "time,glucose mg/dL\n";
    for (int minute = first; minute < last; minute += 5) {
        const int day = 2 + minute / 1440;
        const int hour = minute % 1440 / 60;
        char line[64];
        std::snprintf(line, sizeof line, "2026-03-%02d %02d:%02d,%d\n", day, hour, minute % 60,
                      110 + (minute / 5) % 37 + shift);
        text += line;
    }
    return text;
}

json review_of(const TemporaryFolder& folder, const std::vector<std::string>& files, Ran& ran) {
    std::vector<std::string> args{"review"};
    args.insert(args.end(), files.begin(), files.end());
    args.insert(args.end(), {"--zone", "Europe/Berlin", "--out", folder.path("out")});
    ran = run(args);
    std::ifstream file(folder.path("out") + "/review.json");
    return json::parse(file, nullptr, false);
}

}  // namespace

// Interchange 4.4 row 19: the same again is a duplicate, in whatever file it comes.
TEST(Review, files_that_overlap_are_one_wear_and_what_repeats_is_told) {
    const TemporaryFolder folder;
    const std::string first = folder.write("a.csv", sensor_file(0, 4000));
    const std::string second = folder.write("b.csv", sensor_file(3000, 8000));
    Ran ran;
    const std::string told = review_of(folder, {first, second, first}, ran).dump();
    ASSERT_EQ(ran.exit, Exit::done) << ran.err;
    EXPECT_EQ(told.find("Two sensors at once"), std::string::npos);
    EXPECT_EQ(told.find("wears are joined here"), std::string::npos);
    EXPECT_THAT(ran.out, HasSubstr("b.csv: rows read 1000, stored 800, duplicate 200, "));
    EXPECT_THAT(ran.out, HasSubstr("a.csv: rows read 800, stored 0, duplicate 800, "));
}

TEST(Review, two_sensors_at_the_same_minutes_are_kept_apart) {
    const TemporaryFolder folder;
    const std::string first = folder.write("a.csv", sensor_file(0, 6000));
    const std::string second = folder.write("b.csv", sensor_file(0, 6000, 9));
    Ran ran;
    const std::string told = review_of(folder, {first, second}, ran).dump();
    ASSERT_EQ(ran.exit, Exit::done) << ran.err;
    EXPECT_THAT(told, HasSubstr("Two sensors at once"));
}

// A few finger-pricks a day are no sensor's sight of the day.
TEST(Review, levels_hours_apart_are_a_meters_or_asked_about) {
    const TemporaryFolder folder;
    std::string log;
    for (int day = 2; day < 16; ++day) {
        for (const char* clock : {"07:10", "12:30", "18:20", "22:00"}) {
            log += "2026-03-" + std::string(day < 10 ? "0" : "") + std::to_string(day) + " " +
                   clock + ",6.4\n";
        }
    }
    const std::string plain = folder.write("plain.csv", "time,glucose mmol/L\n" + log);
    const std::string titled = folder.write("titled.csv", "time,meter (mmol/L)\n" + log);
    const auto review = [&](const std::string& file, std::vector<std::string> more = {}) {
        std::vector<std::string> args{"review",        file,    "--zone",
                                      "Europe/Berlin", "--out", folder.path("out")};
        args.insert(args.end(), more.begin(), more.end());
        return run(args);
    };
    const Ran asked = review(plain);
    EXPECT_EQ(asked.exit, Exit::cannot_answer);
    EXPECT_THAT(asked.err, HasSubstr("--measured-by"));
    EXPECT_EQ(review(plain, {"--measured-by", "sensor"}).exit, Exit::done);
    EXPECT_THAT(review(plain, {"--measured-by", "meter"}).err,
                HasSubstr("found no glucose reading"));
    EXPECT_THAT(review(titled).err, HasSubstr("found no glucose reading"));
    EXPECT_THAT(run({"look", titled}).out, HasSubstr("readings 0, diary entries 56"));
    EXPECT_THAT(run({"look", plain}).out, HasSubstr("if a meter showed them, --measured-by meter"));
}

// Nothing seen is not nothing there (safety rule 5): a word for a low that is not known here.
TEST(Review, tells_of_levels_that_could_not_be_read) {
    const TemporaryFolder folder;
    std::string text = sensor_file(0, 6000);
    for (const char* clock : {"08:02", "08:07", "08:12"}) {
        text += std::string("2026-03-06 ") + clock + ",sotto\n";
    }
    Ran ran;
    const std::string told = review_of(folder, {folder.write("a.csv", text)}, ran).dump();
    ASSERT_EQ(ran.exit, Exit::done) << ran.err;
    EXPECT_THAT(told, HasSubstr("3 rows that bear a level could not be read"));
}
