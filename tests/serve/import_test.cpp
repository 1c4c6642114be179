// Files brought in over the wire: seen before they are kept, kept whole or not at all, undone.
// The messy file is that of the project's own task 1; everybody is invented.
#include "serve/served_practice.hpp"
#include "store/client_export.hpp"

#include <gmock/gmock.h>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

const std::string preview = "/api/clients/c2/imports/preview?name=readings.csv";
const std::string imports = "/api/clients/c2/imports?name=readings.csv";

// 4 title rows, decimal commas, day first (no day above 12), LOW and HIGH, 3 repeated rows, a row
// with 'abc', a footer.
std::string messy() {
    std::string text =
        "Invented sensor;;\nClient: nobody;;\nMade for a test;;\n;;\nZeit;Glukose mmol/L;Notiz\n";
    for (int i = 0; i < 40; ++i) {
        const int minute = i * 5;
        text += "03.02.2026 0" + std::to_string(minute / 60) + ":" + (minute % 60 < 10 ? "0" : "") +
                std::to_string(minute % 60) + ";" +
                (i == 7    ? "LOW"
                 : i == 9  ? "HIGH"
                 : i == 20 ? "abc"
                           : "7," + std::to_string(i % 10)) +
                ";\n";
        if (i < 3) {
            text += text.substr(text.rfind("03.02."));
        }
    }
    return text + "End of the file;;\n";
}

std::string course(int person, double factor = 1) {
    std::string text = "Time,Glucose mg/dL\n";
    for (const Reading& reading : file_of(0, 288, 300, person, factor).readings) {
        const auto day = std::chrono::floor<std::chrono::days>(reading.at);
        const std::chrono::year_month_day ymd{day};
        const std::chrono::hh_mm_ss time{reading.at - day};
        char line[64];
        std::snprintf(line, sizeof line, "%04d-%02u-%02uT%02d:%02d:%02dZ,%d\n",
                      static_cast<int>(ymd.year()), static_cast<unsigned>(ymd.month()),
                      static_cast<unsigned>(ymd.day()), static_cast<int>(time.hours().count()),
                      static_cast<int>(time.minutes().count()),
                      static_cast<int>(time.seconds().count()), reading.hundredths() / 100);
        text += line;
    }
    return text;
}

std::string exported(ServedPractice& served, std::int64_t client) {
    const auto practice = opened_practice(served.path());
    const auto holdings = practice->holdings(client, acting());
    EXPECT_TRUE(holdings);
    std::string all;
    for (const ExportedFile& file : client_export(*holdings)) {
        all += file.bytes;
    }
    return all;
}

TEST(BringIn, a_messy_file_is_told_before_it_is_kept_and_every_row_is_accounted_for) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const Got asked = served.send_file(preview, messy(), who);
    ASSERT_EQ(asked.status, 200) << asked.body;
    // Every date fits both orders: asked, with a sample row, and nothing would be stored.
    const json question = asked.json()["questions"][0];
    EXPECT_EQ(question["answered_by"], "date_order");
    EXPECT_THAT(question["question"].get<std::string>(), HasSubstr("03.02.2026"));
    EXPECT_EQ(question["choices"], (json{"day", "month"}));
    EXPECT_EQ(served.send_file(imports, messy(), who).json()["import"], json());

    const Got got = served.send_file(preview + "&date_order=day", messy(), who);
    const json told = got.json();
    EXPECT_EQ(told["questions"], json::array());
    const json rows = told["rows"];
    EXPECT_EQ(rows["read"], 43);
    EXPECT_EQ(rows["stored"], 39);
    EXPECT_EQ(rows["duplicate"], 3);
    EXPECT_EQ(rows["conflict"], 0);
    EXPECT_EQ(rows["rejected"], 1);
    EXPECT_EQ(told["notes_by_code"]["beyond_the_limit"], 2);
    bool named = false;
    for (const json& note : told["notes"]) {
        named = named || (note["fate"] == "rejected" && note["found"] == "'abc'" &&
                          note["line"] == 29 && note["column"] == 18);
    }
    EXPECT_TRUE(named) << told["notes"].dump(1);
    EXPECT_EQ(told["sample"].size(), 10U);
    EXPECT_EQ(told["wears"][0]["from"], "Tue 3 February 00:00");
    // A look keeps nothing.
    EXPECT_EQ(served.get("/api/clients/c2/imports", who).json()["imports"], json::array());

    const Got kept = served.send_file(imports + "&date_order=day", messy(), who);
    EXPECT_EQ(kept.status, 201) << kept.body;
    EXPECT_EQ(kept.json()["rows"], rows);
    const Got again = served.send_file(imports + "&date_order=day", messy(), who);
    EXPECT_EQ(again.status, 200);
    EXPECT_EQ(again.json()["nothing_new"], true);
    EXPECT_EQ(again.json()["rows"]["stored"], 0);
    EXPECT_EQ(again.json()["rows"]["duplicate"], 42);
    EXPECT_EQ(again.json()["import"], json());
}

// Which hours were night can't be told of times in UTC by themselves (own rule, no source).
TEST(BringIn, the_zone_is_asked_for_where_the_file_tells_utc_and_the_client_none) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json added = served
                           .send("POST", "/api/clients",
                                 {{"name", "Teasel (invented)"}, {"changes", json::object()}}, who)
                           .json();
    const std::string of = "/api/clients/" + added["handle"].get<std::string>();
    const std::string to = of + "/imports?name=readings.csv";
    const json asked = served.send_file(to, course(1), who).json();
    ASSERT_EQ(asked["questions"].size(), 1U) << asked.dump(1);
    EXPECT_EQ(asked["questions"][0]["code"], "zone");
    EXPECT_EQ(asked["questions"][0]["answered_by"], json());
    EXPECT_EQ(asked["import"], json());
    const json client = served.get(of, who).json();
    const json told = {{"revision", client["revision"]},
                       {"name", client["name"]},
                       {"changes", {{"zones", {{{"zone", "Europe/Berlin"}}}}}}};
    ASSERT_EQ(served.send("POST", of + "/facts", told, who).status, 200);
    EXPECT_EQ(served.send_file(to, course(1), who).status, 201);
}

TEST(BringIn, another_persons_file_is_asked_about_and_changes_nothing) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const std::string before = exported(served, 1);
    const std::string target = "/api/clients/c1/imports?name=another.csv";
    const Got held = served.send_file(target, course(3, 1.3), who);
    ASSERT_EQ(held.status, 200) << held.body;
    EXPECT_EQ(held.json()["questions"][0]["code"], "whose_file");
    EXPECT_EQ(held.json()["rows"]["stored"], 0);
    EXPECT_EQ(held.json()["rows"]["conflict"], 288);
    EXPECT_EQ(exported(served, 1), before);
    // Told to be theirs, it is held row by row beside what stands there; undone, all is as before.
    const Got kept = served.send_file(target + "&whose=this_client", course(3, 1.3), who);
    ASSERT_EQ(kept.status, 201) << kept.body;
    EXPECT_NE(exported(served, 1), before);
    const auto number = std::to_string(kept.json()["import"].get<int>());
    EXPECT_EQ(served.send("POST", "/api/clients/c1/imports/" + number + "/undo", {}, who).status,
              204);
    EXPECT_EQ(exported(served, 1), before);
}

TEST(BringIn, what_is_no_table_is_refused_with_its_place) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const std::pair<std::string, std::string> bad[] = {
        {"", "empty"},
        {"PK\3\4 broken", "archive"},
        {"only words\nand more of them\n", "no_time_column"},
        {"Colour,Size\nred,3\nblue,4\n", "no_time_column"}};
    for (const auto& [bytes, code] : bad) {
        const Got got = served.send_file(preview, bytes, who);
        EXPECT_EQ(got.status, 422) << bytes;
        EXPECT_EQ(got.code(), code) << got.body;
        EXPECT_EQ(got.json()["detail"].get<std::string>().find("--"), std::string::npos);
    }
    for (const char* answer : {"&unit=stone", "&date_order=", "&header_line=0", "&colour=red"}) {
        EXPECT_EQ(served.send_file(preview + answer, messy(), who).code(), "unfit_answer")
            << answer;
    }
    EXPECT_EQ(served.send_file("/api/clients/c2/imports/preview", messy(), who).code(),
              "unfit_answer");
    EXPECT_EQ(served.send_file(preview, messy(), who, "text/csv").code(), "not_a_file");
    EXPECT_EQ(served.get("/api/clients/c2/imports", who).json()["imports"], json::array());
}

TEST(BringIn, a_file_too_long_is_not_read_and_nobody_unknown_is_listened_to) {
    ServedPractice served;
    const auto told = [&](const Sitting& who, std::size_t bytes) {
        Wire wire(served.port());
        wire.send(served.written("POST", preview, who,
                                 {{"Content-Type", "application/octet-stream"},
                                  {"Content-Length", std::to_string(bytes)}},
                                 ""));
        return wire.take().status;
    };
    const Sitting who = served.signed_in();
    EXPECT_EQ(told(who, 32UL * 1024 * 1024 + 1), 413);
    // Before a byte of it came.
    EXPECT_EQ(told({}, 20UL * 1024 * 1024), 401);
    EXPECT_EQ(told(served.signed_in("r1"), 20UL * 1024 * 1024), 403);
    EXPECT_EQ(told({who.cookie, "none"}, 20UL * 1024 * 1024), 403);
#ifdef TRACEWRIGHT_SANITIZED
    const std::size_t lines = 1024UL * 1024;  // three times as many are not read in time
#else
    const std::size_t lines = 3UL * 1024 * 1024;
#endif
    const std::string long_file = course(0) + std::string(lines, '\n');
    EXPECT_EQ(served.send_file(preview, long_file, who).status, 200);
}

TEST(BringIn, a_very_low_in_a_file_waits_for_an_answer_at_once) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    std::string low = "Time,Glucose mg/dL\n";
    for (int i = 0; i < 12; ++i) {
        low += "2026-03-10 0" + std::to_string(2 + i / 12) + ":" + (i < 2 ? "0" : "") +
               std::to_string(i % 12 * 5) + "," + std::to_string(i < 3 || i > 8 ? 90 : 45) + "\n";
    }
    ASSERT_EQ(served.send_file(imports, low, who).status, 201);
    const auto practice = opened_practice(served.path());
    EXPECT_EQ(practice->escalations(2)->size(), 1U);
    const std::string undo =
        "/api/clients/c2/imports/" + std::to_string(practice->imports(2)->back().id) + "/undo";
    ASSERT_EQ(served.send("POST", undo, json::object(), who).status, 204);
    EXPECT_TRUE(practice->escalations(2)->empty());
}

}  // namespace
}  // namespace tracewright::testing
