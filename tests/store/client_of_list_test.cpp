// What the list of clients reads of one. Everybody in here is invented.
#include "store/client_of_list.hpp"

#include "coaching/client_clock.hpp"
#include "store/practice_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

using namespace tracewright;
using ::testing::HasSubstr;

namespace {

constexpr std::int64_t one_day = 86'400;

std::vector<CareToTell> told(PracticeStore& store, std::int64_t client, std::int64_t at) {
    return client_of_list(store, *store.client_line(client), at_second(at))->to_tell;
}

}  // namespace

// Safety rule 8, whatever the age of the last review's days: beyond the 30 days that the list
// reads.
TEST(ClientOfList, long_gaps_without_food_beside_an_sglt2_inhibitor_stand_until_they_are_answered) {
    const Folder folder;
    const auto practice = new_practice(folder.file("p"));
    ClientFacts facts;
    facts.told_type = "Type 2";
    facts.medicines_asked_on = CivilDate{std::chrono::days{20'400}};
    facts.medicines = {{"empagliflozin 10 mg", CivilDate{std::chrono::days{20'000}}, {}}};
    const auto client = *practice->add_client("c1", "Somebody", facts, acting(1));
    BroughtIn file = with_meals(file_of(0, 14 * 288), 4);
    file.diary.back().at += std::chrono::hours{9};
    file.diary.back().written = WallTime{file.diary.back().at.time_since_epoch()};
    ASSERT_TRUE(practice->bring_in(client, file, WhoseFile::this_client, acting(2)));
    for (const std::int64_t day : {15, 60, 400}) {
        const auto found = told(*practice, client, day * one_day);
        ASSERT_EQ(found.size(), 1U) << day;
        EXPECT_THAT(found[0].why, HasSubstr("15 h without food"));
        EXPECT_THAT(found[0].why, HasSubstr("beside an SGLT2 inhibitor"));
        EXPECT_THAT(found[0].next, HasSubstr("tell the prescriber"));
    }
    ClientRecord record = *practice->client(client);
    PrescriberAnswer answer;
    answer.agreed = true;
    answer.by = "Dr Larch";
    answer.on = CivilDate{std::chrono::days{20'600}};
    answer.about = AskedAbout::fasting;
    answer.valid_until = CivilDate{std::chrono::days{21'400}};
    record.facts.prescriber_answers.push_back(answer);
    ASSERT_TRUE(practice->change_client(record, acting(3)));
    EXPECT_TRUE(told(*practice, client, 400 * one_day).empty());
}

// What is read once for two questions is what the store gives for the list's own days, on whatever
// day one looks.
TEST(ClientOfList, holds_the_wears_and_the_diary_of_the_lists_own_days) {
    const Folder folder;
    const auto practice = new_practice(folder.file("p"));
    const auto client = *practice->add_client("c1", "Somebody", {}, acting(1));
    for (const std::int64_t from : {0, 14, 41}) {
        ASSERT_TRUE(practice->bring_in(client, with_meals(file_of(from * one_day, 13 * 288), 50),
                                       WhoseFile::this_client, acting(2)));
    }
    const ClientLine line = *practice->client_line(client);
    const ZoneHistory clock = client_clock(practice->client(client)->facts);
    std::set<std::size_t> numbers;
    for (std::int64_t day = 1; day < 100; day += 3) {
        const Instant as_of = at_second(day * one_day + 40'000);
        const auto listed = client_of_list(*practice, line, as_of);
        ASSERT_TRUE(listed);
        const Interval window = caseload_window(clock, as_of);
        const auto wears = practice->wears(client, window);
        const auto diary = practice->diary(client, window);
        ASSERT_EQ(listed->wears.size(), wears->size()) << day;
        for (std::size_t i = 0; i < wears->size(); ++i) {
            EXPECT_EQ(listed->wears[i].readings, wears->at(i).wear.readings) << day;
            EXPECT_EQ(listed->wears[i].label, wears->at(i).wear.label) << day;
        }
        ASSERT_EQ(listed->diary.size(), diary->size()) << day;
        for (std::size_t i = 0; i < diary->size(); ++i) {
            EXPECT_EQ(listed->diary[i].at, diary->at(i).at) << day;
        }
        numbers.insert(wears->size());
    }
    EXPECT_EQ(numbers, (std::set<std::size_t>{0, 1, 2, 3}));  // the days looked at differ
}
