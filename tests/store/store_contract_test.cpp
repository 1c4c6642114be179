// What every backend of the practice must keep. A backend is added at the end.
#include "store/store_contract.hpp"

#include <gmock/gmock.h>

namespace tracewright {
namespace {

constexpr int fortnight = 14 * 288;

TEST_P(StoreContract, what_was_brought_in_comes_back) {
    const BroughtIn file = with_meals(file_of(0, fortnight), 56);
    brought(file);
    const auto wears = store->wears(client);
    ASSERT_EQ(wears->size(), 1U);
    EXPECT_EQ(wears->front().wear.readings, file.readings);
    EXPECT_EQ(wears->front().wear.label, "wear 1");
    const auto diary = store->diary(client);
    ASSERT_EQ(diary->size(), 56U);
    EXPECT_EQ(diary->at(3).text, "porridge of Tansy 3");
    EXPECT_EQ(diary->at(3).carbohydrate_g->value, 45.5);
    EXPECT_EQ(diary->at(3).at, file.diary[3].at);
}

TEST_P(StoreContract, a_window_gives_its_readings_only) {
    brought(file_of(0, fortnight));
    const Interval window{at_second(86'400), at_second(2 * 86'400)};
    const auto wears = store->wears(client, window);
    ASSERT_EQ(wears->size(), 1U);
    EXPECT_EQ(wears->front().wear.readings.size(), 288U);
    for (const Reading& reading : wears->front().wear.readings) {
        EXPECT_TRUE(window.contains(reading.at));
    }
    EXPECT_TRUE(store->wears(client, Interval{at_second(-10), at_second(0)})->empty());
}

// interchange 4.4 row 16; T1.
TEST_P(StoreContract, the_same_file_again_stores_nothing) {
    const BroughtIn file = with_meals(file_of(0, fortnight), 56);
    brought(file);
    const std::string before = exported();
    const auto again = brought(file);
    EXPECT_EQ(again.import, 0);
    EXPECT_EQ(again.plan.rows_stored, 0U);
    EXPECT_EQ(again.plan.rows_duplicate, file.rows_stored);
    EXPECT_EQ(exported(), before);
}

TEST_P(StoreContract, a_longer_file_of_one_wear_adds_what_is_new_to_it) {
    brought(file_of(0, 1000));
    const auto more = brought(file_of(0, 1500));
    EXPECT_EQ(more.plan.rows_stored, 500U);
    EXPECT_EQ(more.plan.rows_duplicate, 1000U);
    ASSERT_EQ(store->wears(client)->size(), 1U);
    EXPECT_EQ(store->wears(client)->front().wear.readings, file_of(0, 1500).readings);
}

TEST_P(StoreContract, files_of_one_wear_join_whichever_comes_first) {
    brought(file_of(1000 * 300, 500));
    brought(file_of(0, 1000));
    const auto wears = store->wears(client);
    ASSERT_EQ(wears->size(), 1U);
    EXPECT_EQ(wears->front().wear.readings, file_of(0, 1500).readings);
    EXPECT_EQ(wears->front().wear.start, at_second(0));
}

TEST_P(StoreContract, a_day_of_silence_begins_another_wear) {
    brought(file_of(0, 300));
    brought(file_of(300 * 300 + 24 * 3600, 300));
    EXPECT_EQ(store->wears(client)->size(), 2U);
}

// interchange 4.4 row 17: what is stored stays, the other is held, neither is dropped.
TEST_P(StoreContract, one_reading_that_differs_is_held_beside_what_is_there) {
    brought(file_of(0, fortnight));
    BroughtIn file = file_of(0, fortnight);
    file.readings[100] = Reading(file.readings[100].at, Glucose{22'200, GlucoseUnit::mg_per_dl},
                                 std::chrono::seconds{300});
    const auto outcome = brought(file);
    EXPECT_FALSE(outcome.plan.question);
    EXPECT_EQ(outcome.plan.rows_conflict, 1U);
    EXPECT_EQ(store->wears(client)->front().wear.readings, file_of(0, fortnight).readings);
    const auto holdings = store->holdings(client, acting());
    ASSERT_EQ(holdings->held.size(), 1U);
    EXPECT_EQ(holdings->held.front().value.hundredths, 22'200);
}

// T2; interchange 4.4 row 44.
TEST_P(StoreContract, another_persons_file_is_held_whole_and_asked_about) {
    brought(file_of(0, fortnight));
    const std::string before = exported();
    for (const int shift : {0, 130}) {  // at the same moments, and at moments between
        const auto outcome = brought(file_of(shift, fortnight, 300, 1));
        ASSERT_TRUE(outcome.plan.question) << shift;
        EXPECT_NE(outcome.plan.question->find("Is this this client's file?"), std::string::npos);
        EXPECT_EQ(outcome.import, 0);
        EXPECT_EQ(outcome.plan.rows_conflict, static_cast<std::uint64_t>(fortnight));
        EXPECT_EQ(exported(), before);
    }
}

TEST_P(StoreContract, a_second_sensor_that_agrees_is_kept_apart) {
    brought(file_of(0, fortnight));
    const auto outcome = brought(file_of(130, fortnight / 3, 900, 0, 1.08));
    EXPECT_FALSE(outcome.plan.question) << *outcome.plan.question;
    ASSERT_TRUE(outcome.plan.agreement);
    EXPECT_NEAR(outcome.plan.agreement->mean_relative_difference, 0.077, 0.01);
    EXPECT_GT(outcome.plan.agreement->correlation, 0.95);
    EXPECT_EQ(store->wears(client)->size(), 2U);
}

TEST_P(StoreContract, a_file_confirmed_as_this_clients_is_stored) {
    brought(file_of(0, fortnight));
    const auto outcome = brought(file_of(130, fortnight, 300, 1), WhoseFile::this_client);
    EXPECT_FALSE(outcome.plan.question);
    EXPECT_EQ(store->wears(client)->size(), 2U);
}

// The same levels in the other unit, rounded as the trade rounds, are the same readings.
TEST_P(StoreContract, the_same_readings_told_in_the_other_unit_are_duplicates) {
    brought(file_of(0, fortnight));
    BroughtIn file = file_of(0, fortnight);
    for (Reading& reading : file.readings) {
        const double mmol = std::round(reading.value().in(GlucoseUnit::mmol_per_l)*10) / 10;
        reading = Reading(reading.at, Glucose{rounded_hundredths(mmol), GlucoseUnit::mmol_per_l},
                          reading.interval());
    }
    EXPECT_EQ(brought(file).plan.rows_duplicate, static_cast<std::uint64_t>(fortnight));
}

TEST_P(StoreContract, a_preview_stores_nothing) {
    const std::string before = exported();
    const auto plan = store->preview(client, with_meals(file_of(0, 500), 3), WhoseFile::not_asked);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->rows_stored, 503U);
    EXPECT_EQ(exported(), before);
}

TEST_P(StoreContract, undo_goes_back_import_by_import_to_the_same_export) {
    std::vector<std::string> states{exported()};
    brought(with_meals(file_of(0, 1000), 10));
    states.push_back(exported());
    brought(with_meals(file_of(700 * 300, 800), 12));  // overlaps, adds, meets new meals
    states.push_back(exported());
    brought(file_of(-2000 * 300, 1999));
    states.push_back(exported());
    brought(file_of(130, 500, 900, 0, 1.05));
    states.push_back(exported());
    for (auto state = states.rbegin() + 1; state != states.rend(); ++state) {
        ASSERT_TRUE(store->undo(client, acting(100)));
        EXPECT_EQ(exported(), *state);
    }
    const auto nothing_left = store->undo(client, acting(100));
    ASSERT_FALSE(nothing_left);
    EXPECT_EQ(nothing_left.error().kind, StoreErrorKind::not_found);
    EXPECT_TRUE(store->faults()->empty());
}

TEST_P(StoreContract, what_was_undone_can_be_brought_in_again) {
    brought(with_meals(file_of(0, 1000), 10));
    const std::size_t before = readings();
    ASSERT_TRUE(store->undo(client, acting()));
    EXPECT_EQ(readings(), 0U);
    EXPECT_EQ(brought(with_meals(file_of(0, 1000), 10)).plan.rows_stored, 1010U);
    EXPECT_EQ(readings(), before);
}

TEST_P(StoreContract, undo_is_refused_with_a_list_where_later_things_rest_on_it) {
    brought(file_of(0, 1000));
    const auto wear = store->wears(client)->front().id;
    ASSERT_TRUE(store->change_wear(client, wear, WearEnd::fell_off, {}, acting(70)));
    ASSERT_TRUE(store->keep_finding(client, {at_second(0), at_second(3600)}, "{}", acting(80)));
    const auto refused = store->undo(client, acting(90));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().kind, StoreErrorKind::refused);
    EXPECT_NE(refused.error().sentence.find("changed by hand"), std::string::npos);
    EXPECT_NE(refused.error().sentence.find("kept finding"), std::string::npos);
    EXPECT_EQ(readings(), 1000U);
}

TEST_P(StoreContract, how_a_sensor_sat_is_told_again_forgotten_and_holds_back_an_undo) {
    brought(file_of(0, 1000));
    const auto wear = store->wears(client)->front().id;
    EXPECT_FALSE(store->wears(client)->front().fixing.told());
    ASSERT_TRUE(store->tell_fixing(client, wear, {true, "left arm"}, acting(70)));
    EXPECT_EQ(store->wears(client)->front().fixing, (WearFixing{true, "left arm"}));
    ASSERT_TRUE(store->tell_fixing(client, wear, {{}, "belly"}, acting(71)));
    EXPECT_EQ(store->wears(client)->front().fixing, (WearFixing{{}, "belly"}));
    EXPECT_EQ(store->undo(client, acting(90)).error().kind, StoreErrorKind::refused);
    ASSERT_TRUE(store->tell_fixing(client, wear, {}, acting(72)));
    EXPECT_FALSE(store->wears(client)->front().fixing.told());
    EXPECT_EQ(store->tell_fixing(client, wear + 1, {true, ""}, acting(73)).error().kind,
              StoreErrorKind::not_found);
    EXPECT_TRUE(store->faults()->empty());
}

TEST_P(StoreContract, audit_and_acknowledgements_stay_when_an_import_is_undone) {
    brought(file_of(0, 1000));
    ASSERT_TRUE(store->put_escalations(client, {{0, "very-low:1", {}, "{}", {}}}, acting(61)));
    const auto escalation = store->escalations(client)->front().id;
    ASSERT_TRUE(store->acknowledge(client, escalation, "Sorrel", "rang the client", acting(62)));
    ASSERT_TRUE(store->undo(client, acting(63)));
    const auto escalations = store->escalations(client);
    ASSERT_EQ(escalations->size(), 1U);
    ASSERT_EQ(escalations->front().answers.size(), 1U);
    EXPECT_EQ(escalations->front().answers.front().done, "rang the client");
    std::vector<std::string> deeds;
    const auto lines = store->audit(client);
    for (const AuditLine& line : *lines) {
        deeds.push_back(line.deed);
    }
    EXPECT_THAT(deeds, ::testing::IsSupersetOf({"client_added", "import_stored",
                                                "escalation_acknowledged", "import_undone"}));
}

TEST_P(StoreContract, an_escalation_is_one_record_however_often_it_is_seen) {
    ASSERT_TRUE(
        store->put_escalations(client, {{0, "very-low:1", {}, "{\"minutes\":20}", {}}}, acting(1)));
    ASSERT_TRUE(store->put_escalations(client, {{0, "very-low:1", {}, "{\"minutes\":25}", {}}},
                                       acting(500)));
    const auto escalations = store->escalations(client);
    ASSERT_EQ(escalations->size(), 1U);
    EXPECT_EQ(escalations->front().first_seen, at_second(1));
    EXPECT_EQ(escalations->front().document, "{\"minutes\":25}");
}

TEST_P(StoreContract, an_answer_needs_a_name_and_what_was_done) {
    ASSERT_TRUE(store->put_escalations(client, {{0, "e", {}, "{}", {}}}, acting(1)));
    const auto id = store->escalations(client)->front().id;
    EXPECT_EQ(store->acknowledge(client, id, "", "rang", acting()).error().kind,
              StoreErrorKind::refused);
    EXPECT_EQ(store->acknowledge(client, id, "Sorrel", "", acting()).error().kind,
              StoreErrorKind::refused);
    EXPECT_EQ(store->acknowledge(client, id, " ", "rang", acting()).error().kind,
              StoreErrorKind::refused);
    EXPECT_EQ(store->acknowledge(client, id, "Sorrel", " - ", acting()).error().kind,
              StoreErrorKind::refused);
    EXPECT_EQ(store->acknowledge(client, id + 1, "Sorrel", "rang", acting()).error().kind,
              StoreErrorKind::not_found);
}

TEST_P(StoreContract, clients_are_called_by_handle_or_by_a_name_that_one_alone_bears) {
    const auto second = store->add_client("c2", "Yarrow (invented)", facts(), acting());
    ASSERT_TRUE(store->add_client("c3", "Yarrow (invented)", facts(), acting()));
    EXPECT_EQ(store->client_called("c2"), *second);
    EXPECT_EQ(store->client_called("tansy (INVENTED)"), client);
    EXPECT_NE(store->client_called("Yarrow (invented)").error().sentence.find("several"),
              std::string::npos);
    EXPECT_EQ(store->client_called("nobody").error().kind, StoreErrorKind::not_found);
    EXPECT_EQ(store->clients()->size(), 3U);
}

TEST_P(StoreContract, one_clients_line_is_the_one_in_the_list) {
    ASSERT_TRUE(store->add_client("c2", "Yarrow (invented)", facts(), acting()));
    ASSERT_TRUE(store->bring_in(client, file_of(0, 300), WhoseFile::not_asked, acting()));
    const auto all = store->clients();
    for (const ClientLine& listed : *all) {
        const auto line = store->client_line(listed.id);
        ASSERT_TRUE(line) << line.error().sentence;
        EXPECT_EQ(line->id, listed.id);
        EXPECT_EQ(line->handle, listed.handle);
        EXPECT_EQ(line->name, listed.name);
        EXPECT_EQ(line->last_reading, listed.last_reading);
        EXPECT_EQ(line->last_reading.has_value(), listed.id == client);
    }
    EXPECT_EQ(store->client_line(77).error().kind, StoreErrorKind::not_found);
}

TEST_P(StoreContract, a_handle_that_is_taken_or_tells_the_name_is_refused) {
    EXPECT_EQ(store->add_client("c1", "X (invented)", facts(), acting()).error().kind,
              StoreErrorKind::exists);
    for (const char* handle : {"tansy", "my-tansy-1", "", "C7", "a b"}) {
        EXPECT_EQ(store->add_client(handle, "Tansy (invented)", facts(), acting()).error().kind,
                  StoreErrorKind::refused)
            << handle;
    }
}

TEST_P(StoreContract, of_two_changes_made_on_one_state_the_second_is_refused) {
    auto first = *store->client(client);
    auto second = *store->client(client);
    first.facts.why_they_came = "A";
    second.facts.why_they_came = "B";
    ASSERT_TRUE(store->change_client(first, acting()));
    EXPECT_EQ(store->change_client(second, acting()).error().kind,
              StoreErrorKind::changed_meanwhile);
    EXPECT_EQ(store->client(client)->facts.why_they_came, "A");
}

TEST_P(StoreContract, who_may_only_look_changes_nothing) {
    const auto reader = store->add_coach({"r1", "Sage (invented)", CoachRole::reader}, acting());
    const Acting looking{*reader, at_second(5)};
    EXPECT_EQ(store->add_note(client, "x", looking).error().kind, StoreErrorKind::refused);
    EXPECT_EQ(store->bring_in(client, file_of(0, 3), WhoseFile::not_asked, looking).error().kind,
              StoreErrorKind::refused);
    const auto plain = store->add_coach({"k1", "Mint (invented)", CoachRole::coach}, acting());
    const Acting coaching{*plain, at_second(5)};
    EXPECT_TRUE(store->add_note(client, "x", coaching));
    EXPECT_EQ(store->erase_client(client, coaching).error().kind, StoreErrorKind::refused);
    EXPECT_EQ(store->add_note(client, "x", {99, at_second(5)}).error().kind,
              StoreErrorKind::refused);
}

TEST_P(StoreContract, a_coach_has_no_licence_until_it_is_told_and_the_last_owner_stays) {
    auto coaches = *store->coaches();
    ASSERT_EQ(coaches.size(), 1U);
    EXPECT_EQ(coaches.front().coach.licence, Licence::none);
    Coach owner = coaches.front().coach;
    owner.left = true;
    EXPECT_EQ(store->change_coach(coaches.front().id, owner, acting()).error().kind,
              StoreErrorKind::refused);
}

TEST_P(StoreContract, promises_are_open_until_kept) {
    const CivilDate due{std::chrono::days{20'600}};
    const auto promise = store->add_promise(client, "the recipe list", due, acting(3));
    ASSERT_TRUE(promise);
    EXPECT_FALSE(store->promises(client)->front().kept_at);
    EXPECT_EQ(store->promises(client)->front().due, due);
    ASSERT_TRUE(store->keep_promise(client, *promise, acting(9)));
    EXPECT_EQ(store->promises(client)->front().kept_at, at_second(9));
    EXPECT_EQ(store->keep_promise(client, *promise, acting(10)).error().kind,
              StoreErrorKind::not_found);
}

TEST_P(StoreContract, a_clients_foods_come_back_and_a_second_one_so_called_takes_its_place) {
    FoodFacts rye;
    rye.name = "rye loaf";
    rye.portion = "1 slice";
    rye.portion_g = 45;
    rye.carbohydrate_g = 40.5;
    rye.basis = CarbohydrateBasis::available;
    rye.source = "the client's";
    ASSERT_TRUE(store->keep_food(client, rye, acting(1)));
    const auto toast = store->keep_food(client, FoodCorrection{"toast", rye}, acting(2));
    Recipe stew{"lentil stew", 4, {{"lentils, boiled", 400}}, rye};
    stew.facts.name = stew.name;
    ASSERT_TRUE(store->keep_food(client, stew, acting(3)));
    rye.portion_g = 50;
    EXPECT_EQ(*store->keep_food(client, FoodCorrection{"Toast", rye}, acting(4)), *toast);
    const auto foods = store->foods(client);
    ASSERT_EQ(foods->size(), 3U);
    EXPECT_FALSE(std::get<FoodFacts>(foods->at(0).food).fibre_g);
    EXPECT_EQ(std::get<FoodFacts>(foods->at(0).food).carbohydrate_g, 40.5);
    EXPECT_EQ(std::get<FoodFacts>(foods->at(0).food).basis, CarbohydrateBasis::available);
    EXPECT_EQ(std::get<FoodCorrection>(foods->at(1).food).said, "Toast");
    EXPECT_EQ(std::get<FoodCorrection>(foods->at(1).food).food.portion_g, 50);
    EXPECT_EQ(foods->at(1).at, at_second(4));
    EXPECT_EQ(std::get<Recipe>(foods->at(2).food).parts[0].grams, 400);
    EXPECT_THAT(exported(), ::testing::HasSubstr("rye loaf"));
    ASSERT_TRUE(store->forget_food(client, *toast, acting(5)));
    EXPECT_EQ(store->foods(client)->size(), 2U);
    EXPECT_EQ(store->forget_food(client, *toast, acting(6)).error().kind,
              StoreErrorKind::not_found);
    EXPECT_TRUE(store->faults()->empty());
}

// T25.
TEST_P(StoreContract, an_erased_client_leaves_the_line_that_one_was_erased) {
    brought(with_meals(file_of(0, 1000), 10));
    ASSERT_TRUE(store->add_note(client, "a note", acting()));
    ASSERT_TRUE(store->erase_client(client, acting(77)));
    EXPECT_TRUE(store->clients()->empty());
    EXPECT_EQ(store->wears(client).error().kind, StoreErrorKind::not_found);
    const auto lines = store->audit(std::nullopt);
    EXPECT_EQ(lines->back().deed, "client_erased");
    EXPECT_EQ(lines->back().at, at_second(77));
    for (const AuditLine& line : *lines) {
        EXPECT_FALSE(line.client) << line.deed;
    }
    EXPECT_TRUE(store->faults()->empty());
}

TEST_P(StoreContract, errors_bear_no_name_and_no_note) {
    const auto second = store->add_client("c2", "Meadowsweet (invented)", facts(), acting());
    const std::string errors =
        store->add_client("meadowsweet", "Meadowsweet (invented)", facts(), acting())
            .error()
            .sentence +
        store->client_called("Meadowsweet").error().sentence +
        store->keep_promise(*second, 5, acting()).error().sentence;
    EXPECT_EQ(errors.find("eadowsweet"), std::string::npos) << errors;
}

INSTANTIATE_TEST_SUITE_P(Backends, StoreContract,
                         ::testing::Values(Backend{"sqlite",
                                                   [](const Folder& folder) {
                                                       return std::unique_ptr<PracticeStore>(
                                                           new_practice(folder.file("practice")));
                                                   }}),
                         [](const auto& backend) { return std::string(backend.param.name); });

}  // namespace
}  // namespace tracewright
