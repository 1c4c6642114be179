// Photos of meals over the wire: added, looked at, removed; nothing half kept, nothing told of
// where they come from, never part of a share. Everybody is invented; own rules, no source.
#include "diary/meal_photo.hpp"
#include "intake/invented_photo.hpp"
#include "serve/served_practice.hpp"
#include "store/meal_photo_book.hpp"

#include <gmock/gmock.h>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

const std::string client = "/api/clients/c2";
const std::string day = client + "/diary/2026-03-10";

class Photos : public ::testing::Test {
  protected:
    void SetUp() override {
        who = served.signed_in();
        ASSERT_EQ(served
                      .send("POST", client + "/diary",
                            {{"text", "8:10 porridge; walked 20 min"},
                             {"day", "2026-03-10"},
                             {"foods", json::array()}},
                            who)
                      .status,
                  201);
    }
    json entry(const std::string& kind) {
        const json shown = served.get(day, who).json();
        for (const json& one : shown["entries"]) {
            if (one["kind"] == kind) {
                return one;
            }
        }
        return {};
    }
    std::string of(const json& one) {
        return client + "/diary/entries/" + one["id"].dump() + "/photos";
    }
    std::string added() {
        const Got got =
            served.send_file(of(entry("meal")), with_segments(jpeg_of(32, 64), exif_of(6)), who);
        EXPECT_EQ(got.status, 201) << got.body;
        return client + "/photos/" + got.json()["id"].dump();
    }

    ServedPractice served;
    Sitting who;
};

TEST_F(Photos, one_is_kept_beside_its_meal_and_tells_nothing_of_where_it_comes_from) {
    EXPECT_EQ(entry("meal")["photos"], json::array());
    const std::string photo = added();
    EXPECT_EQ(entry("meal")["photos"].size(), 1U);
    const Got got = served.get(photo, who);
    EXPECT_EQ(got.status, 200);
    EXPECT_EQ(got.headers.at("content-type"), "image/jpeg");
    EXPECT_EQ(got.headers.at("x-content-type-options"), "nosniff");
    EXPECT_EQ(got.headers.at("cache-control"), "no-store");
    EXPECT_THAT(got.headers.at("content-security-policy"), HasSubstr("img-src 'self'"));
    EXPECT_TRUE(got.body.starts_with("\xFF\xD8"));
    EXPECT_THAT(got.body, Not(HasSubstr("Invented camera")));
    EXPECT_THAT(got.body, Not(HasSubstr("Exif")));
    const json list = served.get(client + "/photos", who).json()["photos"];
    ASSERT_EQ(list.size(), 1U);
    EXPECT_EQ(list[0]["entry"], entry("meal")["id"]);
    EXPECT_EQ(list[0]["meal_at"], "Tue 10 March 08:10");
}

TEST_F(Photos, it_follows_a_correction_and_stands_in_the_export) {
    const std::string photo = added();
    json form = entry("meal")["form"];
    form["text"] = "porridge with milk";
    ASSERT_EQ(
        served
            .send("POST", client + "/diary/entries/" + entry("meal")["id"].dump() + "/correct",
                  form, who)
            .status,
        200);
    EXPECT_EQ(entry("meal")["photos"].size(), 1U);
    const std::string name = "photo-" + photo.substr(photo.rfind('/') + 1) + ".jpg";
    const Got copy = served.get(client + "/export/" + name, who);
    EXPECT_EQ(copy.status, 200);
    EXPECT_EQ(copy.headers.at("content-type"), "image/jpeg");
    EXPECT_EQ(copy.body, served.get(photo, who).body);
}

TEST_F(Photos, removed_it_is_gone) {
    const std::string photo = added();
    EXPECT_EQ(served.send("POST", photo + "/remove", json::object(), who).status, 204);
    EXPECT_EQ(served.get(photo, who).status, 404);
    EXPECT_EQ(entry("meal")["photos"], json::array());
    EXPECT_EQ(served.send("POST", photo + "/remove", json::object(), who).status, 404);
}

TEST_F(Photos, what_is_no_photo_is_refused_in_words_and_nothing_is_kept) {
    const std::string to = of(entry("meal"));
    const std::string whole = jpeg_of(64, 32);
    for (const std::string& bytes : {std::string(), std::string("no picture"),
                                     whole.substr(0, whole.size() / 2), std::string("GIF89a")}) {
        const Got got = served.send_file(to, bytes, who);
        EXPECT_EQ(got.status, 422);
        EXPECT_EQ(got.code(), "unfit_photo");
        EXPECT_THAT(got.json()["detail"].get<std::string>(), HasSubstr("expected"));
    }
    EXPECT_EQ(served.send_file(to, whole, who, "image/jpeg").code(), "not_a_file");
    EXPECT_EQ(served.send_file(of(entry("movement")), whole, who).code(), "refused");
    EXPECT_EQ(served.send_file(to, std::string(12UL * 1024 * 1024 + 1, 'x'), who).status, 413);
    EXPECT_EQ(entry("meal")["photos"], json::array());
    for (std::size_t i = 0; i < most_photos_of_a_meal; ++i) {
        EXPECT_EQ(served.send_file(to, whole, who).status, 201);
    }
    EXPECT_EQ(served.send_file(to, whole, who).code(), "refused");
}

TEST_F(Photos, a_reader_looks_and_changes_nothing_and_nobody_sees_another_clients) {
    const std::string photo = added();
    const Sitting reader = served.signed_in("r1");
    EXPECT_EQ(served.get(photo, reader).status, 200);
    EXPECT_EQ(served.send_file(of(entry("meal")), jpeg_of(8, 8), reader).status, 403);
    EXPECT_EQ(served.send("POST", photo + "/remove", json::object(), reader).status, 403);
    EXPECT_EQ(served.get(photo).status, 401);
    std::string elsewhere = photo;
    elsewhere.replace(elsewhere.find("c2"), 2, "c1");
    EXPECT_EQ(served.get(elsewhere, who).status, 404);
    const auto audit = opened_practice(served.path())->audit(2);
    EXPECT_TRUE(std::ranges::any_of(
        *audit, [](const AuditLine& line) { return line.deed == "photo_seen"; }));
}

// Safety rule 12: c2's eating screen was never answered.
TEST_F(Photos, the_diary_says_that_the_clients_papers_have_none) {
    EXPECT_THAT(served.get(day, who).json()["eating_note"].get<std::string>(), HasSubstr("photos"));
}

}  // namespace
}  // namespace tracewright::testing
