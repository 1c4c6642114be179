#include "diary/medicine_timeline.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

Instant day(int number) {
    return Instant{std::chrono::days{20'000 + number}};
}

MedicineUse use(const char* written, std::optional<Instant> from = {},
                std::optional<Instant> until = {}) {
    return {medicine_text(written), from, until};
}

TEST(MedicineRisks, what_was_never_asked_counts_as_risky) {
    const MedicineRisks risks = MedicineTimeline().risks_at(day(0));
    EXPECT_FALSE(risks.answered);
    EXPECT_TRUE(risks.can_cause_lows);
    EXPECT_TRUE(risks.sglt2);
    EXPECT_TRUE(risks.insulin && risks.secretagogue);
    EXPECT_FALSE(answered_none_that_can_cause_lows(risks));
    EXPECT_FALSE(risks.to_ask.empty());
}

// Stored before it was refused: a slip of one of two days takes no medicine off the list.
TEST(MedicineRisks, an_end_before_its_beginning_counts_as_still_taken) {
    const MedicineTimeline medicines({use("metformin"), use("insulin glargine", day(10), day(5))},
                                     day(0));
    for (const int at : {1, 7, 12, 300}) {
        EXPECT_TRUE(medicines.risks_at(day(at)).insulin) << at;
    }
}

TEST(MedicineRisks, an_unrecognised_medicine_counts_as_risky_and_is_to_be_asked) {
    const MedicineRisks risks =
        risks_of({medicine_text("metformin"), medicine_text("Quorvilan 10")});
    EXPECT_FALSE(risks.answered);
    EXPECT_TRUE(risks.can_cause_lows && risks.sglt2);
    ASSERT_EQ(risks.to_ask.size(), 1U);
    EXPECT_NE(risks.to_ask[0].find("not recognised: please ask"), std::string::npos);
}

struct ListRow {
    const char* written;
    bool can_cause_lows;
    bool sglt2;
};
// Source: safety rule 1; medicine-classes.csv. `only_with` (metformin, gliptins, SGLT2 inhibitors,
// GLP-1 receptor agonists): not alone, but beside insulin, a sulfonylurea or a glinide.
TEST(MedicineRisks, only_with_counts_as_no_until_something_risky_is_beside_it) {
    for (const ListRow& row :
         {ListRow{"metformin", false, false}, ListRow{"empagliflozin", false, true},
          ListRow{"semaglutide", false, false}, ListRow{"metformin, gliclazide", true, false},
          ListRow{"semaglutide + insulin glargine", true, false},
          ListRow{"repaglinide", true, false},
          ListRow{"canagliflozin/metformin 50/1000", false, true}, ListRow{"none", false, false}}) {
        const MedicineRisks risks = risks_of({medicine_text(row.written)});
        EXPECT_TRUE(risks.answered) << row.written;
        EXPECT_EQ(risks.can_cause_lows, row.can_cause_lows) << row.written;
        EXPECT_EQ(risks.sglt2, row.sglt2) << row.written;
    }
}

TEST(MedicineTimeline, risks_are_those_of_the_time_asked_about) {
    const MedicineTimeline timeline({use("gliclazide", {}, day(10)), use("metformin")}, day(-5));
    EXPECT_TRUE(timeline.risks_at(day(9)).can_cause_lows);
    EXPECT_FALSE(timeline.risks_at(day(10)).can_cause_lows);
    EXPECT_TRUE(timeline.risks_in({day(9), day(20)}).can_cause_lows);
    EXPECT_FALSE(timeline.risks_at(day(-20)).answered);  // not asked by then
}

TEST(MedicineTimeline, a_text_that_says_stopped_without_a_date_still_counts_as_taken) {
    const MedicineTimeline timeline({use("stopped glimepiride in March")}, day(0));
    EXPECT_TRUE(timeline.risks_at(day(1)).can_cause_lows);
}

TEST(MedicineTimeline, tells_starts_stops_and_changes_between_two_stretches) {
    const MedicineTimeline timeline({use("metformin up from 500 to 1000", day(3)),
                                     use("gliclazide", day(5), day(8)), use("none", day(4))},
                                    day(0));
    const auto events = timeline.events_between(day(0), day(8));
    ASSERT_EQ(events.size(), 2U);
    EXPECT_EQ(events[0].kind, MedicineEvent::Kind::change);
    EXPECT_EQ(events[0].names, "metformin");
    EXPECT_EQ(events[1].kind, MedicineEvent::Kind::start);
    EXPECT_EQ(timeline.events_between(day(8), day(9)).size(), 1U);
    EXPECT_TRUE(timeline.events_between(day(9), day(99)).empty());
}

TEST(MedicineTimeline, a_line_that_goes_on_in_another_dose_is_one_change) {
    const MedicineTimeline timeline({use("metformin 500 mg", {}, day(3) + std::chrono::days{1}),
                                     use("metformin 1000 mg", day(3))},
                                    day(0));
    const auto events = timeline.events_between(day(0), day(8));
    ASSERT_EQ(events.size(), 1U);
    EXPECT_EQ(events[0].kind, MedicineEvent::Kind::change);
    EXPECT_EQ(events[0].at, day(3));
    // A stretch that begins within the day of the change still meets it.
    const auto half = timeline.events_between(day(3) + std::chrono::hours{12}, day(8));
    ASSERT_EQ(half.size(), 1U);
    EXPECT_EQ(half[0].kind, MedicineEvent::Kind::change);
    // Another medicine, or a gap of days, is a stop and a start.
    for (const auto& next : {use("gliclazide", day(3)), use("metformin", day(6))}) {
        const MedicineTimeline other({use("metformin", {}, day(4)), next}, day(0));
        EXPECT_EQ(other.events_between(day(0), day(8)).size(), 2U) << next.text.written;
    }
}

}  // namespace
}  // namespace tracewright
