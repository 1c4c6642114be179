#include "coaching/explaining_page.hpp"

#include "coaching/explained_record.hpp"
#include "coaching/lived_for_tests.hpp"
#include "coaching/numbers_in_text.hpp"
#include "coaching/reading_grade.hpp"
#include "paper_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using ::testing::AllOf;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

namespace {

/// The lived fortnight of clients whom different rules bind.
std::vector<std::pair<std::string, Care>> various_clients() {
    std::vector<std::pair<std::string, Care>> clients;
    clients.emplace_back("ordinary", lived());
    clients.emplace_back("mmol", lived());
    clients.back().second.facts.unit = GlucoseUnit::mmol_per_l;
    clients.emplace_back("fewer numbers", lived());
    clients.back().second.facts.cautions.eating.positive = Answered::yes;
    clients.emplace_back("pregnant", lived());
    clients.back().second.facts.cautions.pregnancy = Pregnancy::pregnant;
    clients.emplace_back("gliclazide", lived());
    clients.back().second.takes("gliclazide 30");
    clients.emplace_back("nothing asked", lived());
    clients.back().second.facts.medicines_asked_on.reset();
    clients.back().second.facts.cautions = {};
    return clients;
}

}  // namespace

TEST(ExplainingPage, all_six_are_drawn_from_a_fortnight_that_holds_them) {
    const Care care = lived();
    for (const ExplainsFacts& facts : all_explaining_pages()) {
        const ExplainingPage page = explained(care, facts.explains);
        EXPECT_THAT(page.not_made_because, IsEmpty()) << facts.code;
        EXPECT_THAT(page.chosen, Not(IsEmpty())) << facts.code;
        ASSERT_FALSE(page.illustration.curves.empty()) << facts.code;
        EXPECT_FALSE(page.illustration.curves.front().runs.empty()) << facts.code;
        EXPECT_EQ(explaining_page_called(facts.code), facts.explains);
    }
    EXPECT_EQ(explaining_page_called("weather"), std::nullopt);
}

TEST(ExplainingPage, food_shows_a_meal_in_the_middle_and_names_the_cohorts) {
    const std::string words = all_words_of(explained(lived(), Explains::food).paper);
    EXPECT_THAT(words, HasSubstr("about in the middle"));
    EXPECT_THAT(words, HasSubstr("24 young adults: after breakfast the top was about 132 mg/dL. "
                                 "Most were between 116 and 149."));
    EXPECT_THAT(words, HasSubstr("560 people, most near 60 years old: about three hours of the "
                                 "day above 140 mg/dL."));
    EXPECT_THAT(words, HasSubstr("10.1177/193229680700100513"));
    EXPECT_THAT(words, HasSubstr("10.1210/clinem/dgae626"));
}

TEST(ExplainingPage, the_value_nearest_the_median_and_of_equals_the_last) {
    EXPECT_EQ(nearest_the_median(std::vector<double>{50}), 0U);
    EXPECT_EQ(nearest_the_median(std::vector<double>{90, 40, 60}), 2U);
    EXPECT_EQ(nearest_the_median(std::vector<double>{60, 90, 60, 40}), 2U);
    EXPECT_EQ(nearest_the_median(std::vector<double>{40, 60}), 1U);  // as near as the first
}

// Both meals were eaten on the 13 days after the first, which is not shown; the stew came last.
TEST(ExplainingPage, one_meal_sets_the_least_and_the_most_side_by_side) {
    const ExplainingPage page = explained(lived(), Explains::one_meal);
    const std::string words = all_words_of(page.paper);
    EXPECT_THAT(words, HasSubstr("You had this dinner 13 times: stew."));
    EXPECT_THAT(words, HasSubstr("So no meal is judged by one time."));
    std::size_t others = 0;
    for (const IllustratedCurve& curve : page.illustration.curves) {
        others += curve.look == IllustratedCurve::Look::others ? 1 : 0;
    }
    EXPECT_EQ(others, page.illustration.curves.size() - 2);
}

TEST(ExplainingPage, what_the_data_can_not_draw_is_not_made_and_says_why) {
    Care care = lived();
    std::erase_if(care.diary, [](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::movement || entry.kind == DiaryKind::mood;
    });
    care.facts.labs.clear();
    EXPECT_THAT(explained(care, Explains::walking).not_made_because, HasSubstr("no movement"));
    EXPECT_THAT(explained(care, Explains::stress).not_made_because, HasSubstr("no tense hour"));
    EXPECT_EQ(explained(care, Explains::lab_and_sensor).not_made_because,
              "no laboratory A1c is on record");
    care.diary.clear();
    EXPECT_THAT(explained(care, Explains::food).not_made_because, HasSubstr("0 meals"));
    EXPECT_THAT(explained(care, Explains::one_meal).not_made_because, HasSubstr("eaten twice"));
    EXPECT_THAT(explained(care, Explains::food).paper.blocks, IsEmpty());
}

TEST(ExplainingPage, a_lab_result_five_weeks_off_is_not_set_beside_the_sensor) {
    Care care = lived();
    care.facts.labs.front().on = care_day + std::chrono::days{35};
    EXPECT_THAT(explained(care, Explains::lab_and_sensor).not_made_because,
                HasSubstr("10 days of sensor within four weeks"));
}

TEST(ExplainingPage, days_after_the_lab_test_are_told_as_such) {
    Care care = lived();
    const auto words = [&] {
        return all_words_of(explained(care, Explains::lab_and_sensor).paper);
    };
    EXPECT_THAT(words(), HasSubstr("Here your sensor saw 14 days."));
    care.facts.labs.front().on = care_day - std::chrono::days{20};
    EXPECT_THAT(words(), HasSubstr("saw 14 days, all of them after it: it can't know them."));
    care.facts.labs.front().on = care_day - std::chrono::days{4};
    EXPECT_THAT(words(), HasSubstr("saw 14 days, 3 of them after it."));
}

TEST(ExplainingPage, a_stretch_with_a_low_a_drink_or_the_first_day_is_no_example) {
    Care care = lived();
    ReviewInput input = input_of_care(care);
    const Interval morning{care_at(-5, 8), care_at(-5, 11)};
    EXPECT_TRUE(ExplainedRecord(input).fit_to_show(morning));
    EXPECT_FALSE(ExplainedRecord(input).fit_to_show({care_at(-14, 8), care_at(-14, 11)}));
    care.entry(DiaryKind::alcohol, care_at(-6, 22), "wine");
    input = input_of_care(care);
    EXPECT_FALSE(ExplainedRecord(input).fit_to_show(morning));
    care = lived();
    for (int i = 9 * 288; i < 10 * 288; ++i) {  // near the edge, and never stuck
        Care::set(care.wears[0], i, 1, 71 + i % 3);
    }
    Care::set(care.wears[0], 9 * 288 + 100, 1, 69);
    input = input_of_care(care);
    EXPECT_FALSE(ExplainedRecord(input).fit_to_show(morning));
    Care::set(care.wears[0], 9 * 288 + 100, 1, 70);
    input = input_of_care(care);
    EXPECT_TRUE(ExplainedRecord(input).fit_to_show(morning));
}

TEST(ExplainingPage, a_low_on_another_night_is_spoken_of_first) {
    Care care = lived();
    EXPECT_THAT(explained(care, Explains::night).to_know, IsEmpty());
    // One reading alone is shown as a low by neither review nor days.
    Care::set(care.wears[0], 3 * 288 + 30, 1, 69);
    EXPECT_THAT(explained(care, Explains::night).to_know, IsEmpty());
    Care::set(care.wears[0], 3 * 288 + 30, 3, 60);
    const ExplainingPage page = explained(care, Explains::night);
    EXPECT_THAT(all_words_of(page.paper), HasSubstr("On another night your sensor read low."));
    EXPECT_THAT(page.to_know, ElementsAre(HasSubstr("speak of that before this page")));
}

TEST(ExplainingPage, with_an_open_eating_screen_no_level_and_no_food_stands_on_it) {
    for (const Answered answer : {Answered::yes, Answered::not_yet}) {
        Care care = lived();
        care.facts.cautions.eating.positive = answer;
        for (const ExplainsFacts& facts : all_explaining_pages()) {
            const ExplainingPage page = explained(care, facts.explains);
            if (facts.explains == Explains::lab_and_sensor) {
                EXPECT_THAT(page.not_made_because, HasSubstr("eating screen"));
                continue;
            }
            ASSERT_THAT(page.not_made_because, IsEmpty()) << facts.code;
            EXPECT_FALSE(page.illustration.numbers) << facts.code;
            std::string words = page.illustration.alternative + "\n";
            for (const std::string& line : message_of(page.paper)) {
                words += line + "\n";  // first aid stays whatever the screen says
            }
            EXPECT_THAT(words, AllOf(Not(HasSubstr("mg/dL")), Not(HasSubstr("mmol/L")),
                                     Not(HasSubstr("porridge")), Not(HasSubstr("stew"))))
                << facts.code;
        }
    }
}

TEST(ExplainingPage, in_pregnancy_the_clinic_leads_and_others_are_no_measure) {
    Care care = lived();
    care.facts.cautions.pregnancy = Pregnancy::planning;
    const ExplainingPage food = explained(care, Explains::food);
    EXPECT_THAT(all_words_of(food.paper),
                AllOf(HasSubstr("Your maternity or diabetes clinic leads"),
                      Not(HasSubstr("24 young adults"))));
    EXPECT_TRUE(food.illustration.range.in_pregnancy());
    EXPECT_THAT(explained(care, Explains::lab_and_sensor).not_made_because, HasSubstr("pregnancy"));
    EXPECT_THAT(explained(care, Explains::walking).not_made_because, HasSubstr("Pregnant"));
}

TEST(ExplainingPage, a_trial_is_not_spoken_of_where_none_may_be_offered) {
    const auto words = [](const Care& care) {
        return all_words_of(explained(care, Explains::one_meal).paper);
    };
    Care care = lived();
    EXPECT_THAT(words(care), HasSubstr("or we try it as a test"));
    care.facts.cautions.pregnancy = Pregnancy::pregnant;
    EXPECT_THAT(words(care), Not(HasSubstr("as a test")));
    EXPECT_THAT(words(care), HasSubstr("We look at three times or more."));
    care.facts.cautions.pregnancy = Pregnancy::no;
    care.facts.cautions.eating.positive = Answered::yes;
    EXPECT_THAT(words(care), Not(HasSubstr("as a test")));
}

TEST(ExplainingPage, a_closed_gate_for_walking_makes_no_walking_page) {
    Care care = lived();
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    EXPECT_THAT(explained(care, Explains::walking).not_made_because,
                AllOf(HasSubstr("walking is not offered now"), HasSubstr("foot wound")));
}

TEST(ExplainingPage, walking_says_that_two_days_are_no_proof_and_when_to_stop) {
    const std::string words = all_words_of(explained(lived(), Explains::walking).paper);
    EXPECT_THAT(words, AllOf(HasSubstr("Two days are no proof."), HasSubstr("Stop at once"),
                             Not(HasSubstr("because"))));
}

TEST(ExplainingPage, every_page_of_every_client_reads_at_grade_6_and_bears_its_cautions_once) {
    for (const auto& [who, care] : various_clients()) {
        for (const ExplainsFacts& facts : all_explaining_pages()) {
            const ExplainingPage page = explained(care, facts.explains);
            if (!page.not_made_because.empty()) {
                continue;
            }
            const std::string words = all_words_of(page.paper);
            EXPECT_LE(reading_grade(counts_of(running_text(page.paper))).value_or(99), 6)
                << who << " " << facts.code << "\n"
                << words;
            EXPECT_THAT(forbidden_words_in(words + page.illustration.alternative), IsEmpty())
                << who << " " << facts.code;
            EXPECT_THAT(words,
                        HasSubstr("Last sensor reading: Sun 15 February 23:55, 4 days ago."));
            const std::string caution = "not a medical device";
            EXPECT_EQ(words.find(caution), words.rfind(caution));
            EXPECT_NE(words.find(caution), std::string::npos);
        }
    }
}
