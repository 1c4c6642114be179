#include "coaching/pressure_dip_label.hpp"
#include "coaching/ladder_for_tests.hpp"
#include "trace/pressure_dip.hpp"

#include <gtest/gtest.h>

#include <functional>

namespace tracewright {
namespace {

// A night with a dip of the shape: 110, down to 50 within 10 minutes for 35 minutes, and back.
constexpr std::size_t dip_at = 26 * 12;  // 02:00 of the second day
void dip(Wear& wear, std::size_t at = dip_at) {
    Ladder::set(wear, at, 1, 85);
    Ladder::set(wear, at + 1, 7, 50);
    Ladder::set(wear, at + 8, 1, 90);
}

ClientFacts plain_facts() {
    ClientFacts facts;
    facts.born_year = 1970;
    facts.cautions.severe_low_before = Answered::no;
    facts.cautions.kidney_disease = Answered::no;
    facts.cautions.liver_disease = Answered::no;
    facts.cautions.stomach_surgery = Answered::no;
    return facts;
}

Ladder plain_night() {
    Ladder ladder;
    ladder.takes("metformin");
    dip(ladder.wear(0, 600, 110));
    ladder.entry(DiaryKind::meal, 18.5 * 60, "dinner");
    return ladder;
}

DipLabels labels(const Ladder& ladder, const ClientFacts& facts) {
    return dip_labels(
        {ladder.wears, ladder.diary, ladder.medicines, ladder.clock, GlucoseUnit::mg_per_dl, {}},
        facts);
}

TEST(DipShape, a_steep_fall_and_back_from_a_flat_trace) {
    const Ladder ladder = plain_night();
    const auto dips = dip_shapes(ladder.wears[0]);
    ASSERT_EQ(dips.size(), 1U);
    EXPECT_EQ(dips[0].lowest.hundredths, 5'000);
    EXPECT_EQ(dips[0].bottom, at_minute((dip_at + 1) * 5.0));
}

TEST(DipShape, slow_or_long_or_shallow_is_another_shape) {
    Ladder slow;
    Wear& falling = slow.wear(0, 600, 110);
    for (std::size_t i = 0; i < 12; ++i) {
        Ladder::set(falling, dip_at + i, 1, 110 - 5 * static_cast<int>(i));
        Ladder::set(falling, dip_at + 12 + i, 1, 55 + 5 * static_cast<int>(i));
    }
    EXPECT_TRUE(dip_shapes(falling).empty());
    Ladder lasting;
    Ladder::set(lasting.wear(0, 600, 110), dip_at, 30, 50);  // two and a half hours
    EXPECT_TRUE(dip_shapes(lasting.wears[0]).empty());
    Ladder shallow;
    Ladder::set(shallow.wear(0, 600, 110), dip_at, 7, 90);
    EXPECT_TRUE(dip_shapes(shallow.wears[0]).empty());
}

TEST(PressureDipLabel, is_given_where_nothing_speaks_against_it) {
    const DipLabels given = labels(plain_night(), plain_facts());
    ASSERT_EQ(given.may_be_pressure.size(), 1U);
    EXPECT_EQ(given.may_be_pressure[0].reason, MarkReason::pressure_dip);
    EXPECT_TRUE(given.not_labelled.empty());
}

TEST(PressureDipLabel, a_short_walk_a_finger_prick_in_range_and_an_old_medicine_speak_not_against) {
    Ladder ladder = plain_night();
    ladder.entry(DiaryKind::movement, 19 * 60, "walk").until = at_minute(19 * 60 + 30);
    DiaryEntry& other = ladder.entry(DiaryKind::movement, 17 * 60, "walk");
    other.number = 20;
    other.number_unit = "min";
    ladder.prick(26 * 60 + 15, 112);
    ladder.entry(DiaryKind::symptom, 36 * 60, "headache at noon");
    ladder.medicines =
        MedicineTimeline({{medicine_text("gliclazide"), {}, at_minute(26 * 60 - 8 * 1440)},
                          {medicine_text("metformin"), {}, {}}},
                         at_minute(-1e6));
    EXPECT_EQ(labels(ladder, plain_facts()).may_be_pressure.size(), 1U);
}

// Safety rule 3: labelled and still escalated.
TEST(PressureDipLabel, takes_no_escalation_away) {
    EXPECT_EQ(plain_night().found("very_low").size(), 1U);
}

struct Against {
    const char* what;
    std::function<void(Ladder&, ClientFacts&)> change;
};

// Safety rule 4, each condition.
TEST(PressureDipLabel, is_never_given_where_one_thing_speaks_against_it) {
    const Against rows[] = {
        {"medicines not asked", [](Ladder& l, ClientFacts&) { l.medicines = MedicineTimeline(); }},
        {"a medicine that can cause lows", [](Ladder& l, ClientFacts&) { l.takes("gliclazide"); }},
        {"a medicine not recognised", [](Ladder& l, ClientFacts&) { l.takes("Quorvilan 10"); }},
        {"alcohol", [](Ladder& l, ClientFacts&) { l.entry(DiaryKind::alcohol, 21 * 60, "beer"); }},
        {"long movement",
         [](Ladder& l, ClientFacts&) {
             l.entry(DiaryKind::movement, 19 * 60, "hike").until = at_minute(20.5 * 60);
         }},
        {"a late meal", [](Ladder& l, ClientFacts&) { l.entry(DiaryKind::meal, 22 * 60, "soup"); }},
        {"no dinner written", [](Ladder& l, ClientFacts&) { l.diary.clear(); }},
        {"a symptom",
         [](Ladder& l, ClientFacts&) { l.entry(DiaryKind::symptom, 27 * 60, "sweaty"); }},
        {"a symptom written in the morning",
         [](Ladder& l, ClientFacts&) { l.entry(DiaryKind::note, 31 * 60, "Woke up sweaty"); }},
        {"a low finger-prick", [](Ladder& l, ClientFacts&) { l.prick(26 * 60 + 15, 62); }},
        {"wine with dinner",
         [](Ladder& l, ClientFacts&) {
             l.entry(DiaryKind::meal, 19 * 60, "pasta, glass of WINE");
         }},
        {"movement of no written length",
         [](Ladder& l, ClientFacts&) { l.entry(DiaryKind::movement, 19 * 60, "football"); }},
        {"a medicine stopped four days before",
         [](Ladder& l, ClientFacts&) {
             l.medicines = MedicineTimeline(
                 {{medicine_text("glibenclamide"), {}, at_minute(26 * 60 - 4 * 1440)},
                  {medicine_text("metformin"), {}, {}}},
                 at_minute(-1e6));
         }},
        {"kidney disease",
         [](Ladder&, ClientFacts& f) { f.cautions.kidney_disease = Answered::yes; }},
        {"liver disease not asked",
         [](Ladder&, ClientFacts& f) { f.cautions.liver_disease = Answered::not_yet; }},
        {"age 75", [](Ladder&, ClientFacts& f) { f.born_year = 1945; }},
        {"age not known", [](Ladder&, ClientFacts& f) { f.born_year.reset(); }},
        {"stomach surgery",
         [](Ladder&, ClientFacts& f) { f.cautions.stomach_surgery = Answered::yes; }},
        {"an earlier severe low",
         [](Ladder&, ClientFacts& f) { f.cautions.severe_low_before = Answered::yes; }},
        {"the same time of another night",
         [](Ladder& l, ClientFacts&) {
             dip(l.wears[0], dip_at + 288 - 16);
             l.entry(DiaryKind::meal, 42.5 * 60, "dinner");
         }},
    };
    for (const Against& row : rows) {
        Ladder ladder = plain_night();
        ClientFacts facts = plain_facts();
        row.change(ladder, facts);
        const DipLabels given = labels(ladder, facts);
        EXPECT_TRUE(given.may_be_pressure.empty()) << row.what;
        EXPECT_FALSE(given.not_labelled.empty()) << row.what;
    }
}

TEST(PressureDipLabel, by_day_and_awake_it_is_not_spoken_of) {
    Ladder ladder = plain_night();
    ladder.entry(DiaryKind::sleep, 22 * 60).until = at_minute(25 * 60);  // up at 01:00
    const DipLabels given = labels(ladder, plain_facts());
    EXPECT_TRUE(given.may_be_pressure.empty() && given.not_labelled.empty());
}

}  // namespace
}  // namespace tracewright
