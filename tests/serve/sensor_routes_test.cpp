// What is known of the sensors over HTTP.
#include "cli/json_schema.hpp"
#include "serve/served_practice.hpp"
#include "source_folder.hpp"

#include <fstream>

namespace tracewright::testing {
namespace {

using nlohmann::json;

TEST(SensorRoutes, is_the_document_of_the_command_with_words_and_supplies_beside_it) {
    ServedPractice served;
    {
        const auto practice = opened_practice(served.path());
        auto record = practice->client(1);
        ASSERT_TRUE(record);
        record->facts.sensors = {6, 4};
        ASSERT_TRUE(practice->change_client(*record, acting()));
    }
    json told = served.get("/api/clients/c1/sensor", served.signed_in()).json();
    EXPECT_EQ(told["supplies"]["sensors"], (json{{"bought", 6}, {"used", 4}, {"left", 2}}));
    EXPECT_EQ(told["supplies"]["sessions"]["left"], 0);
    EXPECT_TRUE(told["last_reading"].is_object());
    told.erase("supplies");
    told.erase("last_reading");
    for (json& wear : told["wears"]) {
        EXPECT_FALSE(wear["from_words"].get<std::string>().empty());
        EXPECT_NE(wear["lasted_words"].get<std::string>().find(" h"), std::string::npos);
        wear.erase("from_words");
        wear.erase("lasted_words");
        EXPECT_EQ(wear.erase("number"), 1U);
        EXPECT_EQ(wear.erase("end_called"), 1U);
    }
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/docs/formats/sensor.schema.json");
    const json schema = json::parse(file);
    for (const std::string& misfit : misfits(told, schema, schema)) {
        ADD_FAILURE() << misfit;
    }
}

TEST(SensorRoutes, how_a_sensor_sat_and_ended_is_told_and_told_anew) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto tell = [&](const char* end, const char* overpatch, const char* site) {
        return served.send("POST", "/api/clients/c1/wears/1",
                           {{"end", end}, {"overpatch", overpatch}, {"site", site}}, who);
    };
    const auto wear = [&] { return served.get("/api/clients/c1/sensor", who).json()["wears"][0]; };
    EXPECT_EQ(tell("fell-off", "yes", "left arm").status, 204);
    EXPECT_EQ(wear()["end_called"], "fell-off");
    EXPECT_EQ(wear()["overpatch"], true);
    EXPECT_EQ(wear()["site"], "left arm");
    EXPECT_EQ(tell("planned", "unknown", "").status, 204);
    EXPECT_EQ(wear()["end_called"], "planned");
    EXPECT_TRUE(wear()["overpatch"].is_null());
    EXPECT_EQ(tell("eaten", "yes", "").code(), "unfit_field");
    EXPECT_EQ(served
                  .send("POST", "/api/clients/c1/wears/9",
                        {{"end", "planned"}, {"overpatch", "no"}, {"site", ""}}, who)
                  .status,
              404);
}

}  // namespace
}  // namespace tracewright::testing
