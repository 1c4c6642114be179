#include "coaching/numbers_in_text.hpp"

#include <gtest/gtest.h>

#include <utility>
#include <vector>

namespace tracewright {
namespace {

TEST(NumbersInText, count_digits_and_words_but_no_dates) {
    const std::vector<std::pair<const char*, int>> texts = {
        {"", 0},
        {"one thing", 0},
        {"About 17 hours of the day", 1},
        {"fifteen minutes, twice", 2},
        {"On Tue 3 March at night", 0},
        {"3 March 2026, 28 October 2025", 0},
        {"2026-03-03", 0},
        {"On Tue March 3 at night, Tue March 3, 2026.", 0},
        {"Tue March 3 walks 12", 1},
        {"May 12 walks", 1},
        {"12 walks", 1},
        {"at 18:30", 1},
        {"15 to 20 g", 2},
        {"20g", 1},
        {"7.9 mmol/L", 1},
        {"twenty-five", 2},  // on the careful side
        {"someone, tense, often", 0},
    };
    for (const auto& [text, expected] : texts) {
        EXPECT_EQ(numbers_in(text), expected) << text;
    }
}

TEST(NumbersInText, of_a_paper_leave_out_first_aid_telephone_and_tables) {
    Paper paper;
    paper.title = "Page of Tue 3 March";
    paper.blocks = {
        PaperSentence{"About 17 hours."},       PaperHeading{"2 things"},
        PaperBox{"Call", {"within 5 minutes"}}, PaperBox{"First aid", {"15 to 20 g"}, true},
        PaperContact{"Clinic", "0123 456"},     PaperTable{{"day"}, {1}, {{"9"}}}};
    EXPECT_EQ(numbers_in_message(paper), 3);
}

TEST(PercentOrDecimal, are_found_and_a_full_stop_is_neither) {
    EXPECT_TRUE(percent_or_decimal("70 % of the day"));
    EXPECT_TRUE(percent_or_decimal("70 percent"));
    EXPECT_TRUE(percent_or_decimal("7.9"));
    EXPECT_TRUE(percent_or_decimal("7,9"));
    EXPECT_FALSE(percent_or_decimal("Wait 15. Then 2, 3"));
}

}  // namespace
}  // namespace tracewright
