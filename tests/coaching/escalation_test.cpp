#include "coaching/ladder_for_tests.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace tracewright {
namespace {

// Rule 2 and the ladder: the text is read whatever it was filed under. Invented.
TEST(Ladder, reads_emergencies_and_help_in_entries_of_every_kind) {
    for (const DiaryKind kind : {DiaryKind::meal, DiaryKind::note, DiaryKind::movement,
                                 DiaryKind::finger_prick, DiaryKind::medicine}) {
        for (const char* text : {"a seizure", "had a fit", "fainted", "chest pain", "tight chest",
                                 "passed out", "woke up on the floor"}) {
            Ladder ladder;
            ladder.takes("none");
            ladder.entry(kind, 10, text);
            ASSERT_EQ(ladder.found("symptom").size(), 1U) << text;
            EXPECT_EQ(ladder.found("symptom")[0].rung, Rung::emergency_now) << text;
        }
        for (const char* text :
             {"my son had to help me with a low", "a paramedic came", "he gave me sugar"}) {
            Ladder ladder;
            ladder.entry(kind, 10, text);
            EXPECT_EQ(ladder.found("needed_help").size(), 1U) << text;
        }
    }
    Ladder sglt2;
    sglt2.takes("empagliflozin 10");
    sglt2.entry(DiaryKind::meal, 10, "toast, nausea after it");
    EXPECT_EQ(sglt2.found("symptom_with_sglt2").size(), 1U);
    Ladder exercise;
    exercise.takes("none");
    exercise.entry(DiaryKind::movement, 10, "yoga with deep breathing");
    exercise.entry(DiaryKind::meal, 20, "a benefitting supper");
    EXPECT_TRUE(exercise.found("symptom").empty());
}

// Messages without a time share a moment: an answer to one is none to another.
TEST(Ladder, events_of_the_diary_are_told_apart_by_what_they_say) {
    Ladder ladder;
    ladder.takes("metformin");
    ladder.entry(DiaryKind::note, 10, "chest pain");
    const std::string first = ladder.found("symptom").at(0).event;
    ladder.entry(DiaryKind::note, 10, "passed out in the shop");
    ASSERT_EQ(ladder.found("symptom").size(), 2U);
    EXPECT_NE(ladder.found("symptom")[0].event, ladder.found("symptom")[1].event);
    Ladder other;
    other.takes("metformin");
    other.entry(DiaryKind::note, 10, "passed out in the shop");
    other.entry(DiaryKind::note, 10, "chest pain");
    const auto again = other.found("symptom");
    EXPECT_TRUE(std::ranges::any_of(again, [&](const Escalation& e) { return e.event == first; }));
}

TEST(Ladder, an_event_kept_without_what_it_says_is_known_by_the_words_told_of_it) {
    Escalation kept{Rung::same_day, "ketones@1000", Instant{}, "blood ketones of 1.6 mmol/L", ""};
    Escalation same = kept;
    same.event = "ketones@1000=00ff";
    Escalation other = same;
    other.what = "blood ketones of 4.2 mmol/L";
    EXPECT_TRUE(is_kept_as(same, kept));
    EXPECT_TRUE(is_kept_as(kept, kept));
    EXPECT_FALSE(is_kept_as(other, kept));
    EXPECT_FALSE(is_kept_as(kept, same));
}

TEST(HighsOnTheLadder, above_300_once_a_day_and_most_of_a_day_above_250) {
    Ladder ladder;
    ladder.takes("metformin");
    Wear& wear = ladder.wear(0, 3 * 288, 150);
    Ladder::set(wear, 10, 5, 301);
    Ladder::set(wear, 100, 1, 320);
    Ladder::set(wear, 288, 160, 260);  // 13 h 20 min of day 2
    Ladder::set(wear, 576, 140, 260);  // 11 h 40 min of day 3
    ASSERT_EQ(ladder.found("above_300").size(), 1U);
    EXPECT_NE(ladder.found("above_300")[0].what.find("320"), std::string::npos);
    ASSERT_EQ(ladder.found("mostly_above_250").size(), 1U);
    EXPECT_EQ(ladder.found("mostly_above_250")[0].rung, Rung::this_week);
    Ladder at_edge;
    at_edge.wear(0, 100, 300);
    EXPECT_TRUE(at_edge.found("above_300").empty());
}

TEST(HighsOnTheLadder, a_higher_hundred_of_the_same_day_asks_again) {
    Ladder morning;
    Ladder::set(morning.wear(0, 100, 150), 10, 3, 320);
    Ladder evening = morning;
    Ladder::set(evening.wear(600, 100, 150), 10, 3, 410);
    ASSERT_EQ(morning.found("above_300").size(), 1U);
    EXPECT_EQ(evening.found("above_400").size(), 1U);
    EXPECT_EQ(morning.found("above_300")[0].event, evening.found("above_300")[0].event);
}

TEST(HighsOnTheLadder, finger_pricks_are_read_too) {
    Ladder ladder;
    ladder.prick(10, 300);
    EXPECT_TRUE(ladder.found().empty());
    ladder.prick(20, 301);
    EXPECT_EQ(ladder.found("above_300_finger_prick").size(), 1U);
    Ladder with_ketones;
    with_ketones.prick(10, 241);
    with_ketones.entry(DiaryKind::ketones, 30).number = 0.6;
    EXPECT_EQ(with_ketones.found("above_240_with_ketones").size(), 1U);
}

TEST(HighsOnTheLadder, above_240_counts_with_raised_ketones) {
    Ladder ladder;
    Ladder::set(ladder.wear(0, 100), 40, 10, 245);
    EXPECT_TRUE(ladder.found("above_240_with_ketones").empty());
    ladder.entry(DiaryKind::ketones, 220).number = 0.7;
    EXPECT_EQ(ladder.found("above_240_with_ketones").size(), 1U);
}

TEST(DiaryOnTheLadder, ketones_of_three_are_an_emergency) {
    Ladder ladder;
    ladder.entry(DiaryKind::ketones, 1).number = 3.0;
    ladder.entry(DiaryKind::ketones, 2).number = 1.6;
    ladder.entry(DiaryKind::ketones, 3).number = 0.5;
    const auto found = ladder.found("ketones");
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0].rung, Rung::emergency_now);
    EXPECT_EQ(found[1].rung, Rung::same_day);
}

TEST(DiaryOnTheLadder, vomiting_beside_an_sglt2_inhibitor_is_an_emergency_at_any_glucose) {
    const auto rung = [](const char* medicine) {
        Ladder ladder;
        if (*medicine != '\0') {
            ladder.takes(medicine);
        }
        ladder.wear(0, 100, 110);
        ladder.entry(DiaryKind::symptom, 50, "Vomiting since breakfast");
        const auto found = ladder.found("symptom_with_sglt2");
        return found.empty() ? -1 : static_cast<int>(found[0].rung);
    };
    EXPECT_EQ(rung("empagliflozin 10"), static_cast<int>(Rung::emergency_now));
    EXPECT_EQ(rung(""), static_cast<int>(Rung::emergency_now));              // not asked
    EXPECT_EQ(rung("Quorvilan 10"), static_cast<int>(Rung::emergency_now));  // not recognised
    EXPECT_EQ(rung("metformin"), -1);
}

TEST(DiaryOnTheLadder, ill_on_two_days_running_and_losing_fluids_for_more_than_six_hours) {
    Ladder ladder;
    ladder.takes("metformin");
    ladder.entry(DiaryKind::illness, 60, "fever");
    EXPECT_TRUE(ladder.found("ill_two_days").empty());
    ladder.entry(DiaryKind::illness, 60 + 24 * 60, "fever, diarrhoea");
    EXPECT_EQ(ladder.found("ill_two_days").size(), 1U);
    EXPECT_TRUE(ladder.found("losing_fluids").empty());
    ladder.entry(DiaryKind::illness, 60 + 31 * 60, "diarrhoea still");
    EXPECT_EQ(ladder.found("losing_fluids").size(), 1U);
}

TEST(DiaryOnTheLadder, an_illness_of_several_days_written_once_counts_each_day) {
    Ladder ladder;
    ladder.takes("metformin");
    ladder.entry(DiaryKind::illness, 60, "flu").until = at_minute(60 + 1440);
    EXPECT_EQ(ladder.found("ill_two_days").size(), 1U);
}

// Told in one message, it is as long as it says.
TEST(DiaryOnTheLadder, how_long_is_counted_from_where_the_words_say) {
    const auto found = [](DiaryKind kind, const char* words, const char* event) {
        Ladder ladder;
        ladder.takes("metformin");
        ladder.entry(kind, 14 * 60, words);
        return ladder.found(event).size();
    };
    for (const char* words :
         {"vomiting for 10 hours", "vomiting for seven hours", "diarrhea all day",
          "loose stools for two days", "had the runs since yesterday", "threw up all night",
          "being sick since 3 am"}) {
        for (const DiaryKind kind :
             {DiaryKind::illness, DiaryKind::symptom, DiaryKind::note, DiaryKind::meal}) {
            EXPECT_EQ(found(kind, words, "losing_fluids"), 1U) << words;
        }
    }
    for (const char* words : {"vomiting for 6 hours", "vomiting", "vomited 7 hours after lunch"}) {
        EXPECT_EQ(found(DiaryKind::illness, words, "losing_fluids"), 0U) << words;
    }
    for (const char* words : {"flu for three days, in bed with fever", "loose stools for two days",
                              "ill since yesterday", "fever since Monday", "sick for 30 hours",
                              "unwell for a couple of days", "third day of cough and fever"}) {
        for (const DiaryKind kind : {DiaryKind::illness, DiaryKind::symptom, DiaryKind::note}) {
            EXPECT_EQ(found(kind, words, "ill_two_days"), 1U) << words;
        }
    }
    for (const char* words :
         {"fever for a day", "fever all night", "flu for 12 hours", "flu since this morning"}) {
        EXPECT_EQ(found(DiaryKind::illness, words, "ill_two_days"), 0U) << words;
    }
    EXPECT_EQ(found(DiaryKind::note, "painters here for three days", "ill_two_days"), 0U);
    EXPECT_EQ(found(DiaryKind::movement, "the runs for two days", "losing_fluids"), 0U);
}

TEST(DiaryOnTheLadder, each_emergency_is_met_in_the_words_people_use) {
    for (const char* words :
         {"Chest pain when walking", "she was CONFUSED", "Can\xE2\x80\x99t keep fluids down",
          "breathing fast", "had a seizure", "can't keep anything down"}) {
        Ladder ladder;
        ladder.takes("metformin");
        ladder.entry(DiaryKind::symptom, 60, words);
        ASSERT_EQ(ladder.found("symptom").size(), 1U) << words;
        EXPECT_EQ(ladder.found("symptom")[0].rung, Rung::emergency_now);
    }
    for (const char* words : {"throwing up", "feeling sick", "tummy ache", "abdominal pain"}) {
        Ladder ladder;
        ladder.takes("dapagliflozin");
        ladder.entry(DiaryKind::note, 60, words);
        EXPECT_EQ(ladder.found("symptom_with_sglt2").size(), 1U) << words;
    }
}

TEST(DiaryOnTheLadder, drowsy_is_an_emergency_beside_very_high_glucose) {
    Ladder ladder;
    ladder.takes("metformin");
    ladder.wear(0, 100, 250);
    ladder.entry(DiaryKind::symptom, 200, "very drowsy");
    EXPECT_TRUE(ladder.found("drowsy_and_very_high").empty());
    Ladder::set(ladder.wears[0], 50, 1, 251);
    ASSERT_EQ(ladder.found("drowsy_and_very_high").size(), 1U);
    EXPECT_EQ(ladder.found("drowsy_and_very_high")[0].rung, Rung::emergency_now);
}

// Safety rule 10, our own rule: 27 mg/dL (1.5 mmol/L).
TEST(ImprovementOnTheLadder, a_weekly_mean_down_by_27_asks_for_a_letter_on_a_risky_medicine) {
    const auto found = [](const char* medicine, int fall) {
        Ladder ladder;
        ladder.takes(medicine);
        Wear& wear = ladder.wear(0, 14 * 288, 180);
        Ladder::set(wear, 7 * 288, 7 * 288, 180 - fall);
        return ladder.found("weekly_mean_down").size();
    };
    EXPECT_EQ(found("gliclazide", 27), 1U);
    EXPECT_EQ(found("gliclazide", 26), 0U);
    EXPECT_EQ(found("metformin", 60), 0U);
}

TEST(ImprovementOnTheLadder, the_same_fall_keeps_its_event_when_more_data_come) {
    const auto events = [](int days) {
        Ladder ladder;
        ladder.takes("gliclazide");
        Wear& wear = ladder.wear(0, days * 288, 180);
        Ladder::set(wear, 9 * 288, static_cast<std::size_t>((days - 9) * 288), 140);
        std::vector<std::string> all;
        for (const Escalation& one : ladder.found("weekly_mean_down")) {
            all.push_back(one.event);
        }
        return all;
    };
    EXPECT_TRUE(events(13).empty());
    ASSERT_EQ(events(14).size(), 1U);  // 40 mg/dL less on five of the seven days: 28.6
    for (const int days : {15, 16, 17, 20, 25}) {
        EXPECT_EQ(events(days), events(14)) << days;
    }
}

TEST(ImprovementOnTheLadder, a_week_of_which_less_than_seventy_percent_was_seen_is_not_compared) {
    const auto found = [](int days_left_out) {
        Ladder ladder;
        ladder.takes("gliclazide");
        ladder.wear(0, 7 * 288, 200);
        ladder.wear((7 + days_left_out) * 1440, (7 - days_left_out) * 288, 140);
        return ladder.found("weekly_mean_down").size();
    };
    EXPECT_EQ(found(2), 1U);  // 71 % seen
    EXPECT_EQ(found(3), 0U);  // 57 %
}

// 5 %: safety rule 10.
TEST(ImprovementOnTheLadder, weight_down_by_five_percent_asks_for_a_letter) {
    const auto found = [](const char* medicine, double kg) {
        Ladder ladder;
        ladder.takes(medicine);
        const CivilDate day{std::chrono::days{20'400}};
        ladder.labs = {{day, "weight", 100, "kg"},
                       {day + std::chrono::days{60}, "Weight", kg, "kg"}};
        return ladder.found("weight_down").size();
    };
    EXPECT_EQ(found("gliclazide", 95), 1U);
    EXPECT_EQ(found("gliclazide", 95.1), 0U);
    EXPECT_EQ(found("metformin", 90), 0U);
    EXPECT_EQ(found("ramipril", 90), 1U);
    EXPECT_EQ(found("Quorvilan", 90), 1U);  // not recognised
}

TEST(ImprovementOnTheLadder, dizziness_on_blood_pressure_tablets_asks_for_a_letter) {
    const auto found = [](const char* medicine) {
        Ladder ladder;
        ladder.takes(medicine);
        ladder.entry(DiaryKind::symptom, 60, "Dizzy when standing up");
        return ladder.found("dizzy").size();
    };
    EXPECT_EQ(found("ramipril 5"), 1U);
    EXPECT_EQ(found("HCTZ 25"), 1U);
    EXPECT_EQ(found("metformin"), 0U);
}

TEST(ImprovementOnTheLadder, a_low_finger_prick_after_a_change_counts) {
    Ladder ladder;
    ladder.takes("gliclazide");
    ladder.prick(60, 69);
    ladder.change_agreed = at_minute(10);
    EXPECT_EQ(ladder.found("low_after_change").size(), 1U);
}

TEST(ImprovementOnTheLadder, any_low_after_a_change_asks_for_a_letter) {
    Ladder ladder;
    ladder.takes("gliclazide");
    Ladder::set(ladder.wear(0, 300), 200, 4, 65);
    EXPECT_TRUE(ladder.found("low_after_change").empty());
    ladder.change_agreed = at_minute(10);
    EXPECT_EQ(ladder.found("low_after_change").size(), 1U);
    ladder.change_agreed = at_minute(5000);
    EXPECT_TRUE(ladder.found("low_after_change").empty());
}

TEST(Escalations, the_highest_rung_leads_then_the_latest) {
    Ladder ladder;
    Ladder::set(ladder.wear(0, 3000), 100, 4, 50);
    Ladder::set(ladder.wears[0], 2000, 4, 50);
    ladder.entry(DiaryKind::ketones, 1).number = 3.2;
    const auto found = ladder.found();
    ASSERT_GE(found.size(), 3U);
    EXPECT_EQ(found[0].rung, Rung::emergency_now);
    EXPECT_EQ(found[1].at, at_minute(10'000));
}

TEST(Escalations, a_very_low_that_goes_on_in_later_data_is_another_event) {
    Ladder before;
    Ladder::set(before.wear(0, 100), 96, 4, 50);
    Ladder after;
    Ladder::set(after.wear(0, 200), 96, 9, 50);
    ASSERT_EQ(before.found("very_low_end_not_seen").size(), 1U);
    EXPECT_TRUE(after.found("very_low_end_not_seen").empty());
    EXPECT_EQ(after.found("very_low").size(), 1U);
}

// Safety rule 6.
TEST(EscalationSentence, an_old_one_shows_its_own_date_first) {
    const ZoneHistory clock(*Zone::named("Europe/Berlin"));
    const Instant at =
        clock.resolve(WallTime{std::chrono::days{20'607}} + std::chrono::minutes{160}).first;
    const Escalation low{Rung::same_day, "very_low@1", at, "47 min below 54 mg/dL", {}};
    EXPECT_EQ(
        escalation_sentence(low, clock, at + std::chrono::days{16}, at + std::chrono::days{16}),
        "Wed 3 June 02:40, 16 days ago, first seen today: 47 min below 54 mg/dL.");
    EXPECT_EQ(
        escalation_sentence(low, clock, at + std::chrono::hours{2}, at + std::chrono::days{3}),
        "Wed 3 June 02:40, 3 days ago: 47 min below 54 mg/dL.");
}

}  // namespace
}  // namespace tracewright
