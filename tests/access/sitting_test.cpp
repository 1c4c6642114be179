// Who comes in: a coach's own lock, sessions, and how often one may try.
#include "access/coach_lock.hpp"
#include "access/session_book.hpp"
#include "access/try_limit.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace tracewright {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

bool same_key(const SecretKey& a, const SecretKey& b) {
    return std::ranges::equal(a.view(), b.view());
}

TEST(CoachLock, opens_to_its_coach_by_their_passphrase_alone) {
    const SecretKey key = SecretKey::drawn();
    const auto lock = CoachLock::locked(key, 3, "a coach's own words", PassphraseWork::least);
    ASSERT_TRUE(lock);
    const auto read = CoachLock::read(lock->stored());
    ASSERT_TRUE(read);
    const auto opened = read->opened(3, "a coach's own words");
    ASSERT_TRUE(opened);
    EXPECT_TRUE(same_key(*opened, key));
    EXPECT_FALSE(read->opened(3, "a coach's own word"));
    EXPECT_FALSE(read->opened(4, "a coach's own words")) << "laid in another coach's place";
}

TEST(CoachLock, bytes_that_were_changed_open_nothing) {
    const auto lock = CoachLock::locked(SecretKey::drawn(), 1, "invented", PassphraseWork::least);
    auto bytes = lock->stored();
    EXPECT_FALSE(CoachLock::read(std::span(bytes).first(bytes.size() - 1)));
    for (const std::size_t at : {std::size_t{2}, std::size_t{20}, bytes.size() - 1}) {
        auto changed = bytes;
        changed[at] ^= 1;
        const auto read = CoachLock::read(changed);
        ASSERT_TRUE(read);
        EXPECT_FALSE(read->opened(1, "invented")) << at;
    }
    bytes[1] = 3;
    EXPECT_FALSE(CoachLock::read(bytes));
}

TEST(SessionBook, ends_idle_and_whole_to_the_second) {
    SessionBook book({minutes{30}, hours{12}, 16});
    const Tick begun{};
    const auto opened = book.open(1, begun);
    EXPECT_EQ(opened.secret.size(), 64U);
    EXPECT_NE(opened.secret, opened.session.token);
    EXPECT_TRUE(book.of(opened.secret, begun + minutes{30} - seconds{1}));
    EXPECT_FALSE(book.of(opened.secret, begun + minutes{60} - seconds{1}));
    const auto second = book.open(1, begun);
    for (auto at = begun; at < begun + hours{12}; at += minutes{20}) {
        EXPECT_TRUE(book.of(second.secret, at));
    }
    EXPECT_FALSE(book.of(second.secret, begun + hours{12}));
}

TEST(SessionBook, an_open_stream_keeps_nobody_signed_in) {
    SessionBook book({minutes{30}, hours{12}, 16});
    const Tick begun{};
    const auto opened = book.open(1, begun);
    EXPECT_TRUE(book.lasts(opened.session.number, begun + minutes{29}));
    EXPECT_FALSE(book.lasts(opened.session.number, begun + minutes{30}));
    EXPECT_FALSE(book.of(opened.secret, begun + minutes{30}));
}

TEST(SessionBook, knows_no_secret_but_those_it_gave) {
    SessionBook book;
    const auto opened = book.open(1, Tick{});
    EXPECT_FALSE(book.of("", Tick{}));
    EXPECT_FALSE(book.of(opened.secret.substr(1), Tick{}));
    EXPECT_FALSE(book.of(std::string(64, '0'), Tick{}));
    EXPECT_FALSE(book.of(opened.session.token, Tick{}));
    book.close(opened.session.number);
    EXPECT_FALSE(book.of(opened.secret, Tick{}));
}

TEST(SessionBook, one_sitting_too_many_ends_the_oldest_of_that_coach) {
    SessionBook book({minutes{30}, hours{12}, 2});
    const auto other = book.open(2, Tick{});
    const auto first = book.open(1, Tick{});
    const auto second = book.open(1, Tick{});
    const auto third = book.open(1, Tick{});
    EXPECT_FALSE(book.of(first.secret, Tick{}));
    EXPECT_TRUE(book.of(second.secret, Tick{}));
    EXPECT_TRUE(book.of(third.secret, Tick{}));
    EXPECT_TRUE(book.of(other.secret, Tick{}));
    book.close_unless([](std::int64_t coach) { return coach == 2; });
    EXPECT_FALSE(book.of(third.secret, Tick{}));
    EXPECT_TRUE(book.of(other.secret, Tick{}));
}

TEST(TryLimit, waits_for_one_and_for_all_and_forgets_in_time) {
    TryLimit limit({2, 4, minutes{5}});
    const Tick begun{};
    limit.failed("o1", begun);
    EXPECT_FALSE(limit.wait("o1", begun));
    limit.failed("o1", begun + minutes{1});
    EXPECT_EQ(limit.wait("o1", begun + minutes{1}), minutes{4});
    EXPECT_FALSE(limit.wait("k1", begun + minutes{1}));
    EXPECT_FALSE(limit.wait("o1", begun + minutes{5}));
    limit.succeeded("o1");
    limit.failed("a", begun + minutes{5});
    limit.failed("b", begun + minutes{5});
    limit.failed("c", begun + minutes{5});
    EXPECT_TRUE(limit.wait("o1", begun + minutes{5})) << "four in vain by whatever handle";
    EXPECT_FALSE(limit.wait("o1", begun + minutes{10}));
}

TEST(Secrets, are_equal_only_whole) {
    EXPECT_TRUE(same_secret("ab", "ab"));
    EXPECT_FALSE(same_secret("ab", "ac"));
    EXPECT_FALSE(same_secret("ab", "a"));
    EXPECT_FALSE(same_secret("", "a"));
}

}  // namespace
}  // namespace tracewright
