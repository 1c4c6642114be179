#include "diary/says_something.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

TEST(SaysSomething, a_letter_or_a_digit_of_any_script_does) {
    for (const char* text : {"a", " 7 ", "- x", "\xC3\xA9", "\xD0\x96", "\xE4\xB8\xAD",
                             "\xE3\x81\x82", "\xD9\x85", "...ok"}) {
        EXPECT_TRUE(says_something(text)) << text;
    }
}

TEST(SaysSomething, blanks_signs_and_what_is_not_seen_do_not) {
    for (const char* text :
         {"", " ", "\t\n", "...", "-", "?!", "\xC2\xA0", "\xE2\x80\x8B", "\xE3\x80\x80",
          "\xEF\xBB\xBF", "\xE2\x80\x94", "\xC2\xB7", "\xFF\xFE", "\xE2\x9C\x93"}) {
        EXPECT_FALSE(says_something(text)) << text;
    }
}

}  // namespace
}  // namespace tracewright
