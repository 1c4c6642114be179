// Questions on the open data, end to end: numbers are those of docs/open-data.md, the answers
// honest about what a free-living diary can't tell. Sources: Zhao et al.
// 2023, 10.1038/s41597-023-01940-7; Alsuhaymi et al. 2025, 10.5281/zenodo.15169263; both CC BY 4.0.
#include "cli/command_for_tests.hpp"
#include "intake/open_data.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

using namespace tracewright;
using namespace tracewright::testing;
using nlohmann::json;

namespace {

json asked(const std::string& person, const char* about, const char* because) {
    const std::string folder = (open_data() / "t1d_uom" / person).string();
    const Ran ran = run({"ask", folder + "/glucose.csv", "--diary", folder + "/meals.csv",
                         "--diary", folder + "/sleep_nights.csv", "--as-of", "2025-01-01",
                         "--about", about, "--because", because, "--json"});
    EXPECT_EQ(ran.exit, Exit::done) << ran.err;
    return json::parse(ran.out);
}

}  // namespace

TEST(OpenDataQuestions, sleep_against_fasting_uses_the_nights_there_are_and_mostly_cannot_tell) {
    SKIP_WITHOUT_OPEN_DATA();
    int yes = 0;
    for (const char* person : {"2306", "2401", "2405"}) {
        const json answers = asked(person, "fasting", "sleep");
        EXPECT_GE(answers["used"], 45) << person;
        EXPECT_GT(answers["left_out"].size(), 0U);
        for (const json& one : answers["left_out"]) {
            EXPECT_FALSE(one["why"].get<std::string>().empty());
        }
        yes += answers["findings"][0]["answer"] == "yes" ? 1 : 0;
    }
    EXPECT_LE(yes, 1);
}

TEST(OpenDataQuestions, dinner_carbohydrate_against_overnight_is_told_with_its_interval) {
    SKIP_WITHOUT_OPEN_DATA();
    for (const char* person : {"2306", "2401", "2405"}) {
        const json finding = asked(person, "overnight", "dinner-carbs,dinner-time")["findings"][1];
        EXPECT_EQ(finding["answer"], "cannot_tell") << person;
        EXPECT_LT(finding["estimate"]["interval95"][0], finding["estimate"]["interval95"][1]);
        EXPECT_FALSE(finding["next"]["sentence"].is_null());
    }
}

TEST(OpenDataQuestions, meals_of_type_2_are_compared_and_hardly_told_apart) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto folder = open_data() / "shanghai_t2dm";
    for (const char* wear : {"2014_0_20201224", "2091_0_20201029", "2095_0_20201116"}) {
        const std::string name = std::string(wear) + ".csv";
        const Ran ran =
            run({"meals", (folder / "glucose" / name).string(), "--diary",
                 (folder / "diary" / name).string(), "--as-of", "2025-01-01", "--json"});
        EXPECT_EQ(ran.exit, Exit::done) << ran.err;
        const json meals = json::parse(ran.out);
        EXPECT_GE(meals["comparison"]["foods"].size(), 3U) << wear;
        EXPECT_GT(meals["comparison"]["seen_once"].size(), 5U);
    }
}
