// What is read of a request before anything is answered.
#include "serve/request.hpp"
#include "serve/reply.hpp"

#include <gmock/gmock.h>

namespace tracewright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

TEST(RequestTarget, has_segments_and_query_decoded) {
    const auto target = target_of("/api/clients/c%31/review?from=2026-03-02&to=a%20b+c&x");
    ASSERT_TRUE(target);
    EXPECT_THAT(target->segments, ElementsAre("api", "clients", "c1", "review"));
    EXPECT_EQ(target->asked("from"), "2026-03-02");
    EXPECT_EQ(target->asked("to"), "a b c");
    EXPECT_EQ(target->asked("x"), "");
    EXPECT_EQ(target->asked("y"), std::nullopt);
    EXPECT_EQ(target_of("/")->path(), "/");
    EXPECT_EQ(target_of("/gr%C3%BCn")->segments.front(), "gr\xC3\xBCn");
}

TEST(RequestTarget, is_nothing_where_a_path_could_lead_elsewhere) {
    for (const char* text :
         {"",       "api",   "http://a/b", "*",          "/a/../b", "/a/./b", "/%2e%2e", "/a%2fb",
          "/a%5cb", "/a\\b", "/%00",       "/%0a",       "/%7f",    "/%",     "/%1",     "/%g0",
          "/a#b",   "/%ff",  "/%c0%af",    "/%ed%a0%80", "/?x=%zz", "/?%"}) {
        EXPECT_FALSE(target_of(text)) << text;
    }
    EXPECT_FALSE(target_of("/" + std::string(2048, 'x')));
    EXPECT_TRUE(target_of("/" + std::string(2047, 'x')));
    EXPECT_TRUE(target_of("/page.v2.js"));
}

// The examples of RFC 6265 (A. Barth, 'HTTP State Management Mechanism', 2011), 3.1.
TEST(Cookie, is_found_among_others) {
    EXPECT_EQ(cookie_called("SID", "SID=31d4d96e407aad42"), "31d4d96e407aad42");
    EXPECT_EQ(cookie_called("lang", "SID=31d4d96e407aad42; lang=en-US"), "en-US");
    EXPECT_EQ(cookie_called("ang", "SID=31d4d96e407aad42; lang=en-US"), std::nullopt);
    EXPECT_EQ(cookie_called("a", ""), std::nullopt);
    EXPECT_EQ(cookie_called("a", "a=1; a=2"), std::nullopt) << "which of two can't be known";
}

// SHA-256 of 'abc': FIPS 180-4's example, ba7816bf...15ad, in base 64.
TEST(DocumentPolicy, allows_a_documents_own_styles_by_their_hash_alone) {
    EXPECT_THAT(document_policy("<p>no style</p>"), HasSubstr("style-src 'none'"));
    EXPECT_THAT(document_policy("<style>abc</style>"),
                HasSubstr("style-src 'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='"));
}

TEST(Head, bears_what_every_reply_bears) {
    Reply reply = text_reply("{}", "application/json");
    const std::string head = head_of(reply, "Sun, 06 Nov 1994 08:49:37 GMT", true);
    EXPECT_THAT(head, HasSubstr("HTTP/1.1 200 OK\r\nDate: Sun, 06 Nov 1994 08:49:37 GMT\r\n"));
    EXPECT_THAT(head, HasSubstr("Content-Length: 2\r\n"));
    EXPECT_THAT(head, HasSubstr("Cache-Control: no-store\r\n"));
    EXPECT_THAT(head_of(no_content(), "", false), HasSubstr("Connection: close\r\n\r\n"));
    EXPECT_EQ(head_of(no_content(), "", false).find("Content-Length"), std::string::npos);
}

}  // namespace
}  // namespace tracewright
