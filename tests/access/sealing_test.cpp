#include "access/sealing.hpp"
#include "access/practice_key.hpp"
#include "access/recovery_key.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>

namespace tracewright {
namespace {

TEST(Seal, a_text_opens_in_its_place_and_nowhere_else) {
    const Seal seal(SecretKey::drawn());
    const auto sealed = seal.sealed("Rowan, invented", "client 7 name");
    EXPECT_EQ(seal.opened(sealed, "client 7 name"), "Rowan, invented");
    EXPECT_FALSE(seal.opened(sealed, "client 8 name"));
    EXPECT_FALSE(Seal(SecretKey::drawn()).opened(sealed, "client 7 name"));
}

TEST(Seal, no_flipped_bit_and_no_shorter_text_opens) {
    const Seal seal(SecretKey::drawn());
    const auto sealed = seal.sealed("x", "place");
    for (std::size_t i = 0; i < sealed.size(); ++i) {
        auto changed = sealed;
        changed[i] = static_cast<std::uint8_t>(changed[i] ^ 1U);
        EXPECT_FALSE(seal.opened(changed, "place")) << i;
        EXPECT_FALSE(seal.opened(std::span(sealed).first(i), "place")) << i;
    }
}

TEST(Seal, equal_texts_are_sealed_differently_and_have_one_fingerprint_under_one_key) {
    const SecretKey key = SecretKey::drawn();
    const Seal seal(key);
    EXPECT_NE(seal.sealed("a", "p"), seal.sealed("a", "p"));
    EXPECT_EQ(seal.fingerprint("a"), Seal(key).fingerprint("a"));
    EXPECT_NE(seal.fingerprint("a"), seal.fingerprint("b"));
    EXPECT_NE(seal.fingerprint("a"), Seal(SecretKey::drawn()).fingerprint("a"));
}

TEST(Seal, the_error_bears_nothing_of_the_text) {
    const Seal seal(SecretKey::drawn());
    const auto error = Seal(SecretKey::drawn()).opened(seal.sealed("Rowan", "p"), "p").error();
    EXPECT_EQ(error.find("Rowan"), std::string::npos);
}

TEST(RecoveryKey, what_is_written_is_read_whatever_the_hand) {
    for (int i = 0; i < 200; ++i) {
        const SecretKey key = SecretKey::drawn();
        std::string text = written_recovery_key(key);
        EXPECT_EQ(text.size(), 14U * 5 - 1);
        std::ranges::transform(text, text.begin(), [](unsigned char c) {
            return c == '0' ? 'o' : c == '1' ? 'l' : static_cast<char>(std::tolower(c));
        });
        std::ranges::replace(text, ' ', '-');
        const auto read = recovery_key_read(text);
        ASSERT_TRUE(read) << read.error();
        EXPECT_TRUE(std::ranges::equal(read->view(), key.view()));
    }
}

TEST(RecoveryKey, a_wrong_letter_is_noticed) {
    const std::string text = written_recovery_key(SecretKey::drawn());
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != ' ') {
            std::string wrong = text;
            wrong[i] = text[i] == 'Z' ? 'Y' : 'Z';
            EXPECT_FALSE(recovery_key_read(wrong)) << i;
        }
    }
    EXPECT_FALSE(recovery_key_read(""));
    EXPECT_FALSE(recovery_key_read(text + " Z"));
    EXPECT_NE(recovery_key_read("0000 0U00").error().find("group 2"), std::string::npos);
}

TEST(PracticeKey, opens_by_passphrase_and_by_recovery_key_also_after_it_was_stored) {
    const SecretKey key = SecretKey::drawn();
    const SecretKey recovery = SecretKey::drawn();
    const auto locked =
        LockedPracticeKey::locked(key, "a long passphrase", recovery, PassphraseWork::least);
    ASSERT_TRUE(locked) << locked.error();
    const auto again = LockedPracticeKey::read(locked->stored());
    ASSERT_TRUE(again);
    EXPECT_TRUE(
        std::ranges::equal(again->opened_by_passphrase("a long passphrase")->view(), key.view()));
    EXPECT_TRUE(std::ranges::equal(again->opened_by_recovery(recovery)->view(), key.view()));
    EXPECT_FALSE(again->opened_by_passphrase("another"));
    EXPECT_FALSE(again->opened_by_recovery(key));
}

TEST(PracticeKey, another_passphrase_replaces_the_first_and_leaves_the_recovery_key) {
    const SecretKey key = SecretKey::drawn();
    const SecretKey recovery = SecretKey::drawn();
    const auto first = LockedPracticeKey::locked(key, "first", recovery, PassphraseWork::least);
    const auto second = first->with_passphrase(key, "second");
    EXPECT_FALSE(second->opened_by_passphrase("first"));
    EXPECT_TRUE(second->opened_by_passphrase("second"));
    EXPECT_TRUE(second->opened_by_recovery(recovery));
}

TEST(PracticeKey, bytes_of_another_kind_are_refused) {
    EXPECT_FALSE(LockedPracticeKey::read({}));
    EXPECT_FALSE(LockedPracticeKey::read(std::vector<std::uint8_t>(162, 9)));
}

// The two-factor cost of a try is libsodium's, not ours: source Biryukov, Dinu & Khovratovich 2021,
// RFC 9106 (argon2id). This only says that we ask for it.
TEST(PracticeKey, moderate_work_is_more_than_the_least) {
    const std::array<std::uint8_t, 16> salt{};
    const auto least = SecretKey::of_passphrase("p", salt, PassphraseWork::least);
    const auto interactive = SecretKey::of_passphrase("p", salt, PassphraseWork::interactive);
    ASSERT_TRUE(least && interactive);
    EXPECT_FALSE(std::ranges::equal(least->view(), interactive->view()));
}

}  // namespace
}  // namespace tracewright
