#include "coaching/trial_calendar_page.hpp"
#include "coaching/trial_report.hpp"

#include "coaching/lived_for_tests.hpp"
#include "coaching/reading_grade.hpp"
#include "findings/wording.hpp"
#include "paper_for_tests.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;

namespace {

Trial a_trial(const TrialTemplate& made_from, int pairs, CivilDate first) {
    Trial trial = trial_of(made_from);
    trial.seed = 7;
    trial.drawn_at = care_at(-15, 12);
    trial.worth = 18;
    trial.noise_sd = 12;
    trial.blocks = blocks_from(first, pairs, made_from.free_days);
    draw_arms(trial.blocks, trial.draw, trial.seed);
    return trial;
}

std::string short_day(CivilDate day) {
    const std::string words = day_words(day, {});
    return words.substr(0, words.rfind(' ') + 4);
}

Paper calendar_of(const Care& care, const Trial& trial) {
    return care.ask([&](const CareInput& in) { return trial_calendar_page(trial, in); });
}

}  // namespace

TEST(TrialCalendarPage, every_day_stands_with_its_arm_by_lot_and_a_box) {
    const Trial trial =
        a_trial(*trial_template_called("walk-after-dinner"), 7, care_day + std::chrono::days{1});
    const Paper paper = calendar_of(lived(), trial);
    const auto* table = [&] {
        for (const PaperBlock& block : paper.blocks) {
            if (const auto* found = std::get_if<PaperTable>(&block)) {
                return found;
            }
        }
        return static_cast<const PaperTable*>(nullptr);
    }();
    ASSERT_NE(table, nullptr);
    std::map<std::string, std::string> told;
    for (const auto& row : table->rows) {
        told[row[0]] = row[1];
        told[row[3]] = row[4];
        EXPECT_EQ(row[2] + row[5], "");  // room to tick
    }
    ASSERT_THAT(told, SizeIs(14));
    for (const TrialBlock& block : trial.blocks) {
        EXPECT_EQ(told[short_day(block.day_of_a())], "walk");
        EXPECT_EQ(told[short_day(block.day_of_b())], "no walk");
    }
}

TEST(TrialCalendarPage, says_what_to_do_what_if_not_when_to_stop_and_whom_to_ring) {
    const std::string words = all_words_of(
        calendar_of(lived(), a_trial(*trial_template_called("walk-after-dinner"), 7, care_day)));
    for (const char* part :
         {"walk: walk 15 minutes", "A lot chose the days.", "Not done: write what you did.",
          "Stop, and ring your coach", "get help now", "Your coach: ", "Your clinic, ",
          "Emergency number: 112", "not before"}) {
        EXPECT_THAT(words, HasSubstr(part));
    }
}

TEST(TrialCalendarPage, every_template_has_short_words_that_differ) {
    for (const TrialTemplate& one : trial_templates()) {
        EXPECT_NE(std::string(one.a_in_short), "") << one.code;
        EXPECT_NE(std::string(one.a_in_short), one.b_in_short) << one.code;
        EXPECT_LE(std::string(one.a_in_short).size(), 15U) << one.code;
        EXPECT_LE(std::string(one.b_in_short).size(), 15U) << one.code;
    }
}

TEST(TrialCalendarPage, every_template_reads_at_grade_6) {
    for (const TrialTemplate& one : trial_templates()) {
        Care care = lived();
        care.takes("gliclazide 30");
        const Paper paper = calendar_of(care, a_trial(one, 7, care_day));
        const std::string words = all_words_of(paper);
        EXPECT_LE(reading_grade(counts_of(running_text(paper))).value_or(99), 6) << words;
        EXPECT_THAT(forbidden_words_in(words), IsEmpty()) << one.code;
        EXPECT_THAT(words, HasSubstr("15 to 20 g of fast sugar"));
    }
}

TEST(TrialPapers, a_gate_closed_since_the_lot_closes_them) {
    Care care = lived();
    const Trial walk = a_trial(*trial_template_called("walk-after-dinner"), 7, care_day);
    const auto gates = [&](const Trial& trial) {
        return care.ask(
            [&](const CareInput& in) { return gates_before_trial_papers(trial, in).size(); });
    };
    EXPECT_EQ(gates(walk), 0U);
    Trial unknown = walk;
    unknown.code = "one of our own";
    EXPECT_EQ(gates(unknown), 0U);
    care.facts.cautions.chest_symptoms = Answered::yes;
    EXPECT_EQ(gates(walk), 1U);
    EXPECT_EQ(gates(unknown), 1U);
    unknown.a = "metformin at noon";
    EXPECT_EQ(gates(unknown), 2U);
    care = lived();
    care.facts.cautions.pregnancy = Pregnancy::planning;
    EXPECT_EQ(gates(walk), 1U);
}

TEST(TrialReport, tells_as_allotted_first_lows_of_its_days_and_leaves_room_for_the_rest) {
    Care care = lived();
    const Trial trial =
        a_trial(*trial_template_called("walk-after-dinner"), 6, care_day - std::chrono::days{13});
    Care::set(care.wears[0], 4 * 288 + 30, 2, 60);
    const ReviewInput input = input_of_care(care);
    const TrialReading reading = read_trial(trial, input);
    ASSERT_TRUE(reading.ended);
    const Paper paper =
        care.ask([&](const CareInput& in) { return trial_report(trial, reading, input, in); });
    EXPECT_EQ(paper.reader, PaperReader::coach);
    const std::string words = all_words_of(paper);
    EXPECT_LT(words.find("As allotted"), words.find("As done"));
    EXPECT_THAT(words, HasSubstr("1a title A trial with one person (N-of-1)"));
    EXPECT_THAT(words, HasSubstr("a reading below 70 mg/dL on 1, below 54 mg/dL on 0."));
    EXPECT_THAT(words, HasSubstr("22 What it means for this client"));
    EXPECT_THAT(words, HasSubstr("10.1136/bmj.h1738"));
    EXPECT_THAT(words, Not(HasSubstr("because")));
}

TEST(TrialReport, before_the_end_it_holds_the_plan_and_no_number) {
    Care care = lived();
    const Trial trial =
        a_trial(*trial_template_called("walk-after-dinner"), 7, care_day + std::chrono::days{4});
    const ReviewInput input = input_of_care(care);
    const TrialReading reading = read_trial(trial, input);
    ASSERT_FALSE(reading.ended);
    const Paper paper =
        care.ask([&](const CareInput& in) { return trial_report(trial, reading, input, in); });
    for (const PaperBlock& block : paper.blocks) {
        EXPECT_FALSE(std::holds_alternative<PaperFigure>(block));
    }
    EXPECT_THAT(all_words_of(paper),
                AllOf(HasSubstr("nothing is read before"), Not(HasSubstr("17 result"))));
}
