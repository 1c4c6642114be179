// Our story so far. Everybody in here is invented.
#include "coaching/story_paper.hpp"

#include "coaching/care_for_tests.hpp"
#include "coaching/paper_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

using namespace tracewright;
using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

using std::chrono::days;

Story told(const Care& care, std::vector<KeptTrial> trials = {}) {
    ReviewInput input;
    input.wears = care.wears;
    input.diary = care.diary;
    input.zones = care.clock;
    input.as_of = care.as_of;
    input.goals = goals_that_hold(care.facts);
    input.unit = care.facts.unit;
    LabQuestion question{input, care.facts};
    question.trials = trials;
    return story_of(question);
}

/// Three wears: 90 to 76, 60 to 46 and 20 to 6 days ago.
Care three_wears() {
    Care care;
    care.wears.clear();
    for (const int from : {-90, -60, -20}) {
        Wear& wear = care.wear(from, 14, 170);
        for (std::size_t i = 0; i < wear.readings.size(); ++i) {
            Reading& reading = wear.readings[i];
            const int level = 170 + static_cast<int>(i * 7 % 40) - 20 + from / 6;
            reading = Reading(reading.at, Glucose{level * 100, GlucoseUnit::mg_per_dl},
                              reading.interval());
        }
    }
    care.facts.labs = {{care_day - days{100}, "HbA1c", 7.4, "%"},
                       {care_day - days{95}, "weight", 92, "kg"}};
    return care;
}

std::string line_of(const Story& story) {
    std::string text;
    for (const LineRow& row : story.labs.line) {
        text += row.kind + ": " + row.words + "\n";
    }
    return text;
}

/// A trial of walks whose last day is to come.
KeptTrial running_walks() {
    KeptTrial kept;
    kept.trial.question = "Does a walk change the rise?";
    kept.trial.code = "walk-after-dinner";
    kept.trial.blocks = blocks_from(care_day - days{2}, 6, 0);
    return kept;
}

/// A walk goes on, smaller plates were kept, and a trial runs.
Care with_a_plan() {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{45}, {}};
    care.facts.agreed_change->kind = Proposed::walking;
    AgreedChange kept{"smaller plates", care_day - days{70}, {}};
    kept.kind = Proposed::food_change;
    kept.does.eating = EatingChange::less;
    kept.outcome = ChangeOutcome::kept;
    kept.ended_on = care_day - days{50};
    care.facts.earlier_changes = {kept};
    return care;
}

}  // namespace

// Safety rules 2 and 6: a very low first, then when the last reading was and how old it is.
TEST(Story, a_very_low_comes_first_and_the_age_of_the_readings_is_told) {
    Care care = three_wears();
    EXPECT_EQ(told(care).very_low, "");
    EXPECT_THAT(told(care).last_reading,
                HasSubstr("The last reading was Mon 9 February 23:55, 7 days ago. Nothing can be "
                          "said since then."));
    Care::set(care.wears[2], 1000, 6, 45);
    Care::set(care.wears[1], 1000, 6, 45);
    const Story story = told(care);
    EXPECT_THAT(story.very_low, HasSubstr("30 min below 3.0 mmol/L"));
    EXPECT_THAT(story.very_low, HasSubstr("2 very lows in all, the first"));
    const Paper paper = story_paper(story, "Tansy (invented)", {});
    const auto* box = std::get_if<PaperBox>(&paper.blocks.front());
    ASSERT_TRUE(box != nullptr);
    EXPECT_EQ(box->sentences, std::vector{story.very_low});
    EXPECT_THAT(all_words_of(paper), HasSubstr(story.last_reading));
}

// Safety rule 11.
TEST(Story, in_pregnancy_the_clinic_leads_and_nothing_of_ours_goes_on) {
    for (const Pregnancy told_of : {Pregnancy::pregnant, Pregnancy::planning, Pregnancy::unsure}) {
        Care care = with_a_plan();
        EXPECT_THAT(all_words_of(story_paper(told(care, {running_walks()}), "", {})),
                    HasSubstr("A trial on it is running"));
        care.facts.cautions.pregnancy = told_of;
        const Story story = told(care, {running_walks()});
        EXPECT_THAT(story.care, Contains(HasSubstr("maternity or diabetes clinic leads")));
        EXPECT_THAT(story.changes.back().closed, HasSubstr("It does not go on"));
        EXPECT_FALSE(story.labs.expected);
        EXPECT_FALSE(story.labs.next_test);
        EXPECT_EQ(story.labs.remission.state, RemissionState::clinic_leads);
        const std::string words = all_words_of(story_paper(story, "Tansy (invented)", {}));
        for (const char* never : {"in range", "A trial on it is running", ": open", "126 mg/dL",
                                  "6.5 %", "best date", "remission", "GMI"}) {
            EXPECT_THAT(words, Not(HasSubstr(never)));
        }
        EXPECT_THAT(words, HasSubstr("at 3.5 to 7.8 mmol/L"));
        EXPECT_THAT(words, HasSubstr("is for the maternity or diabetes clinic to say"));
    }
}

// Safety rule 12: no hours in range, foods or weight, whoever looks at the page beside the coach.
TEST(StoryPaper, with_the_eating_screen_positive_or_open_bears_no_hours_foods_or_weight) {
    for (const Answered positive : {Answered::yes, Answered::not_yet}) {
        Care care = with_a_plan();
        care.facts.cautions.eating.positive = positive;
        const Story story = told(care, {running_walks()});
        EXPECT_THAT(story.care, Contains(HasSubstr("eating screen")));
        const std::string words = all_words_of(story_paper(story, "Tansy (invented)", {}));
        for (const char* never : {"% in range", "In range", "kg", "smaller plates", "GMI"}) {
            EXPECT_THAT(words, Not(HasSubstr(never)));
        }
        for (const char* kept : {"wear wear 1 to", "\"a walk\"", "lab A1c", "last reading"}) {
            EXPECT_THAT(words, HasSubstr(kept));
        }
    }
}

// Safety rule 8: what something has closed since it was agreed is not told as open.
TEST(Story, a_change_that_a_gate_has_closed_since_does_not_go_on) {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"low carb breakfast", care_day - days{45}, {}};
    care.facts.agreed_change->kind = Proposed::low_carbohydrate;
    EXPECT_EQ(told(care).changes.back().closed, "");
    care.takes("empagliflozin 10");
    const Story story = told(care);
    EXPECT_THAT(story.changes.back().closed, HasSubstr("An SGLT2 inhibitor is on the list."));
    EXPECT_THAT(all_words_of(story_paper(story, "", {})),
                HasSubstr("\"low carb breakfast\", agreed Fri 2 January 2026: It does not go on"));
}

TEST(Story, a_change_is_held_against_the_wears_round_it) {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{45}, {}};
    const Story story = told(care);
    ASSERT_EQ(story.changes.size(), 1U);
    ASSERT_TRUE(story.changes[0].compared);
    EXPECT_EQ(story.changes[0].compared->days_before, 14);
    // The wear of 60 days ago, not that of 90, stands for before.
    care.wears.erase(care.wears.begin());
    const Story without = told(care);
    EXPECT_EQ(without.changes[0].compared->hours_before, story.changes[0].compared->hours_before);
}

// T3: of two sensors at once the change is held against the one that the review counts.
TEST(Story, of_two_sensors_after_a_change_the_counted_one_is_compared) {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{45}, {}};
    Wear gappy = care.wears[2];
    std::erase_if(gappy.readings, [&](const Reading& reading) {
        return reading.at >= gappy.start + days{4} && reading.at < gappy.start + days{6};
    });
    care.wears[2] = gappy;
    care.wear(-19, 14, 200);
    const Story story = told(care);
    ASSERT_TRUE(story.changes[0].compared);
    Care counted_alone = care;
    counted_alone.wears.erase(counted_alone.wears.begin() + 2);
    const Story alone = told(counted_alone);
    ASSERT_TRUE(alone.changes[0].compared);
    EXPECT_EQ(story.changes[0].compared->hours_after, alone.changes[0].compared->hours_after);
}

TEST(Story, without_a_wear_on_either_side_nothing_is_compared) {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{2}, {}};
    EXPECT_THAT(told(care).changes[0].none_because, HasSubstr("No wear has begun since"));
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{90}, {}};
    EXPECT_THAT(told(care).changes[0].none_because, HasSubstr("No wear lies before it"));
    care.facts.agreed_change = AgreedChange{"a walk", {}, {}};
    EXPECT_THAT(told(care).changes[0].none_because, HasSubstr("not known"));
}

// What was dropped before the next wear began is not judged by it.
TEST(Story, a_wear_after_a_change_ended_says_nothing_of_it) {
    Care care = three_wears();
    AgreedChange ended{"a walk", care_day - days{45}, {}};
    ended.outcome = ChangeOutcome::dropped;
    ended.ended_on = care_day - days{30};
    care.facts.earlier_changes = {ended};
    EXPECT_FALSE(told(care).changes[0].compared);
    care.facts.earlier_changes[0].ended_on = care_day - days{10};
    EXPECT_TRUE(told(care).changes[0].compared);
}

TEST(Story, what_else_changed_stands_beside_the_answer) {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{45}, {}};
    AgreedChange other{"smaller plates", care_day - days{40}, {}};
    other.outcome = ChangeOutcome::kept;
    other.ended_on = care_day - days{5};
    care.facts.earlier_changes = {other};
    care.facts.medicines.push_back({"sitagliptin 100", care_day - days{44}, {}});
    care.entry(DiaryKind::illness, care_at(-18, 10), "a cold");
    const Story story = told(care);
    const DidItHelp& walk = story.changes.back();
    EXPECT_THAT(walk.else_changed, Contains(HasSubstr("smaller plates")));
    EXPECT_THAT(walk.else_changed, Contains(HasSubstr("illness is noted 1 time")));
    EXPECT_TRUE(std::ranges::any_of(walk.compared->finding.caveats, [](const Caveat& caveat) {
        return caveat.kind == CaveatKind::medicine_changed;
    }));
    EXPECT_THAT(story.kept, Contains("smaller plates"));
}

TEST(Story, one_line_of_dates_holds_all_kinds_in_order) {
    Care care = three_wears();
    AgreedChange ended{"smaller plates", care_day - days{70}, {}};
    ended.outcome = ChangeOutcome::dropped;
    ended.ended_on = care_day - days{50};
    care.facts.earlier_changes = {ended};
    KeptTrial trial;
    trial.trial.question = "Does a walk change the rise?";
    trial.trial.blocks = blocks_from(care_day - days{40}, 6, 0);
    trial.stopped_on = care_day - days{35};
    trial.stopped_because = "a cold";
    const Story story = told(care, {trial});
    EXPECT_TRUE(std::ranges::is_sorted(story.labs.line, {}, &LineRow::on));
    const std::string line = line_of(story);
    for (const char* row : {"lab: A1c 7.4 % (57 mmol/mol)", "weight: 92.0 kg",
                            "change: smaller plates\n", "change: smaller plates: dropped",
                            "trial: begun: Does a walk", "trial: stopped: Does a walk", "wear: "}) {
        EXPECT_THAT(line, HasSubstr(row));
    }
    EXPECT_EQ(story.trials.size(), 1U);
}

TEST(Story, a_medicine_of_long_ago_is_on_the_line_and_one_without_a_day_is_named) {
    Care care = three_wears();
    care.facts.medicines = {{"metformin 500", care_day - days{6000}, {}},
                            {"gliclazide 80", {}, {}},
                            {"sitagliptin 100", {}, care_day - days{10}},
                            {"none", {}, {}},
                            {"stopped glipizide", {}, {}}};
    const Story story = told(care);
    EXPECT_THAT(line_of(story), HasSubstr("medicine: metformin started"));
    EXPECT_THAT(story.unknown,
                Contains("Since when this is taken, begun before the coaching: gliclazide 80."));
}

TEST(Story, what_is_not_known_is_said) {
    Care care = three_wears();
    care.facts.medicines_asked_on.reset();
    care.facts.labs.clear();
    const Story story = told(care);
    EXPECT_THAT(story.unknown, Contains(HasSubstr("Which medicines are taken")));
    EXPECT_THAT(story.unknown, Contains(HasSubstr("no A1c is on record")));
    EXPECT_THAT(story.unknown, Contains(HasSubstr("Whether weight changed")));
}

// 90 days after whatever came last.
TEST(NextLab, waits_for_the_last_of_lab_medicine_and_change) {
    Care care = three_wears();
    EXPECT_EQ(told(care).next_lab.on, care_day);  // 100 days ago: it may be tested
    care.facts.medicines.push_back({"sitagliptin 100", care_day - days{44}, {}});
    EXPECT_EQ(told(care).next_lab.on, care_day + days{46});
    EXPECT_THAT(told(care).next_lab.because, HasSubstr("sitagliptin was started"));
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{10}, {}};
    EXPECT_EQ(told(care).next_lab.on, care_day + days{80});
    EXPECT_EQ(told(care).labs.next_test, care_day + days{80});
    EXPECT_THAT(next_lab_words(told(care).next_lab, {}), HasSubstr("\"a walk\" was agreed"));
}

TEST(StoryPaper, holds_what_the_story_holds_and_never_says_a_change_did_it) {
    Care care = three_wears();
    care.facts.agreed_change = AgreedChange{"a walk", care_day - days{45}, {}};
    const Paper paper = story_paper(told(care), "Tansy (invented)", {});
    std::string text = paper.title;
    for (const PaperBlock& block : paper.blocks) {
        if (const auto* sentence = std::get_if<PaperSentence>(&block)) {
            text += " " + sentence->text;
        } else if (const auto* list = std::get_if<PaperList>(&block)) {
            for (const std::string& item : list->items) {
                text += " " + item;
            }
        } else if (const auto* heading = std::get_if<PaperHeading>(&block)) {
            text += " " + heading->text;
        }
    }
    EXPECT_THAT(text, HasSubstr("Our story so far: Tansy (invented)"));
    EXPECT_THAT(text, HasSubstr("In range "));
    EXPECT_THAT(text, HasSubstr("What is still unknown"));
    for (const char* word : {"because of the walk", "thanks to", "cured", "caused", "proves"}) {
        EXPECT_EQ(text.find(word), std::string::npos) << word;
    }
}
