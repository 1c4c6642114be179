#include "cli/ask_command.hpp"

#include "cli/command_for_tests.hpp"
#include "cli/json_schema.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

using namespace tracewright;
using namespace tracewright::testing;
using nlohmann::json;
using ::testing::HasSubstr;

namespace {

const std::string source = TRACEWRIGHT_SOURCE_FOLDER;
const std::string example = source + "/data/invented-wear.csv";

Ran asked(std::vector<std::string> more) {
    std::vector<std::string> args = {"ask", example, "--zone", "Europe/Berlin"};
    args.insert(args.end(), more.begin(), more.end());
    return run(args);
}

}  // namespace

TEST(AskCommand, lists_what_can_be_asked_without_a_file) {
    const Ran ran = run({"ask", "--list"});
    EXPECT_EQ(ran.exit, Exit::done);
    for (const OutcomeFacts& facts : all_outcomes()) {
        EXPECT_THAT(ran.out, HasSubstr(facts.code));
    }
    for (const CauseFacts& facts : all_causes()) {
        EXPECT_THAT(ran.out, HasSubstr(facts.change));
    }
}

// Safety rules 7 to 12: of files nothing is known of the client, and that counts as risky.
TEST(AskCommand, of_files_no_trial_is_offered_behind_what_is_not_known) {
    bool told = false;
    for (const std::string about : {"dinner", "in-range", "day-mean", "fasting"}) {
        const Ran ran = asked({"--about", about, "--scan", "--json"});
        const json document = json::parse(ran.out);
        for (const json& finding : document["findings"]) {
            EXPECT_NE(finding["next"]["step"], "run_trial") << finding.dump();
            const std::string next = finding["next"]["sentence"].dump();
            told = told || next.find("No trial is offered now.") != std::string::npos;
        }
    }
    for (const std::string because : {"sleep,movement", "dinner-time"}) {
        const Ran ran = asked({"--about", "fasting", "--because", because});
        EXPECT_EQ(ran.out.find("by lot"), std::string::npos) << ran.out;
        told = told || ran.out.find("No trial is offered now.") != std::string::npos;
    }
    EXPECT_TRUE(told);
}

TEST(AskCommand, json_is_the_whole_finding_by_its_schema) {
    std::ifstream file(source + "/docs/formats/ask.schema.json");
    const json schema = json::parse(file);
    for (const std::string about : {"fasting", "dinner", "in-range"}) {
        const Ran ran = asked({"--about", about, "--because", "sleep,movement", "--json"});
        EXPECT_EQ(ran.exit, Exit::done) << ran.err;
        const json document = json::parse(ran.out);
        for (const std::string& misfit : misfits(document, schema, schema)) {
            ADD_FAILURE() << misfit;
        }
        EXPECT_EQ(document["findings"].size(), 2U);
        EXPECT_EQ(document["about"]["code"], about);
    }
    const json scan = json::parse(asked({"--about", "day-mean", "--scan", "--json"}).out);
    EXPECT_THAT(misfits(scan, schema, schema), ::testing::IsEmpty());
}

TEST(AskCommand, the_same_seed_gives_the_same_bytes) {
    const std::vector<std::string> args = {"--about", "fasting", "--because",
                                           "sleep",   "--seed",  "7"};
    EXPECT_EQ(asked(args).out, asked(args).out);
}

TEST(AskCommand, refuses_what_it_does_not_know_and_says_what_there_is) {
    struct Row {
        std::vector<std::string> args;
        const char* says;
    };
    const Row rows[] = {
        {{"--about", "mood", "--because", "sleep"},
         "found --about 'mood', expected one of fasting"},
        {{"--about", "fasting", "--because", "coffee"},
         "found --because 'coffee', expected one of"},
        {{"--about", "fasting", "--because", "walk-after"},
         "expected a cause that can come before"},
        {{"--about", "fasting"}, "found no cause"},
        {{"--about", "fasting", "--because", "sleep", "--worth", "0"}, "found --worth"},
    };
    for (const Row& row : rows) {
        const Ran ran = asked(row.args);
        EXPECT_EQ(ran.exit, Exit::wrong_usage);
        EXPECT_THAT(ran.err, HasSubstr(row.says));
    }
}

TEST(AskCommand, text_tells_the_nights_and_what_would_settle_it) {
    const Ran ran = asked({"--about", "fasting", "--because", "sleep,dinner-carbs"});
    EXPECT_EQ(ran.exit, Exit::done);
    EXPECT_THAT(ran.out, HasSubstr("nights used"));
    EXPECT_THAT(ran.out, HasSubstr("Left out: "));
    // Two causes are too many for these nights: no model, so nothing was held equal.
    EXPECT_EQ(ran.out.find("Adjusted for"), std::string::npos) << ran.out;
    EXPECT_THAT(ran.out, HasSubstr("What goes together need not come from one another"));
    EXPECT_THAT(asked({"--about", "fasting", "--because", "dinner-carbs"}).out,
                HasSubstr("Adjusted for: wear"));
}
