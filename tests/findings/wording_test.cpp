#include "findings/wording.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

TEST(Wording, an_interval_says_a_shared_unit_once_and_never_reads_as_without_width) {
    EXPECT_EQ(from_to_words("136 mg/dL", "149 mg/dL", " mg/dL"), "136 to 149 mg/dL");
    EXPECT_EQ(from_to_words("16 h 50 min", "17 h 10 min"), "16 h 50 min to 17 h 10 min");
    EXPECT_EQ(from_to_words("142 mg/dL", "142 mg/dL", " mg/dL"), "about 142 mg/dL");
    EXPECT_EQ(from_to_words("0.9", "1.1 %", " %"), "0.9 to 1.1 %");
    EXPECT_EQ(between_words("7.7 mmol/L", "8.0 mmol/L"), "between 7.7 mmol/L and 8.0 mmol/L");
    EXPECT_EQ(between_words("31 %", "31 %"), "at about 31 %");
}
