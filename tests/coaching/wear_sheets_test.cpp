#include "coaching/wear_sheets.hpp"

#include "coaching/lived_for_tests.hpp"
#include "coaching/reading_grade.hpp"
#include "paper_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

namespace {

const WearBeginning a_wear{"", "left upper arm", care_day + std::chrono::days{1}, 14};

std::string start_words(const Care& care, const WearBeginning& wear = a_wear) {
    return care.ask([&](const CareInput& in) { return all_words_of(start_page(wear, in)); });
}

std::string diary_words(const Care& care, const WearBeginning& wear = a_wear) {
    return care.ask([&](const CareInput& in) {
        std::string words;
        for (const Paper& sheet : diary_sheets(wear, in)) {
            words += all_words_of(sheet);
        }
        return words;
    });
}

}  // namespace

TEST(StartPage, says_where_it_sits_what_to_write_and_what_if_it_falls_off) {
    const std::string words = start_words(lived());
    EXPECT_THAT(words, HasSubstr("First day: Tue 17 February 2026. Last day: Mon 2 March 2026."));
    for (const char* part :
         {"Place: left upper arm.", "It often reads too high or too low.", "What to write",
          "Do a finger-prick", "Do not stick it on again.",
          "Your clinic, Invented clinic: 030 0000", "Emergency number: 112", "not an alarm"}) {
        EXPECT_THAT(words, HasSubstr(part));
    }
}

// Safety rule 15: a blank line where no number is known; the emergency number has no hours.
TEST(StartPage, a_person_to_be_told_is_not_the_emergency_number) {
    Care care = lived();
    const auto contacts = [&](std::vector<Contact> all) {
        care.facts.contacts = std::move(all);
        return start_words(care) + diary_words(care);
    };
    std::string words =
        contacts({{ContactKind::emergency, "wife (invented)", "ring in the afternoon"}});
    EXPECT_THAT(words, HasSubstr("Emergency number: \n"));
    EXPECT_THAT(words, HasSubstr("To be told in an emergency, wife (invented), ring in the "
                                 "afternoon: \n"));
    words = contacts({{ContactKind::emergency, "wife (invented)", "030 1111, after 18:00"},
                      {ContactKind::emergency, "", "112"},
                      {ContactKind::clinic, "nurse (invented)", "after 18:00"}});
    EXPECT_THAT(words, HasSubstr("Emergency number: 112\n"));
    EXPECT_THAT(words, HasSubstr("wife (invented): 030 1111, after 18:00\n"));
    EXPECT_THAT(words, HasSubstr("Your clinic, nurse (invented), after 18:00: \n"));
    EXPECT_THAT(contacts({{ContactKind::emergency, "", "112 in the afternoon"}}),
                HasSubstr("Emergency number: \n"));
}

TEST(StartPage, first_aid_only_for_whom_medicines_can_cause_lows_or_may) {
    Care care = lived();
    EXPECT_THAT(start_words(care), Not(HasSubstr("fast sugar")));
    EXPECT_THAT(diary_words(care), Not(HasSubstr("fast sugar")));
    care.takes("gliclazide 30");
    EXPECT_THAT(start_words(care), HasSubstr("15 to 20 g of fast sugar"));
    care = lived();
    care.facts.medicines_asked_on.reset();
    const std::string words = diary_words(care);
    // On each of the two sheets: they are parted.
    EXPECT_NE(words.find("fast sugar"), words.rfind("fast sugar"));
    EXPECT_THAT(words, HasSubstr("If you drive, ask your clinic about driving rules."));
}

TEST(StartPage, with_an_open_eating_screen_no_amounts_and_no_live_numbers) {
    Care care = lived();
    EXPECT_THAT(start_words(care), AllOf(HasSubstr("about how much"), HasSubstr("one number")));
    EXPECT_THAT(diary_words(care), HasSubstr("about how much"));
    care.facts.cautions.eating.positive = Answered::not_yet;
    EXPECT_THAT(start_words(care), AllOf(Not(HasSubstr("how much")), Not(HasSubstr("one number")),
                                         HasSubstr("You need not look at the numbers.")));
    EXPECT_THAT(diary_words(care), AllOf(Not(HasSubstr("how much")), Not(HasSubstr("bowl"))));
}

TEST(StartPage, in_pregnancy_the_clinic_leads) {
    Care care = lived();
    care.facts.cautions.pregnancy = Pregnancy::unsure;
    EXPECT_THAT(start_words(care), HasSubstr("Your maternity or diabetes clinic leads."));
}

TEST(StartPage, with_an_sglt2_inhibitor_it_says_when_to_ring) {
    Care care = lived();
    care.takes("empagliflozin 10");
    EXPECT_THAT(start_words(care), HasSubstr("even when your glucose looks normal"));
}

TEST(DiarySheet, holds_fourteen_days_and_five_lanes_or_days_to_write_in) {
    const Care care = lived();
    care.ask([](const CareInput& in) {
        for (const auto& starts : {a_wear.starts, std::optional<CivilDate>()}) {
            WearBeginning wear = a_wear;
            wear.starts = starts;
            std::size_t days = 0;
            for (const Paper& sheet : diary_sheets(wear, in)) {
                for (const PaperBlock& block : sheet.blocks) {
                    if (const auto* table = std::get_if<PaperTable>(&block)) {
                        days += table->rows.size();
                        EXPECT_EQ(table->columns,
                                  (std::vector<std::string>{"Day", "Ate", "Moved", "Slept", "Felt",
                                                            "Took"}));
                        EXPECT_EQ(table->rows.front().front(),
                                  starts ? table->rows.front().front() : std::string());
                    }
                }
            }
            EXPECT_EQ(days, 14U);
        }
        return 0;
    });
    EXPECT_THAT(diary_words(care), AllOf(HasSubstr("Diary, 17 to 23 February 2026"),
                                         HasSubstr("Diary, 24 February to 2 March 2026"),
                                         HasSubstr("Tue 17"), HasSubstr("Mon 2 ")));
}

TEST(WearSheets, read_at_grade_6_without_words_that_lull_or_blame) {
    for (const char* medicine : {"metformin 500", "gliclazide 30", "empagliflozin 10"}) {
        for (const Answered answer : {Answered::no, Answered::yes}) {
            Care care = lived();
            care.takes(medicine);
            care.facts.cautions.eating.positive = answer;
            care.facts.cautions.pregnancy =
                answer == Answered::yes ? Pregnancy::pregnant : Pregnancy::no;
            care.ask([&](const CareInput& in) {
                std::vector<Paper> papers = diary_sheets(a_wear, in);
                papers.push_back(start_page(a_wear, in));
                papers.push_back(start_page({}, in));
                for (const Paper& paper : papers) {
                    const std::string words = all_words_of(paper);
                    EXPECT_LE(reading_grade(counts_of(running_text(paper))).value_or(99), 6)
                        << words;
                    EXPECT_THAT(forbidden_words_in(words), IsEmpty());
                    EXPECT_THAT(words, HasSubstr("Last sensor reading: Sun 15 February 23:55"));
                }
                return 0;
            });
        }
    }
}
