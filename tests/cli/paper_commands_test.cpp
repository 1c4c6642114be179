// handout, talk and letter: their JSON by its schema, their files, their errors. What they say
// stands in tests/days. Everybody in here is invented.
#include "cli/command_for_tests.hpp"
#include "cli/json_schema.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

using namespace tracewright;
using namespace tracewright::testing;
using nlohmann::json;
using ::testing::HasSubstr;
namespace fs = std::filesystem;

namespace {

const std::string source = TRACEWRIGHT_SOURCE_FOLDER;

Ran on_example(std::vector<std::string> args) {
    args.insert(args.begin() + 1, source + "/data/invented-wear.csv");
    args.insert(args.end(), {"--zone", "Europe/Berlin", "--as-of", "2026-03-17"});
    return run(args);
}

}  // namespace

TEST(PaperCommands, their_json_is_by_its_schema) {
    const json schema = json::parse(text_of(source + "/docs/formats/paper.schema.json"));
    for (const char* paper : {"handout", "talk", "letter"}) {
        const Ran ran = on_example({paper, "--json"});
        ASSERT_EQ(ran.exit, Exit::done) << ran.err;
        const json document = json::parse(ran.out);
        EXPECT_EQ(document["paper"], paper);
        EXPECT_GE(document["blocks"].size(), 8U);
        for (const std::string& misfit : misfits(document, schema, schema)) {
            ADD_FAILURE() << paper << " " << misfit;
        }
    }
}

TEST(PaperCommands, write_print_and_page_the_same_bytes_each_time) {
    const fs::path folder =
        fs::temp_directory_path() / ("tracewright-papers-" + std::to_string(::getpid()));
    for (const char* paper : {"handout", "talk", "letter"}) {
        const fs::path pdf = folder / (std::string(paper) + ".pdf");
        const fs::path html = folder / (std::string(paper) + ".html");
        ASSERT_EQ(on_example({paper, "--out", folder.string()}).exit, Exit::done);
        const std::string first = text_of(pdf) + text_of(html);
        EXPECT_THAT(text_of(pdf), ::testing::StartsWith("%PDF-1.5"));
        EXPECT_THAT(text_of(html), ::testing::StartsWith("<!doctype html>"));
        ASSERT_EQ(on_example({paper, "--out", folder.string()}).exit, Exit::done);
        EXPECT_EQ(text_of(pdf) + text_of(html), first);
    }
    fs::remove_all(folder);
}

TEST(PaperCommands, from_files_alone_what_was_not_asked_counts_as_risky) {
    const Ran ran = on_example({"handout"});
    EXPECT_THAT(ran.out, HasSubstr("Take 15 to 20 g of fast sugar"));
    EXPECT_THAT(ran.out, HasSubstr("even when your glucose looks normal"));
    EXPECT_THAT(ran.out, HasSubstr("Your clinic: ____"));
}

TEST(PaperCommands, a_reason_for_numbers_needs_a_practice_to_be_kept_in) {
    const Ran ran = on_example({"handout", "--show-numbers-because", "asked for"});
    EXPECT_EQ(ran.exit, Exit::wrong_usage);
    EXPECT_THAT(ran.err, HasSubstr("expected --practice"));
    const Ran blank = on_example({"handout", "--show-numbers-because", " "});
    EXPECT_EQ(blank.exit, Exit::wrong_usage);
    EXPECT_THAT(blank.err, HasSubstr("expected a reason"));
}
