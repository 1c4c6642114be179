#include "coaching/prescriber_answer.hpp"

#include "care_for_tests.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

bool still_holds(const PrescriberAnswer& answer, const Care& care) {
    return care.ask(
        [&](const CareInput& in) { return holds(answer, in.as_of, in.medicines, in.clock); });
}

PrescriberAnswer answer_of(int days_ago) {
    return {AskedAbout::fasting, true, "Dr Larch", care_day - std::chrono::days{days_ago}, {}};
}

TEST(PrescriberAnswer, holds_from_its_day_to_its_last_day) {
    const Care care;
    EXPECT_TRUE(still_holds(answer_of(0), care));
    EXPECT_FALSE(still_holds(answer_of(-1), care));  // of tomorrow
    EXPECT_TRUE(still_holds(answer_of(90), care));   // 90 days: our own rule
    EXPECT_FALSE(still_holds(answer_of(91), care));
    PrescriberAnswer until = answer_of(200);
    until.valid_until = care_day;
    EXPECT_TRUE(still_holds(until, care));
    until.valid_until = care_day - std::chrono::days{1};
    EXPECT_FALSE(still_holds(until, care));
}

TEST(PrescriberAnswer, no_or_without_a_name_opens_nothing) {
    PrescriberAnswer answer = answer_of(1);
    answer.agreed = false;
    EXPECT_FALSE(still_holds(answer, Care{}));
    answer.agreed = true;
    answer.by.clear();
    EXPECT_FALSE(still_holds(answer, Care{}));
    answer.by = " ";
    EXPECT_FALSE(still_holds(answer, Care{}));
}

// Safety rule 8: it lapses on any change of medicine.
TEST(PrescriberAnswer, lapses_on_any_start_stop_or_change_of_medicine) {
    for (const int days_ago : {10, 5, 0}) {  // 10: the answer's own day, its order unknown
        Care care;
        const CivilDate day = care_day - std::chrono::days{days_ago};
        care.facts.medicines.push_back({"empagliflozin", day, {}});
        EXPECT_FALSE(still_holds(answer_of(10), care)) << days_ago;
        care.facts.medicines.back() = {"empagliflozin", {}, day - std::chrono::days{1}};
        EXPECT_FALSE(still_holds(answer_of(10), care)) << days_ago;
        PrescriberAnswer type = answer_of(10);
        type.about = AskedAbout::diabetes_type;
        EXPECT_TRUE(still_holds(type, care));
    }
    Care before;
    before.facts.medicines.push_back({"empagliflozin", care_day - std::chrono::days{11}, {}});
    EXPECT_TRUE(still_holds(answer_of(10), before));
}

TEST(PrescriberAnswer, the_newest_one_decides) {
    const Care care;
    std::vector<PrescriberAnswer> answers{answer_of(20), answer_of(5)};
    answers[1].agreed = false;
    care.ask([&](const CareInput& in) {
        EXPECT_EQ(answer_that_holds(answers, AskedAbout::fasting, in.as_of, in.medicines, in.clock),
                  nullptr);
        EXPECT_EQ(answer_that_holds(answers, AskedAbout::walking, in.as_of, in.medicines, in.clock),
                  nullptr);
        answers[1].agreed = true;
        EXPECT_EQ(answer_that_holds(answers, AskedAbout::fasting, in.as_of, in.medicines, in.clock),
                  &answers[1]);
    });
}

}  // namespace
}  // namespace tracewright
