// What is known of the sensors over HTTP.
#include "cli/json_schema.hpp"
#include "serve/served_practice.hpp"

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
    }
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_DIR) + "/docs/formats/sensor.schema.json");
    const json schema = json::parse(file);
    for (const std::string& misfit : misfits(told, schema, schema)) {
        ADD_FAILURE() << misfit;
    }
}

}  // namespace
}  // namespace tracewright::testing
