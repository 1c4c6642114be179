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

}  // namespace

TEST(MealsCommand, json_is_by_its_schema) {
    std::ifstream file(source + "/docs/formats/meals.schema.json");
    const json schema = json::parse(file);
    const Ran ran = run({"meals", example, "--zone", "Europe/Berlin", "--json"});
    EXPECT_EQ(ran.exit, Exit::done) << ran.err;
    const json document = json::parse(ran.out);
    for (const std::string& misfit : misfits(document, schema, schema)) {
        ADD_FAILURE() << misfit;
    }
    EXPECT_GT(document["meals"].size(), 20U);
}

TEST(MealsCommand, the_same_seed_gives_the_same_bytes) {
    const std::vector<std::string> args = {"meals", example, "--zone", "Europe/Berlin", "--json"};
    EXPECT_EQ(run(args).out, run(args).out);
}

TEST(FoodsCommand, works_a_portion_out) {
    const Ran ran = run({"foods", "white", "rice", "long-grain", "--grams", "150", "--most", "1"});
    EXPECT_EQ(ran.exit, Exit::done);
    EXPECT_THAT(ran.out, HasSubstr("energy 195 kcal, carbohydrate 42.3 g (total, with fibre), "
                                   "fibre 0.6 g, available 41.7 g"));
}

TEST(FoodsCommand, says_when_there_is_none_and_refuses_no_weight) {
    EXPECT_EQ(run({"foods", "zzzz"}).exit, Exit::cannot_answer);
    EXPECT_EQ(run({"foods", "rice", "--grams", "0"}).exit, Exit::wrong_usage);
    EXPECT_EQ(run({"foods", "rice", "--table", "/nowhere.csv"}).exit, Exit::bad_input);
    const std::string table = source + "/data/foods.csv";
    const Ran asked = run({"foods", "rice", "--table", table});
    EXPECT_EQ(asked.exit, Exit::bad_input);
    EXPECT_THAT(asked.err, HasSubstr("expected --total (it is) or --available"));
    const Ran told = run({"foods", "mango", "--table", table, "--total"});
    EXPECT_EQ(told.exit, Exit::done) << told.err;
    EXPECT_THAT(told.err, HasSubstr("carbohydrate: column 5, 'carbohydrate_g' (total"));
}

TEST(FoodsCommand, works_a_diary_text_out_and_says_what_is_not_sure) {
    const Ran ran = run({"foods", "--eaten", "2 slices of wholemeal bread with cheese, no butter"});
    EXPECT_EQ(ran.exit, Exit::done) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("'2 slices of wholemeal bread': wholemeal bread, 64 g\n"));
    EXPECT_THAT(ran.out, HasSubstr("? food: 'cheese' can be several foods"));
    EXPECT_THAT(ran.out, HasSubstr("'butter': not eaten"));
    EXPECT_THAT(ran.out, HasSubstr("carbohydrate with fibre 28 g give or take 4, without 24 g"));
    EXPECT_EQ(run({"foods", "--eaten", "chicken soup"}).exit, Exit::cannot_answer);
    EXPECT_EQ(run({"foods"}).exit, Exit::wrong_usage);
    EXPECT_EQ(run({"foods", "rice", "--eaten", "rice"}).exit, Exit::wrong_usage);
}

TEST(FoodsCommand, json_is_by_its_schema) {
    std::ifstream file(source + "/docs/formats/foods.schema.json");
    const json schema = json::parse(file);
    const std::vector<std::vector<std::string>> commands = {
        {"foods", "rice", "--json"},
        {"foods", "zzzz", "--json"},
        {"foods", "--eaten", "2 toast or rice?, no soup and chicken soup", "--json"},
        {"foods", "--eaten", "", "--json", "apple"}};
    for (const auto& command : commands) {
        const Ran ran = run(command);
        const json document = json::parse(ran.out);
        for (const std::string& misfit : misfits(document, schema, schema)) {
            ADD_FAILURE() << command[1] << " " << misfit;
        }
    }
}

TEST(FoodsCommand, json_tells_the_basis_of_carbohydrate) {
    const json document = json::parse(run({"foods", "apple", "--json"}).out);
    EXPECT_EQ(document["version"], 1);
    ASSERT_FALSE(document["foods"].empty());
    EXPECT_EQ(document["foods"][0]["carbohydrate_basis"], "total, with fibre");
}
