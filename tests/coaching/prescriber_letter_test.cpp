#include "coaching/prescriber_letter.hpp"

#include "coaching/lows_and_highs.hpp"
#include "paper_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tracewright {
namespace {

using ::testing::AllOf;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

std::string letter_of(const PaperCase& made, const LetterAbout& about = {}) {
    return all_words_of(
        prescriber_letter(made.client(), about, {made.care.wears, made.care.diary}));
}

TEST(PrescriberLetter, of_a_very_low_on_a_sulfonylurea_says_why_when_and_what_is_taken) {
    Care care = with_a_very_low_night("gliclazide MR 60");
    care.facts.agreed_change = a_walk();
    const std::string words = letter_of(PaperCase(care));
    EXPECT_THAT(words,
                AllOf(HasSubstr("Tue 10 February 02:40"), HasSubstr("50 min below 3.0 mmol/L"),
                      HasSubstr("gliclazide MR 60"), HasSubstr("a short walk after dinner"),
                      HasSubstr("The last reading was"), HasSubstr("2 to 15 February 2026")));
    EXPECT_LT(words.find("Why I write"), words.find("Lows and very highs"));
    EXPECT_THAT(words, HasSubstr("Tue 10 February 02:40 very low 50 min 2.5 mmol/L wear 1"));
    EXPECT_THAT(forbidden_words_in(words), IsEmpty());
}

// One span in heading, table and sentences.
TEST(PrescriberLetter, its_lows_and_highs_are_of_the_days_that_its_sentences_speak_of) {
    Care shorter;
    shorter.wears.clear();
    shorter.wear(-60, 14);
    shorter.wear(-11, 11);
    EXPECT_THAT(letter_of(PaperCase(shorter)),
                HasSubstr("Lows and very highs, 18 December 2025 to 15 February 2026"));
    PaperCase made(shorter);
    Care last = shorter;
    last.wears.erase(last.wears.begin());
    // The review of the last wear alone, the record of both.
    const PaperCase reviewed(last);
    const std::string words =
        all_words_of(prescriber_letter(reviewed.client(), {}, {made.care.wears, made.care.diary}));
    EXPECT_THAT(words, HasSubstr("Lows and very highs, 5 to 15 February 2026"));
    Care longer;
    longer.wears.clear();
    longer.wear(-15, 15);
    EXPECT_THAT(letter_of(PaperCase(longer)),
                AllOf(HasSubstr("Lows and very highs, 1 to 15 February 2026"),
                      HasSubstr("15 days can't rule out")));
    // Another wear of the last 14 days is in the table: the sentences say of which days they are.
    made.care.wears.front() = Care{}.wears.front();
    EXPECT_THAT(
        all_words_of(prescriber_letter(reviewed.client(), {}, {made.care.wears, made.care.diary})),
        AllOf(HasSubstr("Lows and very highs, 2 to 15 February 2026"),
              HasSubstr("5 to 15 February 2026: No low was recorded")));
}

TEST(PrescriberLetter, lists_what_was_taken_when_asked_though_it_ended_long_ago) {
    Care care;
    care.facts.medicines_asked_on = care_day - std::chrono::days{120};
    care.facts.medicines = {{"metformin 500", {}, care_day - std::chrono::days{100}}};
    EXPECT_THAT(letter_of(PaperCase(care)),
                AllOf(HasSubstr("Asked on Sun 19 October 2025."), Not(HasSubstr("none.")),
                      HasSubstr("metformin 500, until Sat 8 November 2025"),
                      HasSubstr("none that goes on")));
    care.facts.medicines = {{"metformin 500", {}, care_day - std::chrono::days{130}}};
    EXPECT_THAT(letter_of(PaperCase(care)), HasSubstr("Asked on Sun 19 October 2025: none."));
}

TEST(LetterReasons, date_the_latest_three_of_a_kind_and_the_first) {
    Care care = with_a_very_low_night("gliclazide 80");
    const auto letter = [&](int nights) {
        for (int night = 1; night < nights; ++night) {
            Care::set(care.wears[0], (8 - night) * 288 + 32, 9, 45);
        }
        return letter_reasons(PaperCase(care).client(), {}).reasons.front();
    };
    EXPECT_THAT(letter(1), Not(HasSubstr("In all")));
    EXPECT_THAT(letter(2), HasSubstr("In all 2 of this kind: Tue 10 February 02:40, Mon 9 "
                                     "February 02:40."));
    EXPECT_THAT(letter(5),
                HasSubstr("In all 5 of this kind, of which the latest three are dated here: Tue "
                          "10 February 02:40, Mon 9 February 02:40, Sun 8 February 02:40. The "
                          "first was Fri 6 February 02:40."));
}

TEST(PrescriberLetter, speaks_within_the_coachs_licence) {
    PaperCase made{Care{}};
    EXPECT_THAT(letter_of(made), HasSubstr("not licensed to treat"));
    made.licence = Licence::nurse;
    EXPECT_THAT(letter_of(made),
                AllOf(HasSubstr("licensed as a nurse"), Not(HasSubstr("not licensed to treat"))));
}

TEST(PrescriberLetter, tells_what_was_done_where_an_escalation_is_answered) {
    PaperCase made(with_a_very_low_night("gliclazide 80"));
    for (StandingEscalation& one : made.escalations) {
        one.answer = "Wed 11 February 09:10, Fern: rang the client";
    }
    EXPECT_THAT(letter_of(made), HasSubstr("Done so far: Wed 11 February 09:10, Fern: rang"));
}

// Every rung and rule of the ladder: its event is in the letter's reasons.
TEST(LetterReasons, hold_every_escalation_of_the_ladder) {
    Care care = with_a_very_low_night("gliclazide 80");
    Care::set(care.wears[0], 2000, 200, 310);
    Care::set(care.wears[0], 3000, 10, 60);
    Care::set(care.wears[0], 3200, 10, 60);
    care.entry(DiaryKind::symptom, care_at(-1, 8), "chest pain");
    care.facts.labs = {{care_day - std::chrono::days{60}, "weight", 90, "kg"},
                       {care_day - std::chrono::days{1}, "weight", 80, "kg"}};
    care.facts.agreed_change = a_walk();
    const PaperCase made(care);
    ASSERT_GE(made.escalations.size(), 5U);
    const LetterReasons letter = letter_reasons(made.client(), {});
    std::string all;
    for (const std::string& reason : letter.reasons) {
        all += reason + "\n";
    }
    for (const StandingEscalation& one : made.escalations) {
        LetterAbout about;
        about.escalation = one.number;
        const LetterReasons alone = letter_reasons(made.client(), about);
        ASSERT_EQ(alone.reasons.size(), 1U);
        EXPECT_THAT(alone.reasons.front(), HasSubstr(one.escalation.what));
        EXPECT_FALSE(alone.asked.empty());
    }
    EXPECT_THAT(all, AllOf(HasSubstr("chest pain"), HasSubstr("below 3.0 mmol/L"),
                           HasSubstr("weight down")));
    EXPECT_LT(all.find("chest pain"), all.find("below 3.0 mmol/L"));
    EXPECT_LT(all.find("below 3.0 mmol/L"), all.find("weight down"));
}

// Safety rule: each gate ends in the letter ready for the prescriber.
TEST(LetterReasons, hold_a_reason_and_a_question_for_every_gate_of_everything_proposed) {
    std::vector<Care> cases;
    const auto with = [&](auto change) {
        Care& care = cases.emplace_back();
        change(care);
    };
    with([](Care& care) { care.facts.born_year.reset(); });
    with([](Care& care) { care.facts.cautions.pregnancy = Pregnancy::pregnant; });
    with([](Care& care) { care.facts.cautions.another_autoimmune_disease = Answered::yes; });
    for (const char* medicine : {"empagliflozin 10", "insulin glargine", "gliclazide 80",
                                 "propranolol 40", "an unknown one"}) {
        with([&](Care& care) { care.takes(medicine); });
    }
    with([](Care& care) { care.facts.cautions.eating.positive = Answered::yes; });
    with([](Care& care) { care.facts.cautions.frail = Answered::yes; });
    with([](Care& care) { care.facts.cautions.eye_disease = Answered::yes; });
    with([](Care& care) { care.facts.cautions.last_eye_check.reset(); });
    with([](Care& care) { care.facts.cautions.numb_feet_or_wound = Answered::not_yet; });
    with([](Care& care) { care.facts.cautions.chest_symptoms = Answered::yes; });
    cases.push_back(with_a_very_low_night("gliclazide 80"));
    int gates = 0;
    for (const Care& care : cases) {
        const PaperCase made(care);
        for (const Proposed proposed :
             {Proposed::low_carbohydrate, Proposed::fasting, Proposed::meal_skipping,
              Proposed::weight_loss, Proposed::food_change, Proposed::walking, Proposed::other}) {
            LetterAbout about;
            about.proposed = proposed;
            const auto closed = gates_before_offer(proposed, "", made.client().care());
            gates += static_cast<int>(closed.size());
            const LetterReasons letter = letter_reasons(made.client(), about);
            if (!closed.empty()) {
                EXPECT_THAT(letter.reasons, Contains(HasSubstr("The client and I think of")));
                EXPECT_FALSE(letter.asked.empty());
            }
            const std::string words = letter_of(made, about);
            EXPECT_THAT(forbidden_words_in(words), IsEmpty()) << words;
            EXPECT_THAT(words, Not(HasSubstr("please ask.")));
            EXPECT_THAT(words, Not(HasSubstr("Ask the clinic")));
        }
    }
    EXPECT_GT(gates, 30);
}

// Safety rules 8 and 11.
TEST(PrescriberLetter, a_change_that_something_has_closed_since_does_not_go_on_and_says_why) {
    Care agreed;
    agreed.facts.agreed_change = a_walk();
    agreed.facts.agreed_change->words = "low carb breakfast";
    agreed.facts.agreed_change->kind = Proposed::low_carbohydrate;
    const std::string running = letter_of(PaperCase(agreed));
    EXPECT_THAT(running, AllOf(HasSubstr("to be looked at on Mon 23 February"),
                               Not(HasSubstr("does not go on"))));
    struct Row {
        void (*happens)(Care&);
        const char* why;
    };
    for (const Row& row :
         {Row{[](Care& care) { care.facts.cautions.pregnancy = Pregnancy::pregnant; },
              "The client is pregnant or may be: the maternity or diabetes clinic leads."},
          Row{[](Care& care) { care.takes("empagliflozin 10"); },
              "An SGLT2 inhibitor is on the list."},
          Row{[](Care& care) { care.facts.cautions.eating.positive = Answered::yes; },
              "A screen on eating was positive."}}) {
        Care care = agreed;
        row.happens(care);
        const std::string words = letter_of(PaperCase(care));
        EXPECT_THAT(words, HasSubstr("\"low carb breakfast\""));
        EXPECT_THAT(words, HasSubstr("agreed on Fri 13 February 2026. It does not go on: something "
                                     "that comes first has closed it. " +
                                     std::string(row.why)));
        EXPECT_THAT(words, Not(HasSubstr("to be looked at")));
        EXPECT_THAT(words, Not(HasSubstr("Ask the clinic")));
        EXPECT_THAT(forbidden_words_in(words), IsEmpty()) << words;
    }
}

// Safety rule 11: whatever the letter is about, the prescriber is told and asked to lead.
TEST(PrescriberLetter, tells_of_a_pregnancy_in_every_letter_once) {
    const struct {
        Pregnancy told;
        const char* reason;
    } rows[] = {{Pregnancy::pregnant, "The client is pregnant, as I was told."},
                {Pregnancy::planning, "The client plans a pregnancy, as I was told."},
                {Pregnancy::unsure, "The client may be pregnant and is not sure."}};
    LetterAbout walking;
    walking.proposed = Proposed::walking;
    LetterAbout one_escalation;
    one_escalation.escalation = 1;
    for (const auto& row : rows) {
        Care care;
        care.facts.cautions.pregnancy = row.told;
        const PaperCase made(care);
        for (const LetterAbout& about : {LetterAbout{}, walking, one_escalation}) {
            const LetterReasons letter = letter_reasons(made.client(), about);
            EXPECT_EQ(std::ranges::count(letter.reasons, row.reason), 1) << row.reason;
            EXPECT_THAT(letter.asked, Contains(HasSubstr("please lead")));
            EXPECT_THAT(letter_of(made, about), Not(HasSubstr("I have no open question")));
        }
    }
    const PaperCase quiet{Care{}};
    EXPECT_THAT(letter_of(quiet), Not(HasSubstr("pregnan")));
}

TEST(LowsAndHighs, are_told_once_latest_first_with_finger_pricks) {
    Care care = with_a_very_low_night("gliclazide 80");
    Care::set(care.wears[0], 2000, 6, 60);
    Care::set(care.wears[0], 3000, 6, 300);
    care.entry(DiaryKind::finger_prick, care_at(-1, 9)).glucose =
        Glucose{290, GlucoseUnit::mmol_per_l};
    care.entry(DiaryKind::finger_prick, care_at(-1, 10)).glucose =
        Glucose{600, GlucoseUnit::mmol_per_l};
    const auto all =
        lows_and_highs(care.wears, care.diary, {care_at(-14), care_at(0)}, GlucoseUnit::mmol_per_l);
    ASSERT_EQ(all.size(), 4U);
    EXPECT_EQ(all[0].what, "very low");
    EXPECT_EQ(all[0].value, "2.9 mmol/L");
    EXPECT_EQ(all[0].seen_by, "finger-prick");
    EXPECT_EQ(all[1].what, "very high");
    EXPECT_EQ(all[2].what, "very low");
    EXPECT_EQ(all[2].lasted, "50 min");
    EXPECT_EQ(all[3].what, "low");
    EXPECT_EQ(all[3].lasted, "30 min");
}

// The ladder tells a day by its highest reading: the letter's table holds that time too, however
// many other highs came after it.
TEST(PrescriberLetter, what_the_ladder_tells_of_a_high_stands_in_the_table_by_the_same_time) {
    Care care;
    Care::set(care.wears[0], 5 * 288 + 100, 12, 310);
    Care::set(care.wears[0], 5 * 288 + 106, 1, 330);
    for (int day = 6; day < 14; ++day) {
        Care::set(care.wears[0], day * 288 + 100, 12, 270);
    }
    const auto all =
        lows_and_highs(care.wears, care.diary, {care_at(-14), care_at(0)}, GlucoseUnit::mg_per_dl);
    const auto high = std::ranges::find_if(all, &LowOrHigh::above_300);
    ASSERT_NE(high, all.end());
    const PaperCase made(care);
    const auto very_high =
        std::ranges::find(made.review.findings, std::string("very_high"), &Finding::code);
    ASSERT_NE(very_high, made.review.findings.end());
    EXPECT_THAT(very_high->sentence, HasSubstr("08:50"));  // 106 readings of five minutes
    EXPECT_THAT(letter_of(made), HasSubstr(" at 08:50"));
    const auto ladder = care.ask([&](const CareInput& in) {
        return escalations(
            {in.wears, in.diary, in.medicines, in.clock, GlucoseUnit::mg_per_dl, {}, {}});
    });
    ASSERT_FALSE(ladder.empty());
    EXPECT_EQ(ladder[0].at, high->value_at);
}

TEST(PrescriberLetter, never_leaves_a_very_low_out_however_many_lows_there_are) {
    Care care;
    care.takes("gliclazide 80");
    for (int day = 0; day < 14; ++day) {
        Care::set(care.wears[0], day * 288 + 30, 6, 45);
        Care::set(care.wears[0], day * 288 + 150, 6, 60);
    }
    const PaperCase made(care);
    const std::string words = letter_of(made);
    for (int day = 2; day <= 15; ++day) {
        EXPECT_THAT(words, HasSubstr(std::to_string(day) + " February 02:30 very low"));
    }
    EXPECT_THAT(words, HasSubstr("6 earlier ones, none of them very low, are not listed."));
}

}  // namespace
}  // namespace tracewright
