#include "access/share_token.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace tracewright {
namespace {

TEST(ShareToken, has_256_bits_in_letters_that_an_address_bears_and_no_two_are_the_same) {
    std::set<std::string> drawn;
    for (int i = 0; i < 500; ++i) {
        const std::string token = drawn_share_token();
        EXPECT_EQ(token.size(), 43U);
        EXPECT_EQ(token.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
                                          "0123456789-_"),
                  std::string::npos);
        EXPECT_TRUE(drawn.insert(token).second);
    }
}

TEST(ShareToken, is_told_by_its_hash_and_a_changed_letter_is_another) {
    const std::string token = drawn_share_token();
    const auto hash = hash_of_share_token(token);
    ASSERT_TRUE(hash);
    EXPECT_TRUE(same_share_token(*hash, *hash_of_share_token(token)));
    for (std::size_t i = 0; i < token.size(); ++i) {
        std::string changed = token;
        changed[i] = changed[i] == 'A' ? 'E' : 'A';
        const auto other = hash_of_share_token(changed);
        EXPECT_TRUE(!other || !same_share_token(*hash, *other)) << i;
    }
}

// Source: BLAKE2b with 32 bytes of output over 32 bytes of nought (RFC 7693, Saarinen and Aumasson,
// 2015), worked out with Python's hashlib, another implementation.
TEST(ShareToken, the_hash_is_that_of_the_standard) {
    const auto hash = hash_of_share_token(std::string(43, 'A'));
    ASSERT_TRUE(hash);
    const ShareTokenHash expected{0x89, 0xeb, 0x0d, 0x6a, 0x8a, 0x69, 0x1d, 0xae, 0x2c, 0xd1, 0x5e,
                                  0xd0, 0x36, 0x99, 0x31, 0xce, 0x0a, 0x94, 0x9e, 0xca, 0xfa, 0x5c,
                                  0x3f, 0x93, 0xf8, 0x12, 0x18, 0x33, 0x64, 0x6e, 0x15, 0xc3};
    EXPECT_EQ(*hash, expected);
}

TEST(ShareToken, what_can_not_be_one_has_no_hash) {
    const std::string token = drawn_share_token();
    EXPECT_FALSE(hash_of_share_token(""));
    EXPECT_FALSE(hash_of_share_token(token.substr(1)));
    EXPECT_FALSE(hash_of_share_token(token + "A"));
    EXPECT_FALSE(hash_of_share_token("/" + token.substr(1)));
    EXPECT_FALSE(hash_of_share_token(token.substr(1) + "="));
    EXPECT_FALSE(hash_of_share_token(std::string(43, '\0')));
}

}  // namespace
}  // namespace tracewright
