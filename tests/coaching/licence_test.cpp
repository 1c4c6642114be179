#include "coaching/licence.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

// Safety rule 14.
TEST(InScope, says_ask_the_clinic_without_a_licence_and_more_with_one) {
    const ScopedText text{"A beta-blocker is on the list.", "It hides tremor."};
    EXPECT_EQ(in_scope(text, Licence::none), "A beta-blocker is on the list. Ask the clinic.");
    EXPECT_EQ(in_scope(text, Licence::nurse), "A beta-blocker is on the list. It hides tremor.");
    EXPECT_EQ(in_scope({"Seen."}, Licence::other), "Seen.");
    const ScopedText asks{"Seen. Ask the clinic whether the type has been checked."};
    EXPECT_EQ(in_scope(asks, Licence::none), asks.record);
}

}  // namespace
}  // namespace tracewright
