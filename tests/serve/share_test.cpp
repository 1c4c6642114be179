// Shares over the wire: each kind given alone and every other asked for, the same refusal whatever
// the reason, every look listed, nothing else within reach of a holder. Everybody is invented; own
// rules, no source. That no reason can be told from a refusal follows OWASP's advice on what an
// answer gives away (from memory).
#include "coaching/share.hpp"
#include "access/share_token.hpp"
#include "intake/invented_photo.hpp"
#include "serve/route.hpp"
#include "serve/served_practice.hpp"
#include "store/diary_book.hpp"
#include "store/stretch_book.hpp"

#include <gmock/gmock.h>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

constexpr std::chrono::days a_day{1};

struct Given {
    std::int64_t id = 0;
    std::string address;
};

class Shares : public ::testing::Test {
  protected:
    void SetUp() override {
        owner = served.signed_in();
        tell([](ClientFacts& facts) {
            facts.consent.given_on = today() - 30 * a_day;
            facts.cautions.eating = {today() - 30 * a_day, "Sorrel (invented)", Answered::no};
            facts.medicines_asked_on = today() - 30 * a_day;
            facts.medicines.push_back({"metformin 500 mg (invented)", {}, {}});
            facts.labs.push_back({today() - 2 * a_day, "weight", 81.5, "kg"});
        });
        auto practice = opened_practice(served.path());
        BroughtIn diary;
        diary.source = "diary.csv";
        for (const auto& [kind, text] : {std::pair{DiaryKind::mood, "glum as invented"},
                                         std::pair{DiaryKind::note, "told nobody, as invented"},
                                         std::pair{DiaryKind::sleep, "slept as invented"}}) {
            DiaryEntry entry;
            entry.kind = kind;
            entry.at = at_second(86'400);
            entry.written = WallTime{entry.at.time_since_epoch()};
            entry.text = text;
            entry.source = diary.source;
            entry.source_line = static_cast<int>(kind) + 1;
            diary.diary.push_back(entry);
            ++diary.rows_stored;
        }
        ASSERT_TRUE(practice->bring_in(1, diary, WhoseFile::not_asked, acting(120)));
        ASSERT_TRUE(practice->add_note(1, "the coach's own words, as invented", acting(130)));
        const Instant now = ServedPractice::today();
        ASSERT_TRUE(StretchBook(*practice).tell(1, {now - 60 * a_day, now}, true,
                                                "the coach's own words on a stretch", acting(140)));
    }

    static CivilDate today() {
        return CivilDate{} + (ServedPractice::today() - Instant{}) / a_day * a_day;
    }

    // What is known of c1, told by another program beside the service.
    template <typename Change>
    void tell(Change change) {
        auto practice = opened_practice(served.path());
        auto record = *practice->client(1);
        change(record.facts);
        ASSERT_TRUE(practice->change_client(record, acting()));
    }

    json body(const std::string& kinds) const {
        return {{"recipient", "Reed, the spouse (invented)"},
                {"purpose", "to help at night"},
                {"kinds", kinds},
                {"days", "14"},
                {"until", "2026-04-08"}};
    }

    Given given(const std::string& kinds, const std::string& client = "c1") {
        const Got got =
            served.send("POST", "/api/clients/" + client + "/shares", body(kinds), owner);
        EXPECT_EQ(got.status, 201) << got.body;
        return {got.json().value("id", 0), got.json().value("address", "")};
    }

    // A share as kept before, with an end that is over: none such can be given today.
    std::string ended() {
        auto practice = opened_practice(served.path());
        Share share;
        share.recipient = "Reed (invented)";
        share.purpose = "to help";
        share.until = ServedPractice::today();
        const std::string token = drawn_share_token();
        EXPECT_TRUE(practice->give_share(1, share, *hash_of_share_token(token), acting(10)));
        return "/share/" + token;
    }

    // One of what can't be given today, from before that was so.
    Given given_before(const SharedKinds& kinds) {
        Share share;
        share.recipient = "Reed (invented)";
        share.purpose = "to help";
        share.kinds = kinds;
        share.until = ServedPractice::today() + 9 * a_day;
        const std::string token = drawn_share_token();
        const auto id = opened_practice(served.path())
                            ->give_share(1, share, *hash_of_share_token(token), acting(10));
        EXPECT_TRUE(id);
        return {id.value_or(0), "/share/" + token};
    }

    json shares() { return served.get("/api/clients/c1/shares", owner).json()["shares"]; }
    json last_look(std::int64_t id) {
        for (const json& share : shares()) {
            if (share["id"] == id && !share["looks"].empty()) {
                return share["looks"].back();
            }
        }
        return {};
    }

    ServedPractice served;
    Sitting owner;
};

std::string with_hyphens(SharedKind kind) {
    return address_of(kind);
}

// What a page bears for a kind and for no other. Empty: nothing that is not in another, too.
std::string only_in(SharedKind kind) {
    switch (kind) {
        case SharedKind::hours_in_range:
            return "Hours in range</h2>";
        case SharedKind::lows:
            return "Lows</h2>";
        case SharedKind::day_sheets:
            return "Day by day</h2>";
        case SharedKind::diary:
            return "slept as invented";
        case SharedKind::food_amounts:
            return "45.5 g carbohydrate";
        case SharedKind::meal_photos:
            return "Photos of meals are not shown on this page.";
        case SharedKind::mood:
            return "glum as invented";
        case SharedKind::notes:
            return "told nobody, as invented";
        case SharedKind::weight:
            return "81.5 kg";
        case SharedKind::medicines:
            return "Medicines</h2>";
        case SharedKind::letter:
            return "Letter to the prescriber</h2>";
    }
    return "";
}

TEST_F(Shares, each_kind_alone_opens_itself_and_nothing_else) {
    for (const SharedKind kind : every_shared_kind) {
        const Given share = kind == SharedKind::meal_photos ? given_before(SharedKinds().add(kind))
                                                            : given(name_of(kind));
        const Got whole = served.get(share.address);
        EXPECT_EQ(whole.status, 200) << name_of(kind);
        EXPECT_THAT(whole.body, Not(HasSubstr("the coach's own words")));
        EXPECT_EQ(whole.body.find("marked by a coach") != std::string::npos,
                  kind == SharedKind::day_sheets)
            << name_of(kind);
        if (kind != SharedKind::letter) {
            EXPECT_THAT(whole.body, Not(HasSubstr("Tansy (invented)"))) << name_of(kind);
            EXPECT_THAT(whole.body, Not(HasSubstr(">c1<"))) << name_of(kind);
        }
        for (const SharedKind other : every_shared_kind) {
            SCOPED_TRACE(std::string(name_of(kind)) + " given, asked for " + name_of(other));
            const Got got = served.get(share.address + "/" + with_hyphens(other));
            EXPECT_EQ(got.status, kind == other ? 200 : 403);
            const json look = last_look(share.id);
            EXPECT_EQ(look["asked"], name_of(other));
            EXPECT_EQ(look["answer"], kind == other ? "open" : "not in scope");
            if (kind == other) {
                EXPECT_THAT(whole.body, HasSubstr(only_in(other)));
                EXPECT_THAT(got.body, HasSubstr(only_in(other)));
            } else {
                EXPECT_THAT(got.body, HasSubstr("Not allowed."));
                EXPECT_THAT(whole.body, Not(HasSubstr(only_in(other))));
            }
        }
    }
}

TEST_F(Shares, a_holder_is_told_the_same_whatever_the_reason) {
    const Given lows = given("lows");
    const std::string scope = served.get(lows.address + "/mood").body;
    const std::string over = ended();
    const Given revoked = given("lows");
    ASSERT_EQ(served.get(revoked.address).status, 200);
    ASSERT_EQ(served
                  .send("POST", "/api/clients/c1/shares/" + std::to_string(revoked.id) + "/revoke",
                        {}, owner)
                  .status,
              204);
    const Given other = given("lows", "c2");  // whose consent was never told
    for (const std::string& target :
         {std::string("/share/none"), "/share/" + drawn_share_token(), over, over + "/lows",
          revoked.address, revoked.address + "/lows", other.address, lows.address + "/c2",
          lows.address + "/../c2", lows.address + "/lows/c2", lows.address + "/api/clients"}) {
        const Got got = served.get(target);
        if (target.find("..") != std::string::npos) {
            EXPECT_EQ(got.status, 400) << target;
            continue;
        }
        EXPECT_EQ(got.status, 403) << target;
        EXPECT_EQ(got.body, scope) << target;
    }
    EXPECT_EQ(last_look(revoked.id)["answer"], "revoked");
    EXPECT_EQ(last_look(lows.id)["answer"], "not in scope");
    const json of_other = served.get("/api/clients/c2/shares", owner).json();
    EXPECT_EQ(of_other["shares"][0]["looks"][0]["answer"], "no consent");
    EXPECT_EQ(of_other["consent_holds"], false);
    // Revoking is not done twice, nor by way of another client.
    EXPECT_EQ(served
                  .send("POST", "/api/clients/c2/shares/" + std::to_string(lows.id) + "/revoke", {},
                        owner)
                  .status,
              404);
    EXPECT_EQ(served.get(lows.address).status, 200);
}

TEST_F(Shares, consent_withdrawn_closes_every_share_at_the_next_request) {
    const Given share = given("");
    ASSERT_EQ(served.get(share.address).status, 200);
    tell([](ClientFacts& facts) { facts.consent.withdrawn_on = today(); });
    EXPECT_EQ(served.get(share.address).status, 403);
    EXPECT_EQ(last_look(share.id)["answer"], "no consent");
    EXPECT_EQ(served.get("/api/clients/c1/shares", owner).json()["consent_holds"], false);
}

TEST_F(Shares, the_eating_screen_closes_its_kinds_whatever_was_given) {
    const Given share = given("hours in range, lows, food amounts, weight");
    tell([](ClientFacts& facts) { facts.cautions.eating.positive = Answered::yes; });
    for (const char* kind : {"hours-in-range", "food-amounts", "weight"}) {
        EXPECT_EQ(served.get(share.address + "/" + kind).status, 403) << kind;
        EXPECT_EQ(last_look(share.id)["answer"], "turned down");
    }
    const Got page = served.get(share.address);
    EXPECT_EQ(page.status, 200);
    EXPECT_THAT(page.body, HasSubstr(only_in(SharedKind::lows)));
    EXPECT_THAT(page.body, Not(HasSubstr("Hours in range")));
    EXPECT_THAT(page.body, Not(HasSubstr("g carbohydrate")));
    EXPECT_THAT(page.body, Not(HasSubstr("81.5 kg")));
    const json told = served.get("/api/clients/c1/shares", owner).json();
    EXPECT_EQ(told["closed_kinds"], (json{"hours in range", "day sheets", "food amounts",
                                          "meal photos", "weight", "letter"}));
}

// Nor can one be given, and no address below a share has one of the practice's own.
TEST_F(Shares, no_photo_of_a_meal_is_on_any_page) {
    auto practice = opened_practice(served.path());
    const auto entries = DiaryBook(*practice).entries(1, {Instant::min(), Instant::max()});
    const auto meal = std::ranges::find_if(
        *entries, [](const DiaryRecord& one) { return one.entry.kind == DiaryKind::meal; });
    ASSERT_NE(meal, entries->end());
    const Got added =
        served.send_file("/api/clients/c1/diary/entries/" + std::to_string(meal->id) + "/photos",
                         jpeg_of(64, 32), owner);
    ASSERT_EQ(added.status, 201) << added.body;
    const std::string photo = "/photos/" + added.json()["id"].dump();
    EXPECT_EQ(
        served.send("POST", "/api/clients/c1/shares", body("meal photos, diary"), owner).code(),
        "no_such_kind");
    SharedKinds all;
    for (const SharedKind kind : every_shared_kind) {
        all.add(kind);
    }
    const Given share = given_before(all);
    const Got page = served.get(share.address);
    EXPECT_EQ(page.status, 200);
    EXPECT_THAT(page.body, HasSubstr(only_in(SharedKind::meal_photos)));
    EXPECT_THAT(page.body, Not(HasSubstr("<img")));
    EXPECT_THAT(page.body, Not(HasSubstr("data:image")));
    EXPECT_EQ(served.get(share.address + photo).status, 403);
    EXPECT_EQ(served.get("/api/clients/c1" + photo).status, 401);
}

TEST_F(Shares, nothing_can_be_changed_through_one) {
    const Given share = given("");
    for (const char* method : {"POST", "PUT", "DELETE"}) {
        for (const std::string& target : {share.address, share.address + "/lows"}) {
            const Got got = served.send(method, target, json::object());
            EXPECT_EQ(got.status, 403) << method << " " << target;
            EXPECT_THAT(got.body, HasSubstr("Not allowed."));
            EXPECT_EQ(last_look(share.id)["asked"], "a change");
            EXPECT_EQ(last_look(share.id)["answer"], "nothing can be changed");
        }
    }
    EXPECT_EQ(served.get(share.address).status, 200);
}

// The token is no sitting: in no place where one could be told.
TEST_F(Shares, a_holder_reaches_no_other_place) {
    const Given share = given("");
    const std::string token = share.address.substr(std::string("/share/").size());
    for (const Route& route : routes()) {
        if (route.asks == Asks::anyone) {
            continue;
        }
        std::string target(route.pattern);
        for (const auto& [brace, value] : {std::pair<std::string, std::string>{"{handle}", "c1"},
                                           {"{id}", "1"},
                                           {"{date}", "2026-02-26"},
                                           {"{file}", "client.json"}}) {
            if (const auto at = target.find(brace); at != std::string::npos) {
                target.replace(at, brace.size(), value);
            }
        }
        const Sitting holder{"session=" + token, token};
        const Got got = route.method == Method::get
                            ? served.get(target, holder, {{"Authorization", "Bearer " + token}})
                            : served.send("POST", target, json::object(), holder);
        EXPECT_EQ(got.status, 401) << target;
    }
}

TEST_F(Shares, a_page_is_kept_by_nobody_and_runs_nothing) {
    const Given share = given("hours in range, lows, day sheets, letter");
    const Got page = served.get(share.address);
    ASSERT_EQ(page.status, 200);
    EXPECT_THAT(page.headers.at("cache-control"), HasSubstr("no-store"));
    EXPECT_EQ(page.headers.at("referrer-policy"), "no-referrer");
    const std::string policy = page.headers.at("content-security-policy");
    EXPECT_THAT(policy, HasSubstr("default-src 'none'"));
    EXPECT_THAT(policy, Not(HasSubstr("script-src")));
    EXPECT_THAT(policy, Not(HasSubstr("unsafe")));
    EXPECT_THAT(page.body, Not(HasSubstr("<script")));
    EXPECT_THAT(page.body, Not(HasSubstr("<form")));
    EXPECT_THAT(page.body, Not(HasSubstr("href=\"http")));
    EXPECT_THAT(page.body, Not(HasSubstr("src=\"http")));
    EXPECT_FALSE(page.headers.contains("set-cookie"));
    // Rules 5 and 6: the age of the data, and that this wakes nobody.
    EXPECT_THAT(page.body, HasSubstr("The last reading was"));
    EXPECT_THAT(page.body, HasSubstr("Not an alarm. Don't rely on this page"));
    for (const char* word : {"no lows", "cured"}) {
        EXPECT_THAT(page.body, Not(HasSubstr(word)));
    }
    const Got refused = served.get("/share/none");
    EXPECT_THAT(refused.headers.at("cache-control"), HasSubstr("no-store"));
}

// Safety rule 2: it stands before the other lows, told from the raw readings.
TEST_F(Shares, what_is_very_low_leads_a_share_of_lows) {
    {
        auto practice = opened_practice(served.path());
        BroughtIn night;
        night.source = "night.csv";
        for (int i = 0; i < 12; ++i) {
            night.readings.emplace_back(at_second(-86'400 + i * 300),
                                        Glucose{50 * 100, GlucoseUnit::mg_per_dl},
                                        std::chrono::seconds{300});
            ++night.rows_stored;
        }
        ASSERT_TRUE(practice->bring_in(1, night, WhoseFile::this_client, acting(140)));
    }
    json month = body("lows");
    month["days"] = "30";
    const Got given = served.send("POST", "/api/clients/c1/shares", month, owner);
    const std::string page = served.get(given.json()["address"]).body;
    const auto leads = page.find("below 54 mg/dL");
    ASSERT_NE(leads, std::string::npos) << page;
    EXPECT_GT(leads, page.find(">Lows</h2>"));
    EXPECT_LT(leads, page.find("lowest 50 mg/dL"));
}

// Task T21: the spouse sees no more than was given to the spouse, the prescriber the letter.
TEST_F(Shares, two_holders_see_each_their_own) {
    const Given spouse = given("");
    json for_the_prescriber = body("letter, lows, medicines");
    for_the_prescriber["days"] = "7";
    const Got got = served.send("POST", "/api/clients/c1/shares", for_the_prescriber, owner);
    const std::string prescriber = got.json()["address"];
    EXPECT_THAT(served.get(spouse.address).body, Not(HasSubstr("metformin")));
    EXPECT_THAT(served.get(spouse.address).body, HasSubstr("The last 14 days"));
    EXPECT_THAT(served.get(prescriber).body, HasSubstr("metformin 500 mg (invented)"));
    EXPECT_THAT(served.get(prescriber).body, HasSubstr("The last 7 days"));
    for (const char* kind : {"letter", "medicines", "diary", "mood", "notes"}) {
        EXPECT_EQ(served.get(spouse.address + "/" + kind).status, 403) << kind;
    }
    // Who looked and when, in order, stands where the coach sees it; the token nowhere.
    const json listed = shares();
    EXPECT_EQ(listed[0]["looks"].size(), 7U);
    EXPECT_EQ(listed[0]["looks"][0]["asked"], "the page");
    EXPECT_EQ(listed[0]["looks"][6]["asked"], "notes");
    EXPECT_EQ(listed[0]["looks"][6]["answer"], "not in scope");
    EXPECT_EQ(listed.dump().find(spouse.address.substr(7)), std::string::npos);
}

TEST_F(Shares, what_lacks_something_is_not_given) {
    const std::pair<const char*, const char*> wrong[] = {
        {"recipient", ""},    {"purpose", ""}, {"kinds", "everything"}, {"days", "0"},
        {"days", "fourteen"}, {"days", "367"}, {"until", "always"},     {"until", "2026-01-01"}};
    for (const auto& [field, value] : wrong) {
        json one = body("lows");
        one[field] = value;
        EXPECT_EQ(served.send("POST", "/api/clients/c1/shares", one, owner).status, 422)
            << field << ": " << value;
    }
    EXPECT_EQ(shares(), json::array());
}

TEST(SharesAtTheStart, open_nothing_until_a_coach_has_signed_in) {
    ServedPractice served;
    const Got got = served.get("/share/none");
    EXPECT_EQ(got.status, 503);
    EXPECT_THAT(got.body, HasSubstr("can't be opened just now"));
    EXPECT_TRUE(got.headers.contains("retry-after"));
}

}  // namespace
}  // namespace tracewright::testing
