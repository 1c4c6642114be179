// What a request may not be, and what every reply bears: over real sockets.
#include "serve/served_practice.hpp"

#include <gmock/gmock.h>

namespace tracewright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

TEST(Requests, a_foreign_host_gets_no_answer_and_a_foreign_page_none) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const char* host :
         {"evil.example", "127.0.0.1", "127.0.0.1:1", "localhost.evil.example"}) {
        const Got got = served.get("/api/caseload", who, {{"Host", host}});
        EXPECT_EQ(got.status, 421) << host;
        EXPECT_EQ(served.get("/", {}, {{"Host", host}}).status, 421) << host;
    }
    const std::string ours = served.host();
    EXPECT_EQ(
        served.get("/api/caseload", who, {{"Host", "localhost" + ours.substr(ours.find(':'))}})
            .status,
        200);
    const nlohmann::json note{{"text", "Invented"}};
    for (const std::string& origin :
         {std::string("http://evil.example"), std::string("null"), "https://" + ours,
          "http://" + ours + ".evil.example", std::string("http://127.0.0.1")}) {
        const Got got =
            served.send("POST", "/api/clients/c1/notes", note, who, {{"Origin", origin}});
        EXPECT_EQ(got.status, 403) << origin;
        EXPECT_EQ(got.code(), "foreign_origin");
        EXPECT_EQ(served.get("/api/caseload", who, {{"Origin", origin}}).status, 403) << origin;
    }
    EXPECT_EQ(
        served.send("POST", "/api/clients/c1/notes", note, who, {{"Sec-Fetch-Site", "cross-site"}})
            .status,
        403);
    EXPECT_EQ(
        served.send("POST", "/api/clients/c1/notes", note, who, {{"Origin", "http://" + ours}})
            .status,
        201);
    EXPECT_EQ(served.get("/api/clients/c1/notes", who).json()["notes"].size(), 1U);
}

TEST(Requests, a_change_without_its_token_is_not_made) {
    ServedPractice served;
    Sitting who = served.signed_in();
    const Sitting other = served.signed_in();
    const nlohmann::json note{{"text", "Invented"}};
    const std::string right = who.token;
    for (const std::string& token :
         {std::string(), std::string(64, '0'), right.substr(1), right + "0", other.token}) {
        who.token = token;
        const Got got = served.send("POST", "/api/clients/c1/notes", note, who);
        EXPECT_EQ(got.status, 403);
        EXPECT_EQ(got.code(), "missing_token");
    }
    who.token = right;
    EXPECT_TRUE(served.get("/api/clients/c1/notes", who).json()["notes"].empty());
}

TEST(Requests, bear_a_strict_policy_and_leave_nothing_personal_behind) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const char* target : {"/", "/api/caseload", "/api/clients/c1/review", "/api/nothing"}) {
        const Got got = served.get(target, who);
        const std::string policy = got.headers.at("content-security-policy");
        EXPECT_THAT(policy, HasSubstr("default-src 'none'"));
        EXPECT_THAT(policy, HasSubstr("frame-ancestors 'none'"));
        EXPECT_THAT(policy, Not(HasSubstr("unsafe")));
        EXPECT_EQ(got.headers.at("x-content-type-options"), "nosniff");
        EXPECT_EQ(got.headers.at("cache-control"),
                  std::string(target) == "/" ? "no-cache" : "no-store");
    }
    const Got page = served.get("/api/clients/c1/review.html", who);
    ASSERT_EQ(page.status, 200);
    EXPECT_THAT(page.headers.at("content-security-policy"), HasSubstr("style-src 'sha256-"));
    EXPECT_THAT(page.headers.at("content-security-policy"), Not(HasSubstr("unsafe")));
    EXPECT_EQ(page.body.find(" style="), std::string::npos) << "an inline style would be blocked";
    EXPECT_EQ(page.body.find("<script"), std::string::npos);
    EXPECT_EQ(served.get("/api/clients/c1/review.pdf", who).body.substr(0, 5), "%PDF-");
}

TEST(Requests, no_path_leads_out_of_the_place) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const char* target :
         {"/../../etc/passwd", "/..%2f..%2fetc/passwd", "/%2e%2e/%2e%2e/etc/passwd",
          "/api/clients/..%5c..", "/api/clients/%00", "/page.js/../../x",
          "/api/clients/c1%2freview", "/%zz", "/%", "/api/clients/%ff", "//etc//..//passwd"}) {
        const Got got = served.get(target, who);
        EXPECT_EQ(got.status, 400) << target;
        EXPECT_EQ(got.code(), "malformed_target") << target;
    }
    // A name is no handle: it stands in no address.
    EXPECT_EQ(served.get("/api/clients/Tansy%20(invented)", who).status, 404);
}

TEST(Requests, what_is_no_http_or_no_json_is_refused_by_a_code) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto raw = [&](const std::string& bytes) {
        Wire wire(served.port());
        wire.send(bytes);
        return wire.take();
    };
    EXPECT_EQ(raw("NONSENSE\r\n\r\n").status, 400);
    EXPECT_EQ(raw("GET / HTTP/1.1\r\nHost: " + served.host() +
                  "\r\nX: " + std::string(20'000, 'x') + "\r\n\r\n")
                  .status,
              431);
    EXPECT_EQ(
        raw("GET /" + std::string(3000, 'x') + " HTTP/1.1\r\nHost: " + served.host() + "\r\n\r\n")
            .status,
        400);
    EXPECT_EQ(raw("GET / HTTP/1.1\r\nHost: a\r\nHost: " + served.host() + "\r\n\r\n").status, 421);
    EXPECT_EQ(raw("GET / HTTP/1.1\r\n\r\n").status, 421);
    EXPECT_EQ(raw("TRACE / HTTP/1.1\r\nHost: " + served.host() + "\r\n\r\n").status, 405);
    const auto noted = [&](const std::string& body, const std::string& type = "application/json") {
        Wire wire(served.port());
        wire.send(
            served.written("POST", "/api/clients/c1/notes", who, {{"Content-Type", type}}, body));
        return wire.take();
    };
    EXPECT_EQ(noted("{").code(), "malformed_json");
    EXPECT_EQ(noted("[]").code(), "malformed_json");
    EXPECT_EQ(noted(std::string(100'000, '[')).code(), "malformed_json");
    EXPECT_EQ(noted("{\"text\":1}").code(), "unfit_field");
    EXPECT_EQ(noted("{}").code(), "missing_field");
    EXPECT_EQ(noted("{\"text\":\"\"}").status, 422);
    EXPECT_EQ(noted("{\"text\":\"x\",\"more\":\"y\"}").code(), "unknown_field");
    EXPECT_EQ(noted("{\"text\":\"" + std::string(20'001, 'x') + "\"}").code(), "unfit_field");
    EXPECT_EQ(noted("text=x", "application/x-www-form-urlencoded").code(), "not_json");
    EXPECT_EQ(served.get("/api/clients/c1/notes", who).json()["notes"].size(), 0U);
}

TEST(Requests, a_body_too_long_is_refused_before_it_is_read) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    Wire told(served.port());
    told.send(served.written("POST", "/api/clients/c1/notes", who,
                             {{"Content-Length", std::to_string(2 * 1024 * 1024)}}, ""));
    EXPECT_EQ(told.take().status, 413);
    Wire pieces(served.port());
    pieces.send(served.written("POST", "/api/clients/c1/notes", who,
                               {{"Transfer-Encoding", "chunked"}, {"Content-Length", ""}}, ""));
    for (int i = 0; i < 40; ++i) {
        pieces.send("10000\r\n" + std::string(0x10000, 'x') + "\r\n");
    }
    EXPECT_EQ(pieces.take().status, 413);
    Wire sign_in(served.port());
    sign_in.send(served.written("POST", "/api/sign-in", {}, {{"Content-Length", "5000"}}, ""));
    EXPECT_EQ(sign_in.take().status, 413);
}

}  // namespace
}  // namespace tracewright::testing
