#include "coaching/caseload.hpp"

#include "trace/readings_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

namespace {

const Instant now = midnight + std::chrono::days{20} + 9h;

Wear worn(Instant from, Instant to) {
    Wear wear;
    wear.start = from;
    wear.interval = 15min;
    for (Instant at = from; at < to; at += 15min) {
        wear.readings.emplace_back(at, mg(120), 15min);
    }
    return wear;
}

// A sensor put on five days ago that still reports: nothing to do.
CaseloadClient client(const std::string& handle) {
    CaseloadClient made;
    made.handle = handle;
    made.name = handle + " (invented)";
    made.wears = {worn(now - std::chrono::days{5}, now)};
    made.last_reading = made.wears.front().readings.back().at;
    return made;
}

StandingEscalation escalated(Rung rung, Instant at) {
    StandingEscalation one;
    one.escalation = {rung, "very_low@x", at, "47 min below 54 mg/dL", "Tell the prescriber."};
    one.first_seen = at;
    return one;
}

CivilDate today() {
    return CivilDate{std::chrono::floor<std::chrono::days>(now).time_since_epoch()};
}

std::vector<std::string> order(const std::vector<CaseloadLine>& lines) {
    std::vector<std::string> handles;
    for (const CaseloadLine& line : lines) {
        handles.push_back(line.handle);
    }
    return handles;
}

}  // namespace

TEST(Caseload, unsafe_promised_due_ending_stuck_nothing) {
    CaseloadClient nothing = client("a");
    CaseloadClient stuck = client("b");
    stuck.wears = {worn(now - std::chrono::days{5}, now - 25h)};
    CaseloadClient ending = client("c");
    ending.wears = {worn(now - std::chrono::days{12} - 10h, now)};
    CaseloadClient due = client("d");
    due.facts.agreed_change = AgreedChange{"walk after dinner", {}, today()};
    CaseloadClient promised = client("e");
    promised.promises = {{today(), "the recipe list"}};
    CaseloadClient unsafe = client("f");
    unsafe.escalations = {escalated(Rung::this_week, now - std::chrono::days{9})};
    const std::vector all = {nothing, stuck, ending, due, promised, unsafe};
    const auto lines = caseload(all, now);
    EXPECT_EQ(order(lines), (std::vector<std::string>{"f", "e", "d", "c", "b", "a"}));
    EXPECT_THAT(lines[0].first().why, HasSubstr("47 min below 54 mg/dL"));
    EXPECT_EQ(lines[0].first().next, "Tell the prescriber.");
    EXPECT_THAT(lines[5].first().why, HasSubstr("Nothing due. The last reading was"));
    for (const CaseloadLine& line : lines) {
        EXPECT_FALSE(line.first().next.empty() && line.first().kind != NeedKind::nothing_due);
    }
}

TEST(Caseload, an_emergency_stands_before_a_later_same_day_one_and_of_one_rung_the_latest_first) {
    CaseloadClient a = client("a");
    a.escalations = {escalated(Rung::same_day, now - 2h)};
    CaseloadClient b = client("b");
    b.escalations = {escalated(Rung::same_day, now - 1h)};
    CaseloadClient c = client("c");
    c.escalations = {escalated(Rung::this_week, now - 1h),
                     escalated(Rung::emergency_now, now - std::chrono::days{3})};
    const auto lines = caseload(std::vector{a, b, c}, now);
    EXPECT_EQ(order(lines), (std::vector<std::string>{"c", "b", "a"}));
    EXPECT_THAT(lines[0].first().why, HasSubstr("1 more not acknowledged"));
}

TEST(Caseload, tells_that_consent_was_withdrawn) {
    CaseloadClient one = client("a");
    one.facts.consent.given_on = today() - std::chrono::days{50};
    one.facts.consent.until = today() + std::chrono::days{3};
    EXPECT_THAT(caseload(std::vector{one}, now)[0].first().why, HasSubstr("Consent ends on"));
    one.facts.consent.withdrawn_on = today();
    const Need need = caseload(std::vector{one}, now)[0].first();
    EXPECT_EQ(need.kind, NeedKind::due);
    EXPECT_THAT(need.why, HasSubstr("Consent was withdrawn on"));
    EXPECT_THAT(need.next, HasSubstr("Bring nothing more in"));
}

// Safety rule 6: old data never reads as calm.
TEST(Caseload, nothing_due_needs_young_data_or_no_wear_on) {
    CaseloadClient silent = client("a");
    silent.wears = {worn(now - std::chrono::days{5}, now - 24h - 15min)};
    EXPECT_EQ(caseload(std::vector{silent}, now)[0].first().kind, NeedKind::stuck);
    silent.wears = {worn(now - std::chrono::days{5}, now - 23h)};
    EXPECT_EQ(caseload(std::vector{silent}, now)[0].first().kind, NeedKind::nothing_due);
    silent.wears[0].end = WearEnd::fell_off;  // off, and not looked at yet
    EXPECT_EQ(caseload(std::vector{silent}, now)[0].first().kind, NeedKind::ending);
    silent.last_review = now;
    EXPECT_EQ(caseload(std::vector{silent}, now)[0].first().kind, NeedKind::nothing_due);
    // Looked at before the file came: nobody has seen what is in it.
    silent.last_review = now - 2h;
    silent.brought_in_at = now - 1h;
    EXPECT_EQ(caseload(std::vector{silent}, now)[0].first().kind, NeedKind::ending);
    CaseloadClient never;
    never.handle = "n";
    EXPECT_EQ(caseload(std::vector{never}, now)[0].first().kind, NeedKind::stuck);
}

// Safety rule 8: what a review says is to be told never reads as nothing due.
TEST(Caseload, what_the_prescriber_is_to_be_told_stands_after_what_is_unsafe) {
    CaseloadClient told = client("a");
    told.to_tell = {{now - std::chrono::days{40}, "The diary has 24 h without food.",
                     "Tell the prescriber, and write down the answer."}};
    CaseloadClient promised = client("b");
    promised.promises = {{today(), "the recipe list"}};
    CaseloadClient unsafe = client("c");
    unsafe.escalations = {escalated(Rung::this_week, now - std::chrono::days{9})};
    const auto lines = caseload(std::vector{told, promised, unsafe}, now);
    EXPECT_EQ(order(lines), (std::vector<std::string>{"c", "a", "b"}));
    EXPECT_EQ(lines[1].first().kind, NeedKind::to_tell);
    EXPECT_EQ(lines[1].first().why, "The diary has 24 h without food.");
    EXPECT_THAT(lines[1].first().next, HasSubstr("Tell the prescriber"));
}

TEST(Caseload, of_two_sensors_at_once_the_last_reading_is_that_of_both) {
    CaseloadClient one = client("a");
    const Instant last = now - std::chrono::days{10};
    one.wears = {worn(last - std::chrono::days{14}, last),
                 worn(last - std::chrono::days{12}, last - std::chrono::days{2})};
    for (Wear& wear : one.wears) {
        wear.end = WearEnd::planned;
    }
    one.last_reading = one.wears.front().readings.back().at;
    const Need need = caseload(std::vector{one}, now)[0].first();
    EXPECT_EQ(need.kind, NeedKind::ending);
    EXPECT_EQ(need.by, *one.last_reading);
    EXPECT_THAT(need.why, HasSubstr("10 days ago"));
}

// T15: due two hours after the first bite of a meal with a finger-prick before it.
TEST(Caseload, the_two_hour_check_is_due_from_the_time_it_can_be_taken) {
    CaseloadClient one = client("a");
    const auto at = [&](Instant bite) {
        DiaryEntry prick;
        prick.kind = DiaryKind::finger_prick;
        prick.at = bite - 5min;
        prick.glucose = Glucose{11000, GlucoseUnit::mg_per_dl};
        DiaryEntry lunch;
        lunch.kind = DiaryKind::meal;
        lunch.at = bite;
        lunch.written = WallTime{bite.time_since_epoch()};
        lunch.text = "soup";
        one.diary = {prick, lunch};
        return caseload(std::vector{one}, now)[0].first();
    };
    EXPECT_EQ(at(now - 104min).kind, NeedKind::nothing_due);
    EXPECT_EQ(at(now - 105min).kind, NeedKind::due);
    EXPECT_THAT(at(now - 2h).why, HasSubstr("two-hour check of"));
    EXPECT_EQ(at(now - 13h).kind, NeedKind::nothing_due);
    DiaryEntry after = one.diary.front();
    after.at = now - 1h;
    at(now - 3h);
    one.diary.push_back(after);
    EXPECT_EQ(caseload(std::vector{one}, now)[0].first().kind, NeedKind::nothing_due);
}

TEST(Caseload, an_acknowledged_escalation_and_a_promise_of_tomorrow_are_nothing_due) {
    CaseloadClient one = client("a");
    one.escalations = {escalated(Rung::same_day, now - 2h)};
    one.escalations.front().answer = "Mon 09:10, Sorrel: rang the client";
    one.promises = {{today() + std::chrono::days{1}, "the recipe list"}};
    EXPECT_EQ(caseload(std::vector{one}, now)[0].first().kind, NeedKind::nothing_due);
}

TEST(Caseload, the_week_says_seen_and_written_and_nothing_of_what) {
    CaseloadClient one = client("a");
    one.wears = {worn(now - std::chrono::days{2}, now)};
    DiaryEntry note;
    note.at = now - std::chrono::days{6};
    one.diary = {note};
    const SeenAndWritten week = caseload(std::vector{one}, now)[0].week;
    EXPECT_EQ(week.seen, (std::vector<bool>{false, false, false, false, true, true, true}));
    EXPECT_EQ(week.written, (std::vector<bool>{true, false, false, false, false, false, false}));
}

// Two coaches see the same order, whatever the order in which the clients are read.
RC_GTEST_PROP(Caseload, does_not_depend_on_the_order_of_reading, ()) {
    std::vector<CaseloadClient> all;
    const auto count = *rc::gen::inRange(2, 12);
    for (int i = 0; i < count; ++i) {
        CaseloadClient one = client("c" + std::to_string(i));
        if (*rc::gen::arbitrary<bool>()) {
            one.escalations = {
                escalated(*rc::gen::element(Rung::emergency_now, Rung::same_day, Rung::this_week),
                          now - std::chrono::hours{*rc::gen::inRange(0, 3)})};
        }
        if (*rc::gen::arbitrary<bool>()) {
            one.promises = {{today() - std::chrono::days{*rc::gen::inRange(0, 2)}, "x"}};
        }
        all.push_back(std::move(one));
    }
    const auto lines = caseload(all, now);
    RC_ASSERT(lines.size() == all.size());
    std::vector<CaseloadClient> turned(all.rbegin(), all.rend());
    RC_ASSERT(order(caseload(turned, now)) == order(lines));
    for (std::size_t i = 1; i < lines.size(); ++i) {
        RC_ASSERT(lines[i - 1].first().kind <= lines[i].first().kind);
    }
}
