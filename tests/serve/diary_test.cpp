// The diary over the wire: a message seen before it is kept, entries corrected, struck out, undone.
// Everybody is invented.
#include "serve/served_practice.hpp"

#include <gmock/gmock.h>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

const std::string diary = "/api/clients/c2/diary";

json message(const std::string& text, const json& foods = json::array()) {
    return {{"text", text}, {"day", "2026-03-10"}, {"foods", foods}};
}

json day(ServedPractice& served, const Sitting& who, const std::string& date = "2026-03-10") {
    return served.get(diary + "/" + date, who).json();
}

TEST(Diary, a_message_is_seen_with_its_doubts_before_it_is_kept) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const std::string text = "8:10 porridge and banana, walked 20 min; dinner 7:30 zorbo";
    const Got seen = served.send("POST", diary + "/preview", message(text), who);
    ASSERT_EQ(seen.status, 200) << seen.body;
    const json entries = seen.json()["entries"];
    ASSERT_EQ(entries.size(), 3U) << entries.dump(1);
    EXPECT_EQ(entries[0]["at"], "Tue 10 March 08:10");
    EXPECT_EQ(entries[0]["kind"], "meal");
    EXPECT_EQ(entries[0]["foods"].size(), 2U);
    EXPECT_EQ(entries[1]["kind"], "movement");
    EXPECT_EQ(entries[2]["sure"], false);
    EXPECT_FALSE(entries[2]["foods"][0]["doubts"].empty());
    EXPECT_EQ(day(served, who)["entries"], json::array());

    const Got kept = served.send("POST", diary, message(text), who);
    EXPECT_EQ(kept.status, 201) << kept.body;
    EXPECT_EQ(kept.json()["stored"], 3);
    EXPECT_EQ(day(served, who)["entries"].size(), 3U);
    const Got again = served.send("POST", diary, message(text), who);
    EXPECT_EQ(again.status, 200);
    EXPECT_EQ(again.json()["there_already"], 3);
    EXPECT_EQ(again.json()["import"], json());
}

TEST(Diary, what_a_word_stands_for_is_told_once) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto found = served.get("/api/clients/c2/foods?words=rye+bread", who).json()["foods"];
    ASSERT_FALSE(found.empty());
    const std::string rye = found[0]["food"];
    const json choice = json::array({{{"said", "zorbo"}, {"food", rye}}});
    const auto taken = [&](const json& foods) {
        return served
            .send("POST", diary + "/preview", message("12:00 2 slices of zorbo", foods), who)
            .json()["entries"][0]["foods"][0]["food"];
    };
    EXPECT_NE(taken(json::array()), rye);
    EXPECT_EQ(taken(choice), rye);
    // A look keeps no choice; keeping does.
    EXPECT_NE(taken(json::array()), rye);
    ASSERT_EQ(served.send("POST", diary, message("12:00 2 slices of zorbo", choice), who).status,
              201);
    EXPECT_EQ(taken(json::array()), rye);
}

TEST(Diary, grams_are_added_up_only_where_the_eating_screen_allows) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto sum = [&] {
        return served.send("POST", diary + "/preview", message("8:10 150 g banana"), who)
            .json()["entries"][0]["sum"];
    };
    EXPECT_EQ(sum(), json());  // not answered
    EXPECT_THAT(day(served, who)["eating_note"].get<std::string>(), HasSubstr("eating screen"));
    const auto screen = [&](const char* answer, int revision) {
        return served
            .send("POST", "/api/clients/c2/facts",
                  {{"revision", revision},
                   {"name", "Bracken (invented)"},
                   {"changes", {{"cautions", {{"eating_screen", {{"positive", answer}}}}}}}},
                  who)
            .status;
    };
    const int revision = served.get("/api/clients/c2", who).json()["revision"];
    ASSERT_EQ(screen("no", revision), 200);
    EXPECT_THAT(sum().get<std::string>(), HasSubstr("g carbohydrate"));
    EXPECT_EQ(day(served, who)["eating_note"], json());
    ASSERT_EQ(screen("yes", revision + 1), 200);
    EXPECT_EQ(sum(), json());
}

TEST(Diary, an_entry_is_corrected_struck_out_and_brought_back) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    ASSERT_EQ(served.send("POST", diary, message("8:10 porridge; 9:00 walked 20 min"), who).status,
              201);
    const json entry = day(served, who)["entries"][0];
    json form = entry["form"];
    EXPECT_EQ(form["time"], "08:10");
    form["time"] = "7:45";
    form["text"] = "porridge with berries";
    form["carbohydrate_g"] = "32,5";
    const auto of = [&](const json& one, const std::string& rest) {
        return diary + "/entries/" + std::to_string(one["id"].get<int>()) + "/" + rest;
    };
    const Got corrected = served.send("POST", of(entry, "correct"), form, who);
    ASSERT_EQ(corrected.status, 200) << corrected.body;
    const json now = day(served, who)["entries"][0];
    EXPECT_EQ(now["time"], "07:45");
    EXPECT_EQ(now["words"], "porridge with berries, 32 g carbohydrate");
    EXPECT_EQ(now["corrected"], true);
    EXPECT_EQ(served.send("POST", of(entry, "correct"), form, who).status, 404);

    for (const auto& [field, value] : std::map<std::string, std::string>{
             {"kind", "feast"}, {"date", "soon"}, {"time", "25:00"}, {"carbohydrate_g", "much"}}) {
        json bad = now["form"];
        bad[field] = value;
        EXPECT_EQ(served.send("POST", of(now, "correct"), bad, who).code(), "unfit_entry") << field;
    }
    json skipped = now["form"];
    skipped["date"] = "2025-03-30";
    skipped["time"] = "02:30";
    EXPECT_EQ(served.send("POST", of(now, "correct"), skipped, who).code(), "unfit_entry");
    json later = now["form"];
    later["date"] = "2031-03-30";
    EXPECT_EQ(served.send("POST", of(now, "correct"), later, who).code(), "unfit_entry");

    const Got struck = served.send("POST", of(now, "strike"), json::object(), who);
    ASSERT_EQ(struck.status, 200) << struck.body;
    EXPECT_EQ(day(served, who)["entries"].size(), 1U);
    const std::string undo =
        "/api/clients/c2/imports/" + std::to_string(struck.json()["import"].get<int>()) + "/undo";
    ASSERT_EQ(served.send("POST", undo, json::object(), who).status, 204);
    EXPECT_EQ(day(served, who)["entries"][0]["words"], now["words"]);
}

TEST(Diary, a_finger_prick_that_is_very_low_waits_for_an_answer_at_once) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    ASSERT_EQ(served.send("POST", diary, message("7:00 finger prick 2.4 mmol/L"), who).status, 201);
    const auto practice = opened_practice(served.path());
    EXPECT_EQ(practice->escalations(2)->size(), 1U);
    EXPECT_EQ(day(served, who)["entries"][0]["words"], "2.4 mmol/L") << "not told twice";
    ASSERT_EQ(served.send("POST", diary, message("9:00 finger-prick 6,2 after a walk"), who).status,
              201);
    EXPECT_EQ(day(served, who)["entries"][1]["words"], "6.2 mmol/L, finger-prick 6,2 after a walk");
}

// The words and what they tell stay one: a level, a length, a number of grams.
TEST(Diary, a_corrected_text_is_read_anew) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    ASSERT_EQ(served
                  .send("POST", diary,
                        message("7:00 finger-prick 6.2 mmol/L; 8:10 porridge 45 g carbs; "
                                "9:00 walked 20 min"),
                        who)
                  .status,
              201);
    const auto correct = [&](std::size_t number, const char* field, const std::string& value) {
        const json entry = day(served, who)["entries"][number];
        json form = entry["form"];
        form[field] = value;
        return served.send(
            "POST", diary + "/entries/" + std::to_string(entry["id"].get<int>()) + "/correct", form,
            who);
    };
    const auto practice = opened_practice(served.path());
    const auto kept = [&](std::size_t number) { return practice->diary(2)->at(number); };
    const auto waiting = [&] { return practice->escalations(2)->size(); };

    EXPECT_EQ(waiting(), 0U);
    ASSERT_EQ(correct(0, "text", "finger-prick 2.6 mmol/L").status, 200);
    EXPECT_EQ(kept(0).glucose->hundredths, 260);
    EXPECT_EQ(waiting(), 1U);
    ASSERT_EQ(correct(0, "text", "finger-prick LO").status, 200);
    EXPECT_EQ(waiting(), 1U);
    EXPECT_EQ(correct(0, "text", "finger-prick before breakfast").code(), "unfit_entry");
    ASSERT_EQ(correct(0, "text", "6.2").status, 200);
    EXPECT_EQ(kept(0).glucose->hundredths, 620);
    EXPECT_EQ(waiting(), 0U);

    ASSERT_EQ(correct(1, "text", "porridge 60 g carbs").status, 200);
    EXPECT_EQ(kept(1).carbohydrate_g->value, 60);

    ASSERT_EQ(correct(2, "text", "walked 45 min").status, 200);
    EXPECT_EQ(kept(2).number, 45);
    EXPECT_EQ(*kept(2).until - kept(2).at, std::chrono::minutes{45});
    EXPECT_EQ(correct(2, "kind", "finger-prick").code(), "unfit_entry");
    ASSERT_EQ(correct(2, "kind", "note").status, 200);
    EXPECT_FALSE(kept(2).number);
    EXPECT_FALSE(kept(2).until);
}

// A level from a column stands in no words: other words about it leave it as it is.
TEST(Diary, a_value_that_no_words_told_stays) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    {
        DiaryEntry prick;
        prick.kind = DiaryKind::finger_prick;
        prick.at = Instant{std::chrono::sys_days{std::chrono::year{2026} / 3 / 10}} +
                   std::chrono::hours{12};
        prick.written = WallTime{prick.at.time_since_epoch()};
        prick.text = "before lunch";
        prick.glucose = Glucose{620, GlucoseUnit::mmol_per_l};
        BroughtIn file;
        file.source = "meter.csv";
        file.diary.push_back(prick);
        file.rows_stored = 1;
        ASSERT_TRUE(
            opened_practice(served.path())->bring_in(2, file, WhoseFile::not_asked, acting()));
    }
    const json entry = day(served, who)["entries"][0];
    json form = entry["form"];
    form["text"] = "before dinner";
    ASSERT_EQ(
        served
            .send("POST", diary + "/entries/" + std::to_string(entry["id"].get<int>()) + "/correct",
                  form, who)
            .status,
        200);
    EXPECT_EQ(opened_practice(served.path())->diary(2)->front().glucose->hundredths, 620);
}

TEST(Diary, what_does_not_fit_is_refused) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const char* rest : {"", "/preview"}) {
        const auto code = [&](const json& body) {
            return served.send("POST", diary + rest, body, who).code();
        };
        EXPECT_EQ(code(message(std::string(4001, 'x'))), "unfit_message");
        EXPECT_EQ(code({{"text", "x"}, {"day", "soon"}, {"foods", json::array()}}), "not_a_day");
        EXPECT_EQ(code(message("x", json::array({{{"said", "x"}, {"food", "no such"}}}))),
                  "unfit_message");
        EXPECT_EQ(code(message("x", "none")), "unfit_message");
        EXPECT_EQ(code({{"text", "x"}}), "missing_field");
    }
    EXPECT_EQ(served.send("POST", diary, message("  "), who).code(), "unfit_message");
    EXPECT_EQ(served.get(diary + "/soon", who).code(), "not_a_day");
}

}  // namespace
}  // namespace tracewright::testing
