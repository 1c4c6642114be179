// Who may ask what: everything over real sockets on loopback.
#include "serve/served_practice.hpp"

#include <gmock/gmock.h>

#include <thread>

namespace tracewright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

TEST(SignIn, opens_the_practice_and_sets_a_cookie_no_script_reads) {
    ServedPractice served;
    EXPECT_EQ(served.get("/api/session").status, 401);
    const Got got = served.send("POST", "/api/sign-in",
                                {{"coach", "o1"}, {"passphrase", "invented passphrase"}});
    ASSERT_EQ(got.status, 200) << got.body;
    const std::string cookie = got.headers.at("set-cookie");
    EXPECT_THAT(cookie, HasSubstr("; HttpOnly; SameSite=Strict; Path=/"));
    EXPECT_EQ(cookie.find(';'), std::string("session=").size() + 64);
    EXPECT_EQ(got.json()["role"], "owner");
    EXPECT_EQ(got.json()["licence"], "none");
    const Sitting who{cookie.substr(0, cookie.find(';')), got.json()["token"]};
    EXPECT_EQ(served.get("/api/session", who).json(), got.json());
}

TEST(SignIn, tells_a_wrong_passphrase_from_no_such_coach_by_nothing) {
    ServedPractice served;
    const Got wrong =
        served.send("POST", "/api/sign-in", {{"coach", "o1"}, {"passphrase", "another one"}});
    const Got nobody = served.send("POST", "/api/sign-in",
                                   {{"coach", "nobody"}, {"passphrase", "invented passphrase"}});
    EXPECT_EQ(wrong.status, 401);
    EXPECT_EQ(wrong.code(), "wrong_passphrase");
    EXPECT_EQ(nobody.status, 401);
    EXPECT_EQ(nobody.body, wrong.body);
}

TEST(SignIn, a_coach_with_a_passphrase_of_their_own_is_not_let_in_by_the_practices) {
    ServedPractice served;
    for (const char* coach : {"k1", "r1"}) {
        EXPECT_EQ(served
                      .send("POST", "/api/sign-in",
                            {{"coach", coach}, {"passphrase", "invented passphrase"}})
                      .status,
                  401);
        EXPECT_FALSE(served.signed_in(coach).cookie.empty());
    }
    EXPECT_EQ(
        served.send("POST", "/api/sign-in", {{"coach", "k1"}, {"passphrase", "passphrase of r1"}})
            .status,
        401);
}

TEST(SignIn, after_five_tries_in_vain_waits) {
    ServedPractice served;
    const nlohmann::json wrong{{"coach", "o1"}, {"passphrase", "another one"}};
    for (int i = 0; i < 5; ++i) {
        EXPECT_EQ(served.send("POST", "/api/sign-in", wrong).status, 401);
    }
    const nlohmann::json right{{"coach", "o1"}, {"passphrase", "invented passphrase"}};
    const Got refused = served.send("POST", "/api/sign-in", right);
    EXPECT_EQ(refused.status, 429);
    EXPECT_EQ(refused.code(), "too_many_tries");
    EXPECT_EQ(refused.headers.at("retry-after"), "300");
    // Another coach is not kept out by it.
    EXPECT_FALSE(served.signed_in("k1").cookie.empty());
    served.wait(std::chrono::seconds{300});
    EXPECT_EQ(served.send("POST", "/api/sign-in", right).status, 200);
}

TEST(Session, ends_after_half_an_hour_without_a_request_and_after_twelve_hours) {
    ServedPractice served;
    Sitting who = served.signed_in();
    served.wait(std::chrono::minutes{29});
    EXPECT_EQ(served.get("/api/session", who).status, 200);
    served.wait(std::chrono::minutes{30});
    EXPECT_EQ(served.get("/api/session", who).status, 401);
    who = served.signed_in();
    for (int i = 0; i < 35; ++i) {
        served.wait(std::chrono::minutes{20});
        EXPECT_EQ(served.get("/api/session", who).status, 200);
    }
    served.wait(std::chrono::minutes{20});
    EXPECT_EQ(served.get("/api/session", who).status, 401);
}

TEST(Session, ends_at_once_when_signed_out) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const Sitting other = served.signed_in();
    EXPECT_EQ(served.send("POST", "/api/sign-out", {}, who).status, 204);
    EXPECT_EQ(served.get("/api/session", who).status, 401);
    EXPECT_EQ(served.get("/api/session", other).status, 200);
}

TEST(Session, a_coach_who_left_is_out) {
    ServedPractice served;
    const Sitting who = served.signed_in("k1");
    Wire stream(served.port());
    stream.send(served.written("GET", "/api/events", who, {}, ""));
    EXPECT_EQ(stream.take().status, 200);
    const auto practice = opened_practice(served.path());
    EXPECT_TRUE(practice->change_coach(
        2, {"k1", "Yarrow (invented)", CoachRole::coach, Licence::none, true}, acting()));
    stream.until("coach_changed", std::chrono::seconds{10});
    EXPECT_EQ(served.get("/api/caseload", who).status, 401);
    EXPECT_EQ(
        served.send("POST", "/api/sign-in", {{"coach", "k1"}, {"passphrase", "passphrase of k1"}})
            .status,
        401);
}

std::string filled(std::string_view pattern) {
    std::string target(pattern);
    const std::pair<std::string, std::string> places[] = {
        {"{handle}", "c1"}, {"{date}", "2026-02-26"}, {"{id}", "1"}, {"{token}", "none"}};
    for (const auto& [place, value] : places) {
        if (const auto at = target.find(place); at != std::string::npos) {
            target.replace(at, place.size(), value);
        }
    }
    return target;
}

std::string method_of(const Route& route) {
    std::string name = name_of(route.method);
    for (char& c : name) {
        c = static_cast<char>(std::toupper(c));
    }
    return name;
}

// The whole matrix: every route the service knows, asked by everybody.
TEST(Roles, every_route_lets_in_whom_its_table_says_and_nobody_else) {
    ServedPractice served;
    const std::map<std::string, Sitting> people{{"nobody", {}},
                                                {"reader", served.signed_in("r1")},
                                                {"coach", served.signed_in("k1")},
                                                {"owner", served.signed_in("o1")}};
    int asked = 0;
    for (const Route& route : routes()) {
        if (route.pattern == "/api/events" || route.pattern == "/api/sign-out") {
            continue;  // asked elsewhere: one stays open, the other ends the sitting
        }
        for (const auto& [name, who] : people) {
            const Got got = route.method == Method::get
                                ? served.get(filled(route.pattern), who)
                                : served.send(method_of(route), filled(route.pattern),
                                              nlohmann::json::object(), who);
            const bool needs_someone = route.asks != Asks::anyone;
            const bool may = route.asks == Asks::anyone || route.asks == Asks::who_may_look ||
                             (route.asks == Asks::who_may_change && name != "reader") ||
                             (route.asks == Asks::owner && name == "owner");
            SCOPED_TRACE(name + " " + std::string(route.pattern));
            if (needs_someone && name == "nobody") {
                EXPECT_EQ(got.status, 401);
            } else if (!may) {
                EXPECT_EQ(got.status, 403);
                EXPECT_EQ(got.code(), "not_allowed");
            } else if (route.pattern.starts_with("/share/")) {
                EXPECT_EQ(got.status, 403);  // no token of a share: the sitting helps nobody
            } else {
                EXPECT_NE(got.status, 401);
                EXPECT_NE(got.status, 403);
                EXPECT_NE(got.status, 0);
            }
            ++asked;
        }
    }
    EXPECT_GE(asked, 4 * 18);
}

TEST(Roles, without_sign_in_nothing_but_the_page_and_sign_in_answers) {
    ServedPractice served;
    for (const Route& route : routes()) {
        if (route.asks == Asks::anyone) {
            continue;
        }
        const Got got = route.method == Method::get
                            ? served.get(filled(route.pattern))
                            : served.send(method_of(route), filled(route.pattern), {});
        EXPECT_EQ(got.status, 401) << route.pattern;
        EXPECT_THAT(got.body, Not(HasSubstr("Tansy")));
    }
    const Got page = served.get("/");
    EXPECT_EQ(page.status, 200);
    EXPECT_EQ(served.get("/who-needs-me").body, page.body);
    EXPECT_EQ(served.get("/practice").body, page.body);
    EXPECT_EQ(served.get("/no-such.js").status, 404);
    // A cookie that was never given is nobody's.
    const Sitting forged{"session=" + std::string(64, 'a'), std::string(64, 'b')};
    EXPECT_EQ(served.get("/api/caseload", forged).status, 401);
}

TEST(Audit, holds_one_line_for_each_session_client_and_window) {
    ServedPractice served;
    const Sitting first = served.signed_in();
    const Sitting second = served.signed_in("r1");
    for (int i = 0; i < 3; ++i) {
        served.get("/api/clients/c1/measures", first);
        served.get("/api/clients/c1/measures?from=2026-02-26&to=2026-03-02", first);
        served.get("/api/clients/c1/measures", second);
    }
    const auto practice = opened_practice(served.path());
    const auto lines = practice->audit(1);
    std::map<std::int64_t, int> seen;
    for (const AuditLine& line : *lines) {
        seen[line.coach] += line.deed == "measures_seen" ? 1 : 0;
    }
    EXPECT_EQ(seen[1], 2);
    EXPECT_EQ(seen[3], 1);
    int signed_in = 0;
    const auto all = practice->audit(std::nullopt);
    for (const AuditLine& line : *all) {
        signed_in += line.deed == "signed_in" ? 1 : 0;
    }
    EXPECT_EQ(signed_in, 2);
}

// Whoever waits for a review stands in the list until a coach makes one of what came last.
TEST(Audit, a_reader_makes_no_review_and_a_file_that_came_since_was_not_reviewed) {
    ServedPractice served;
    const Sitting coach = served.signed_in();
    const Sitting reader = served.signed_in("r1");
    const auto count = [&](const char* deed) {
        const auto lines = opened_practice(served.path())->audit(1);
        return std::ranges::count(*lines, deed, &AuditLine::deed);
    };
    served.get("/api/clients/c1/review", reader);
    EXPECT_EQ(count("review_made"), 0);
    EXPECT_EQ(count("review_seen"), 1);
    served.get("/api/clients/c1/review", coach);
    served.get("/api/clients/c1/review", coach);
    EXPECT_EQ(count("review_made"), 1);
    ASSERT_TRUE(opened_practice(served.path())
                    ->bring_in(1, file_of(std::int64_t{14} * 86'400 + 3600, 288, 300, 0, 0.38),
                               WhoseFile::not_asked, acting(90)));
    // The service sees what another program did at its next look.
    for (int tries = 0; tries < 100 && count("review_made") < 2; ++tries) {
        std::this_thread::sleep_for(std::chrono::milliseconds{100});
        served.get("/api/clients/c1/review", coach);
    }
    EXPECT_EQ(count("review_made"), 2);
    EXPECT_EQ(*opened_practice(served.path())->readings_brought_in_at(1), acting(90).at);
}

TEST(Audit, a_review_read_again_puts_no_escalation_down_again) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto put = [&] {
        const auto lines = opened_practice(served.path())->audit(1);
        return std::ranges::count(*lines, "escalations_put", &AuditLine::deed);
    };
    // A day that lies between 32 and 66 mg/dL.
    ASSERT_TRUE(opened_practice(served.path())
                    ->bring_in(1, file_of(std::int64_t{14} * 86'400 + 3600, 288, 300, 0, 0.38),
                               WhoseFile::not_asked, acting(90)));
    const Got first = served.get("/api/clients/c1/escalations", who);
    ASSERT_FALSE(first.json()["escalations"].empty()) << first.body;
    const auto after_the_first = put();
    for (int i = 0; i < 3; ++i) {
        EXPECT_EQ(served.get("/api/clients/c1/escalations", who).status, 200);
        EXPECT_EQ(served.get("/api/clients/c1/review", who).status, 200);
    }
    EXPECT_EQ(put(), after_the_first);
}

TEST(Replies, made_of_a_clients_data_are_given_again_until_they_change) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const Got first = served.get("/api/clients/c1/measures", who);
    ASSERT_EQ(first.status, 200) << first.body;
    EXPECT_EQ(served.get("/api/clients/c1/measures", who).body, first.body);
    Wire stream(served.port());
    stream.send(served.written("GET", "/api/events", who, {}, ""));
    EXPECT_EQ(stream.take().status, 200);
    const auto practice = opened_practice(served.path());
    ASSERT_TRUE(practice->bring_in(1, file_of(std::int64_t{14} * 86'400 + 3600, 288),
                                   WhoseFile::not_asked, acting(90)));
    EXPECT_THAT(stream.until("import_stored", std::chrono::seconds{10}),
                HasSubstr(R"(data: {"client":"c1","what":"import_stored"})"));
    const Got after = served.get("/api/clients/c1/measures", who);
    EXPECT_EQ(after.status, 200);
    EXPECT_NE(after.body, first.body);
}

TEST(Events, a_look_tells_nobody) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    Wire stream(served.port());
    stream.send(served.written("GET", "/api/events", who, {}, ""));
    EXPECT_EQ(stream.take().status, 200);
    for (const Route& route : routes()) {
        if (route.looked != nullptr && route.method == Method::get) {
            const std::string deed = route.looked;
            ASSERT_TRUE(opened_practice(served.path())->note_look(1, deed, acting(0))) << deed;
        }
    }
    served.send("POST", "/api/clients/c1/notes", {{"text", "Invented"}}, who);
    const std::string told = stream.until("note_added", std::chrono::seconds{10});
    EXPECT_EQ(told.find("event: changed"), told.rfind("event: changed")) << told;
}

TEST(Events, end_with_the_sitting_and_are_bounded) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    Wire stream(served.port());
    stream.send(served.written("GET", "/api/events", who, {}, ""));
    const Got head = stream.take();
    EXPECT_EQ(head.headers.at("content-type"), "text/event-stream");
    EXPECT_THAT(stream.until(": here", std::chrono::seconds{5}), HasSubstr("retry: 3000"));
    EXPECT_EQ(served.send("POST", "/api/sign-out", {}, who).status, 204);
    EXPECT_TRUE(stream.closed_within(std::chrono::seconds{5}));
}

TEST(EventStream, drops_who_takes_nothing) {
    EventHub hub;
    const auto stream = hub.open(1);
    for (std::size_t i = 0; i < EventStream::most_waiting - 1; ++i) {
        hub.tell("changed", "{}");
    }
    EXPECT_FALSE(stream->ended());
    hub.tell("changed", "{}");
    EXPECT_TRUE(stream->ended());
    EXPECT_TRUE(stream->take().empty());
}

}  // namespace
}  // namespace tracewright::testing
