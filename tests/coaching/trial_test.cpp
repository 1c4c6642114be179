// A trial from plan to answer. Everybody in here is invented.
#include "coaching/trial_plan.hpp"
#include "coaching/trial_reading.hpp"
#include "coaching/trial_report.hpp"

#include "coaching/care_for_tests.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

using namespace tracewright;

namespace {

using std::chrono::days;

// The rise begins with a slope of five minutes: 177.5 of the 180 minutes.
constexpr double first_step = 177.5 / 180;

/// Dinner at 19:00 on each day; glucose stands `rise` above the start for three hours.
void dinner(Care& care, Wear& wear, int day, double rise, double grams = 60) {
    care.meal(care_at(day, 19), grams);
    for (Reading& reading : wear.readings) {
        if (reading.at > care_at(day, 19) && reading.at <= care_at(day, 22)) {
            reading =
                Reading(reading.at, Glucose{rounded_hundredths(110 + rise), GlucoseUnit::mg_per_dl},
                        reading.interval());
        }
    }
}

void walk(Care& care, int day) {
    care.entry(DiaryKind::movement, care_at(day, 19, 30), "walk");
}

ReviewInput input_of(const Care& care) {
    ReviewInput input;
    input.wears = care.wears;
    input.diary = care.diary;
    std::ranges::stable_sort(input.diary, {}, &DiaryEntry::at);
    input.zones = care.clock;
    input.as_of = care.as_of;
    return input;
}

/// Fourteen dinners behind the client, the rise wandering by `sd` mg/dL or so.
Care client(double sd = 12) {
    Care care;
    care.wears.clear();
    Wear& wear = care.wear(-14, 15, 110);
    for (int day = -14; day < 0; ++day) {
        dinner(care, wear, day, 50 + sd * std::sin(day * 2.4) * std::sqrt(2.0));
    }
    return care;
}

TrialWish wish(const char* code = "walk-after-dinner") {
    TrialWish wished;
    wished.made_from = trial_template_called(code);
    wished.seed = 7;
    return wished;
}

TrialPlan planned(const Care& care, const TrialWish& wished) {
    return care.ask(
        [&](const CareInput& input) { return plan_trial(wished, input_of(care), input); });
}

std::string all_of(const TrialPlan& plan) {
    std::string text = plan.refused_because;
    for (const std::string& sentence : plan.sentences) {
        text += " " + sentence;
    }
    return text;
}

/// The trial's dinners as they went: `differences` A less B, one for each pair.
struct Done {
    Care care;
    Trial trial;

    explicit Done(const std::vector<double>& differences, bool with_walks = true,
                  double grams_of_a = 60)
        : care(client()) {
        TrialWish wished = wish();
        wished.pairs = static_cast<int>(differences.size());
        trial = *planned(care, wished).trial;
        const auto from = static_cast<int>((trial.first_day() - care_day).count());
        const auto to = static_cast<int>((trial.last_day() - care_day).count());
        Wear& wear = care.wear(from, to - from + 1, 110);
        for (std::size_t i = 0; i < differences.size(); ++i) {
            const int a = static_cast<int>((trial.blocks[i].day_of_a() - care_day).count());
            const int b = static_cast<int>((trial.blocks[i].day_of_b() - care_day).count());
            dinner(care, wear, a, 50 + differences[i], grams_of_a);
            dinner(care, wear, b, 50);
            if (with_walks) {
                walk(care, a);
            }
        }
        care.as_of = care_at(to + 1, 12);
    }
    TrialReading read(const DoneOn& told = {}) const {
        return read_trial(trial, input_of(care), told);
    }
};

}  // namespace

// What the trial varies can't be kept alike.
TEST(TrialTemplates, ask_for_nothing_to_be_alike_that_differs_by_lot) {
    const TrialTemplate* earlier = trial_template_called("earlier-dinner");
    ASSERT_NE(earlier, nullptr);
    EXPECT_EQ(std::string(earlier->keep_alike).find("same time"), std::string::npos);
    const TrialTemplate* walk = trial_template_called("walk-after-dinner");
    ASSERT_NE(walk, nullptr);
    EXPECT_NE(std::string(walk->keep_alike).find("same time"), std::string::npos);
}

TEST(TrialPlan, five_pairs_are_refused_with_the_smallest_p_and_seven_are_taken) {
    TrialWish wished = wish();
    wished.pairs = 5;
    const TrialPlan five = planned(client(), wished);
    EXPECT_FALSE(five.trial);
    EXPECT_NE(five.refused_because.find("0.0625"), std::string::npos) << five.refused_because;
    wished.pairs = 7;
    const TrialPlan seven = planned(client(), wished);
    ASSERT_TRUE(seven.trial);
    EXPECT_NE(all_of(seven).find("0.0156"), std::string::npos) << all_of(seven);
    EXPECT_EQ(seven.trial->blocks.size(), 7U);
    EXPECT_EQ(seven.trial->seed, 7U);
    EXPECT_EQ(seven.trial->drawn_at, client().as_of);
    EXPECT_TRUE(seven.trial->power);
    wished.draw = Draw::balanced;
    EXPECT_FALSE(planned(client(), wished).trial);
    wished.pairs = 8;
    EXPECT_TRUE(planned(client(), wished).trial);
}

TEST(TrialPlan, tells_the_pairs_needed_from_the_clients_own_dinners) {
    const TrialPlan calm = planned(client(4), wish());
    const TrialPlan noisy = planned(client(12), wish());
    ASSERT_TRUE(calm.length.blocks && calm.trial);
    EXPECT_GT(noisy.length.noise_sd, 2 * calm.length.noise_sd);
    EXPECT_GT(noisy.length.blocks.value_or(99), *calm.length.blocks);
    EXPECT_NE(all_of(calm).find("14 of this client's dinners"), std::string::npos) << all_of(calm);
    EXPECT_NE(all_of(calm).find("Eat the same meal"), std::string::npos);
    EXPECT_NE(all_of(calm).find("Nothing is read before the last day"), std::string::npos);
    EXPECT_EQ(static_cast<int>(calm.trial->blocks.size()), *calm.length.blocks);
    Care none;
    const TrialPlan without = planned(none, wish());
    EXPECT_FALSE(without.trial);
    EXPECT_NE(all_of(without).find("needed to say how many"), std::string::npos) << all_of(without);
}

TEST(TrialPlan, a_closed_gate_makes_no_trial_and_says_nothing_of_how) {
    for (const auto change : {&Cautions::numb_feet_or_wound, &Cautions::chest_symptoms}) {
        Care care = client();
        care.facts.cautions.*change = Answered::yes;
        const TrialPlan plan = planned(care, wish());
        EXPECT_FALSE(plan.gates.empty());
        EXPECT_FALSE(plan.trial);
        EXPECT_TRUE(plan.sentences.empty());
    }
    Care insulin = client();
    insulin.takes("insulin glargine 10 units");
    EXPECT_FALSE(planned(insulin, wish("breakfast-skipped")).trial);
    EXPECT_FALSE(planned(insulin, wish("low-carb-breakfast")).trial);
    Care unasked = client();
    unasked.facts = {};
    for (const TrialTemplate& one : trial_templates()) {
        EXPECT_FALSE(planned(unasked, wish(one.code)).trial) << one.code;
        EXPECT_TRUE(can_be_asked(one.outcome, one.seen_by.value_or(Cause::weekend))) << one.code;
    }
}

TEST(Trial, pairs_like_days_next_to_each_other_and_draws_them_by_the_seed) {
    auto blocks = blocks_from(care_day, 9, 0);  // 16 February 2026 is a Monday
    const auto weekend = [](CivilDate date) {
        const std::chrono::weekday day{std::chrono::sys_days{date.time_since_epoch()}};
        return day == std::chrono::Saturday || day == std::chrono::Sunday;
    };
    std::set<CivilDate> seen;
    for (const TrialBlock& block : blocks) {
        EXPECT_EQ(block.days[1] - block.days[0], days{1});
        EXPECT_EQ(weekend(block.days[0]), weekend(block.days[1]));
        EXPECT_TRUE(seen.insert(block.days[0]).second && seen.insert(block.days[1]).second);
    }
    EXPECT_EQ(blocks[2].days[0], care_day + days{5});  // Friday stands alone
    for (const TrialBlock& block : blocks_from(care_day, 9, 1)) {
        EXPECT_GE(block.days[1] - block.days[0], days{2});
        EXPECT_EQ(weekend(block.days[0]), weekend(block.days[1]));
    }
    draw_arms(blocks, Draw::fair_coins, 11);
    EXPECT_EQ(order_of(blocks), drawn_order(9, Draw::fair_coins, 11));
    EXPECT_EQ(blocks[0].day_of_a(), blocks[0].days[blocks[0].a_first ? 0 : 1]);
}

TEST(TrialReading, seven_pairs_read_by_lot_first_and_as_walked_second) {
    // |sums| of 107 or more out of 117 in all: flip none or only the 5, and their mirror images: 4
    // of 128. By hand.
    const Done done({-20, -15, -10, -25, 5, -30, -12});
    const TrialReading read = done.read();
    ASSERT_TRUE(read.ended);
    EXPECT_EQ(read.as_allotted.pairs, 7);
    EXPECT_NEAR(read.as_allotted.estimate, -107.0 / 7 * first_step, 1e-6);
    EXPECT_EQ(read.as_allotted.at_least, 4U);
    EXPECT_NEAR(read.as_allotted.p, 0.03125, 1e-12);
    EXPECT_EQ(read.finding.answer, Answer::yes);
    EXPECT_NE(read.finding.sentence.find("p 0.0312 by the lot (4 of 128 orders), 7 pairs"),
              std::string::npos)
        << read.finding.sentence;
    EXPECT_FALSE(read.as_done);
    // One evening not walked as allotted: the lot's reading stays, as done leaves that pair out.
    const TrialReading missed = done.read({{done.trial.blocks[4].day_of_a(), ArmDone::b}});
    EXPECT_EQ(missed.as_allotted.p, read.as_allotted.p);
    ASSERT_TRUE(missed.as_done);
    EXPECT_EQ(missed.broken, 1);
    EXPECT_EQ(missed.as_done->pairs, 6);
    EXPECT_NEAR(missed.as_done->estimate, -112.0 / 6 * first_step, 1e-6);
    EXPECT_LT(missed.finding.sentence.find("As allotted"), missed.finding.sentence.find("As done"));
}

TEST(TrialReading, gives_no_verdict_and_no_number_before_the_end) {
    Done done({-20, -15, -10, -25, 5, -30, -12});
    done.care.as_of = care_at(static_cast<int>((done.trial.last_day() - care_day).count()), 23);
    const TrialReading read = done.read();
    EXPECT_FALSE(read.ended);
    EXPECT_EQ(read.finding.answer, Answer::cannot_tell);
    EXPECT_FALSE(read.finding.estimate);
    EXPECT_TRUE(read.days.empty());
    EXPECT_NE(read.finding.sentence.find("nothing is read before"), std::string::npos);
    done.care.as_of = care_at(static_cast<int>((done.trial.last_day() - care_day).count()) + 1, 0);
    EXPECT_TRUE(done.read().ended);
}

TEST(TrialReading, a_lost_pair_is_told_and_five_left_can_not_answer) {
    Done done({-20, -15, -10, -25, -5, -30});
    std::erase_if(done.care.diary, [&](const DiaryEntry& entry) {
        return done.care.clock.date_at(entry.at) == done.trial.blocks[0].days[0] &&
               entry.kind == DiaryKind::meal;
    });
    const TrialReading read = done.read();
    EXPECT_EQ(read.as_allotted.pairs, 5);
    EXPECT_EQ(read.finding.answer, Answer::cannot_tell);
    EXPECT_NE(read.finding.sentence.find("5 pairs: even a perfect split could not go below p = "
                                         "0.0625. Keep the estimate, run 1 more."),
              std::string::npos)
        << read.finding.sentence;
    ASSERT_FALSE(read.finding.caveats.empty());
    EXPECT_NE(read.finding.caveats[0].sentence.find("1 of 6 pairs could not be read"),
              std::string::npos);
}

TEST(TrialReading, arms_kept_badly_or_unlike_in_carbohydrate_can_not_answer) {
    const std::vector<double> differences = {-20, -15, -10, -25, -5, -30, -12};
    const Done done(differences);
    DoneOn broken;
    for (int i = 0; i < 3; ++i) {
        broken[done.trial.blocks[static_cast<std::size_t>(i)].day_of_a()] = ArmDone::b;
    }
    const TrialReading kept_badly = done.read(broken);
    EXPECT_EQ(kept_badly.finding.answer, Answer::cannot_tell);
    EXPECT_NE(kept_badly.finding.sentence.find("11 of 14 days"), std::string::npos)
        << kept_badly.finding.sentence;
    const TrialReading unlike = Done(differences, true, 30).read();
    EXPECT_EQ(unlike.finding.answer, Answer::cannot_tell);
    EXPECT_NE(unlike.finding.sentence.find("carbohydrate"), std::string::npos);
}

// Two pairs leave one degree of freedom: '306 lower to 266 higher' tells nobody anything.
TEST(TrialReading, two_pairs_as_done_are_too_few_for_a_number) {
    const Done done({-20, -15, -10, -25, 5, -30, -12});
    DoneOn told;
    for (std::size_t i = 0; i < 5; ++i) {
        told[done.trial.blocks[i].day_of_a()] = ArmDone::b;
    }
    const TrialReading read = done.read(told);
    ASSERT_TRUE(read.as_done);
    EXPECT_EQ(read.as_done->pairs, 2);
    EXPECT_FALSE(read.as_done->t95);
    EXPECT_NE(read.finding.sentence.find(": 2 pairs, too few to tell a difference by; the lot"),
              std::string::npos)
        << read.finding.sentence;
}

TEST(TrialReading, an_interval_ends_no_further_than_the_outcome_can_go) {
    const Done done({-45, 250, -45, -40, 200, -45, -30});
    const TrialReading read = done.read();
    ASSERT_TRUE(read.as_allotted.interval95 && read.as_allotted.t95);
    const double of_b = 50 * first_step;  // the rise without a walk: it can fall to none
    EXPECT_GE((*read.as_allotted.interval95)[0], -of_b - 1e-6);
    EXPECT_NEAR((*read.as_allotted.t95)[0], -of_b, 1e-6);
}

TEST(TrialReading, small_differences_both_ways_are_none_worth_acting_on) {
    const TrialReading none = Done({1, -2, 2, -1, 1.5, -1.5, 0.5}).read();
    EXPECT_EQ(none.finding.answer, Answer::no_difference_worth_acting_on);
    const TrialReading open = Done({30, -25, 28, -31, 22, -18, 5}).read();
    EXPECT_EQ(open.finding.answer, Answer::cannot_tell);
    EXPECT_NE(open.finding.sentence.find("This trial can't tell"), std::string::npos);
}

TEST(TrialReading, pairs_all_alike_keep_the_sensors_error) {
    const TrialReading read = Done(std::vector<double>(7, -20.0)).read();
    EXPECT_EQ(read.finding.answer, Answer::yes);
    for (const auto& interval : {read.as_allotted.interval95, read.as_allotted.t95}) {
        ASSERT_TRUE(interval);
        EXPECT_LT((*interval)[0], read.as_allotted.estimate - 1);
        EXPECT_GT((*interval)[1], read.as_allotted.estimate + 1);
    }
    const TrialReading none = Done(std::vector<double>(7, 0.0)).read();
    EXPECT_EQ(none.finding.answer, Answer::no_difference_worth_acting_on);
    EXPECT_LT((*none.as_allotted.interval95)[0], (*none.as_allotted.interval95)[1]);
}

TEST(TrialReading, fills_the_items_of_the_published_statement) {
    const Done done({-20, -15, -10, -25, 5, -30, -12});
    const auto items = report_items(done.trial, done.read(), input_of(done.care));
    std::string all;
    for (const ReportItem& item : items) {
        EXPECT_TRUE(item.text.ends_with('.') || item.text.ends_with('?')) << item.text;
        all += item.item + " ";
    }
    for (const char* number : {"1a", "3a", "5", "8", "12", "17"}) {
        EXPECT_NE(all.find(number), std::string::npos);
    }
    EXPECT_NE(items[8].text.find("seed 7"), std::string::npos) << items[8].text;
}

TEST(TrialReading, no_text_lulls_or_blames) {
    for (const auto& differences : {std::vector<double>{-20, -15, -10, -25, 5, -30, -12},
                                    {1, -2, 2, -1, 1.5, -1.5, 0.5},
                                    {30, -25, 28, -31, 22, -18, 5}}) {
        const Done done(differences, false);
        const TrialReading read = done.read();
        std::string all =
            read.finding.sentence + read.finding.client_sentence + read.finding.next.sentence;
        for (const Caveat& caveat : read.finding.caveats) {
            all += caveat.sentence;
        }
        all += all_of(planned(client(), wish()));
        for (const char* word : {"because", "caused", "cured", "safe", " fine", "no lows", "nan",
                                 "  ", "..", "good food", "bad food"}) {
            EXPECT_EQ(all.find(word), std::string::npos) << word << " in: " << all;
        }
    }
}
