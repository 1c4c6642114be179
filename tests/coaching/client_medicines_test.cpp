#include "coaching/client_medicines.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

CivilDate day(int number) {
    return CivilDate{std::chrono::days{20'000 + number}};
}

TEST(ClientMedicines, are_taken_from_the_begin_of_the_first_day_to_the_end_of_the_last) {
    const ZoneHistory berlin(*Zone::named("Europe/Berlin"));
    ClientFacts facts;
    facts.medicines_asked_on = day(0);
    facts.medicines = {{"metformin", {}, {}}, {"gliclazide 60", day(3), day(5)}};
    const MedicineTimeline medicines = client_medicines(facts, berlin);
    const Instant from = berlin.day_of(day(3)).from;
    const Instant to = berlin.day_of(day(5)).to;
    constexpr std::chrono::seconds second{1};
    EXPECT_FALSE(medicines.risks_at(from - second).can_cause_lows);
    EXPECT_TRUE(medicines.risks_at(from).can_cause_lows);
    EXPECT_TRUE(medicines.risks_at(to - second).can_cause_lows);
    EXPECT_FALSE(medicines.risks_at(to).can_cause_lows);
}

// Told and begun on one day: who brings readings of the fortnight before may have taken it then.
TEST(ClientMedicines, one_that_begins_on_the_day_of_asking_counts_for_the_days_before) {
    const ZoneHistory clock(Zone::fixed(std::chrono::seconds{0}));
    ClientFacts facts;
    facts.medicines_asked_on = day(0);
    facts.medicines = {{"gliclazide", day(0), {}}};
    const MedicineTimeline medicines = client_medicines(facts, clock);
    EXPECT_TRUE(medicines.risks_at(clock.day_of(day(-10)).from).secretagogue);
    EXPECT_EQ(
        medicines.events_between(clock.day_of(day(-1)).from, clock.day_of(day(1)).from).size(), 1U);
    facts.medicines[0].from = day(-5);
    EXPECT_FALSE(client_medicines(facts, clock).risks_at(clock.day_of(day(-10)).from).secretagogue);
}

// 90 days: our own rule.
TEST(ClientMedicines, the_answer_reaches_back_ninety_days_and_no_start_date_carries_it_further) {
    const ZoneHistory clock(Zone::fixed(std::chrono::seconds{0}));
    ClientFacts facts;
    facts.medicines = {{"metformin", day(-3000), {}}};
    EXPECT_FALSE(client_medicines(facts, clock).risks_at(clock.day_of(day(0)).from).answered);
    facts.medicines_asked_on = day(0);
    const MedicineTimeline medicines = client_medicines(facts, clock);
    EXPECT_TRUE(answered_none_that_can_cause_lows(medicines.risks_at(clock.day_of(day(-90)).from)));
    const MedicineRisks before =
        medicines.risks_at(clock.day_of(day(-90)).from - std::chrono::seconds{2});
    EXPECT_FALSE(before.answered);
    EXPECT_TRUE(before.can_cause_lows && before.sglt2);
}

}  // namespace
}  // namespace tracewright
