// What every backend must keep of trials and of the practice's reminder rules. The backends stand
// at the end of store_contract_test.cpp.
#include "store/store_contract.hpp"
#include "store/trial_document.hpp"

#include <gmock/gmock.h>

namespace tracewright {
namespace {

Trial trial_for_tests() {
    Trial trial;
    trial.code = "walk-after-dinner";
    trial.question = "Does a walk of Tansy change the rise?";
    trial.a = "walk";
    trial.b = "no walk";
    trial.seed = 7;
    trial.drawn_at = at_second(0);
    trial.worth = 10.8;
    trial.noise_sd = 12;
    trial.power = 0.81;
    trial.blocks = blocks_from(CivilDate{std::chrono::days{20'520}}, 7, 0);
    draw_arms(trial.blocks, trial.draw, trial.seed);
    return trial;
}

TEST_P(StoreContract, a_trial_comes_back_as_it_was_drawn_with_what_was_told_of_its_days) {
    const std::string document = trial_document(trial_for_tests(), -1);
    const auto number = store->keep_trial(client, document, acting(10));
    ASSERT_TRUE(number) << number.error().sentence;
    const CivilDate day = trial_for_tests().first_day();
    ASSERT_TRUE(store->tell_trial_day(client, *number, day, "b", acting(20)));
    ASSERT_TRUE(store->tell_trial_day(client, *number, day, "neither", acting(30)));
    const auto trials = store->trials(client);
    ASSERT_EQ(trials->size(), 1U);
    EXPECT_EQ(trials->at(0).document, document);
    EXPECT_EQ(trials->at(0).planned_at, at_second(10));
    ASSERT_EQ(trials->at(0).days.size(), 2U);  // the last telling counts, the first stays
    EXPECT_EQ(trials->at(0).days[1].done, "neither");
    EXPECT_EQ(trials->at(0).days[1].day, day);
    EXPECT_FALSE(trials->at(0).stopped);
    EXPECT_NE(exported().find("walk-after-dinner"), std::string::npos);

    for (const char* nothing : {"", " ", "..."}) {
        EXPECT_EQ(store->stop_trial(client, *number, nothing, acting(40)).error().kind,
                  StoreErrorKind::refused);
    }
    ASSERT_TRUE(store->stop_trial(client, *number, "a cold", acting(40)));
    EXPECT_EQ(store->trials(client)->at(0).stopped->why, "a cold");
    EXPECT_EQ(store->tell_trial_day(client, *number, day, "a", acting(50)).error().kind,
              StoreErrorKind::not_found);
    EXPECT_EQ(store->stop_trial(client, *number, "again", acting(50)).error().kind,
              StoreErrorKind::not_found);
}

TEST_P(StoreContract, what_is_no_trial_or_none_of_its_days_is_refused) {
    std::string changed = trial_document(trial_for_tests(), -1);
    const auto first = changed.find("\"a_first\":true");
    ASSERT_NE(first, std::string::npos);
    changed.replace(first, 14, "\"a_first\":false");
    for (const std::string& document : {std::string("{}"), std::string("x"), changed}) {
        const auto kept = store->keep_trial(client, document, acting());
        ASSERT_FALSE(kept);
        EXPECT_EQ(kept.error().kind, StoreErrorKind::refused);
    }
    const auto number = store->keep_trial(client, trial_document(trial_for_tests(), -1), acting());
    const CivilDate day = trial_for_tests().first_day();
    EXPECT_EQ(store->tell_trial_day(client, *number, day - std::chrono::days{1}, "a", acting())
                  .error()
                  .kind,
              StoreErrorKind::refused);
    EXPECT_EQ(store->tell_trial_day(client, *number, day, "c", acting()).error().kind,
              StoreErrorKind::refused);
    EXPECT_EQ(store->tell_trial_day(client, *number + 1, day, "a", acting()).error().kind,
              StoreErrorKind::not_found);
    EXPECT_TRUE(store->trials(client)->at(0).days.empty());
}

TEST_P(StoreContract, an_erased_clients_trials_are_gone) {
    const auto number = store->keep_trial(client, trial_document(trial_for_tests(), -1), acting());
    ASSERT_TRUE(
        store->tell_trial_day(client, *number, trial_for_tests().first_day(), "a", acting()));
    ASSERT_TRUE(store->erase_client(client, acting()));
    const std::int64_t other = *store->add_client("c2", "Birch (invented)", facts(), acting());
    EXPECT_TRUE(store->trials(other)->empty());
    EXPECT_FALSE(store->trials(client));
    EXPECT_TRUE(store->faults()->empty());
}

TEST_P(StoreContract, how_is_written_is_the_practices_own_and_goes_with_every_client) {
    EXPECT_EQ(*store->writing(), PracticeWriting{});
    EXPECT_EQ(store->client(client)->facts.writing, WayOfWriting{});
    const PracticeWriting american{{true, true}, GlucoseUnit::mg_per_dl};
    ASSERT_TRUE(store->set_writing(american, acting()));
    EXPECT_EQ(*store->writing(), american);
    EXPECT_EQ(store->client(client)->facts.writing, american.way);
    EXPECT_EQ(store->holdings(client, acting())->client.facts.writing, american.way);
    // No fact of the client: it is not kept with them, nor does it change their unit.
    auto record = *store->client(client);
    record.facts.writing = {};
    ASSERT_TRUE(store->change_client(record, acting()));
    EXPECT_EQ(store->client(client)->facts.writing, american.way);
    EXPECT_EQ(store->client(client)->facts.unit, facts().unit);
    EXPECT_EQ(store->audit(std::nullopt)->at(2).deed, "writing_changed");
}

TEST_P(StoreContract, of_wears_at_once_one_at_most_is_chosen_until_it_is_taken_back) {
    brought(file_of(0, 500));
    brought(file_of(100, 200, 900, 1), WhoseFile::this_client);
    brought(file_of(3'000'000, 500));
    const auto chosen = [&] {
        std::vector<std::string> labels;
        const auto wears = store->wears(client);
        for (const StoredWear& one : *wears) {
            if (one.wear.chosen) {
                labels.push_back(one.wear.label);
            }
        }
        return labels;
    };
    const auto wears = store->wears(client);
    ASSERT_EQ(wears->size(), 3U);
    EXPECT_TRUE(chosen().empty());
    const std::string before = exported();
    ASSERT_TRUE(store->choose_wear(client, wears->at(1).id, true, acting(90)));
    ASSERT_TRUE(store->choose_wear(client, wears->at(2).id, true, acting(91)));
    EXPECT_EQ(chosen(), (std::vector<std::string>{"wear 2", "wear 3"}));
    EXPECT_NE(exported(), before);
    ASSERT_TRUE(store->choose_wear(client, wears->at(0).id, true, acting(92)));
    EXPECT_EQ(chosen(), (std::vector<std::string>{"wear 1", "wear 3"}));
    ASSERT_TRUE(store->choose_wear(client, wears->at(0).id, false, acting(93)));
    ASSERT_TRUE(store->choose_wear(client, wears->at(2).id, false, acting(94)));
    EXPECT_EQ(store->audit(client)->back().deed, "wear_choice_taken_back");
    EXPECT_EQ(exported(), before);
    EXPECT_EQ(store->choose_wear(client, 999, true, acting()).error().kind,
              StoreErrorKind::not_found);
    EXPECT_TRUE(store->faults()->empty());
}

TEST_P(StoreContract, reminder_rules_are_the_practices_own) {
    EXPECT_EQ(store->reminder_rules()->quiet_from, std::chrono::hours{21});
    ReminderRules rules;
    rules.quiet_from = std::chrono::minutes{20 * 60 + 30};
    rules.most_a_day = 1;
    rules.off = {"laboratory"};
    ASSERT_TRUE(store->set_reminder_rules(rules, acting()));
    const auto kept = store->reminder_rules();
    EXPECT_EQ(kept->quiet_from, rules.quiet_from);
    EXPECT_EQ(kept->most_a_day, 1);
    EXPECT_EQ(kept->off, rules.off);
    rules.off = {"very_low"};  // what is unsafe is no kind that could be switched off
    EXPECT_EQ(store->set_reminder_rules(rules, acting()).error().kind, StoreErrorKind::refused);
}

}  // namespace
}  // namespace tracewright
