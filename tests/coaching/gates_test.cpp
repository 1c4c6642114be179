#include "coaching/gates.hpp"

#include "care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

namespace tracewright {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr std::array every_proposed{
    Proposed::low_carbohydrate, Proposed::fasting, Proposed::meal_skipping, Proposed::weight_loss,
    Proposed::food_change,      Proposed::walking, Proposed::other};
constexpr std::array that_eat_less{Proposed::low_carbohydrate, Proposed::fasting,
                                   Proposed::meal_skipping, Proposed::weight_loss};

std::vector<Gate> offer(const Care& care, Proposed proposed, const std::string& words = {}) {
    return care.ask([&](const CareInput& in) { return gates_before_offer(proposed, words, in); });
}

std::vector<Gate> plan(const Care& care, Proposed proposed) {
    return care.ask([&](const CareInput& in) { return gates_before_plan(proposed, {}, in); });
}

std::vector<GateKind> kinds(const std::vector<Gate>& gates) {
    std::vector<GateKind> all;
    for (const Gate& gate : gates) {
        all.push_back(gate.kind);
    }
    return all;
}

bool is_eating_less(Proposed proposed) {
    return std::ranges::find(that_eat_less, proposed) != that_eat_less.end();
}

TEST(Gates, are_open_where_everything_was_asked_and_nothing_speaks_against_it) {
    for (const Proposed proposed : every_proposed) {
        EXPECT_THAT(kinds(offer(Care{}, proposed)), IsEmpty()) << static_cast<int>(proposed);
    }
}

TEST(Gates, of_a_client_of_whom_nothing_was_asked_are_all_closed) {
    Care care;
    care.facts = ClientFacts{};
    for (const Proposed proposed : every_proposed) {
        EXPECT_THAT(kinds(offer(care, proposed)), Not(IsEmpty()));
    }
    for (const GateKind kind : {GateKind::type_to_be_checked, GateKind::medicines_not_answered,
                                GateKind::eating, GateKind::frail, GateKind::eyes}) {
        EXPECT_THAT(kinds(offer(care, Proposed::fasting)), Contains(kind));
    }
}

struct GateRow {
    const char* what;
    std::function<void(Care&)> with;
    GateKind kind;
    enum class Closes { anything, eating_less, food, walking, eating_less_and_walking } closes;
};
using Closes = GateRow::Closes;

bool closes(Closes what, Proposed proposed) {
    switch (what) {
        case Closes::anything:
            return true;
        case Closes::eating_less:
            return is_eating_less(proposed);
        case Closes::food:
            return is_eating_less(proposed) || proposed == Proposed::food_change;
        case Closes::walking:
            return proposed == Proposed::walking;
        case Closes::eating_less_and_walking:
            return is_eating_less(proposed) || proposed == Proposed::walking;
    }
    return false;
}

// Safety rules 7 to 12, one row for each condition of theirs.
const std::vector<GateRow>& gate_rows() {
    static const std::vector<GateRow> rows{
        {"under 18", [](Care& c) { c.facts.born_year = 2010; }, GateKind::may_be_under_18,
         Closes::anything},
        {"may be under 18", [](Care& c) { c.facts.born_year = 2008; }, GateKind::may_be_under_18,
         Closes::anything},
        {"age not asked", [](Care& c) { c.facts.born_year.reset(); }, GateKind::may_be_under_18,
         Closes::anything},
        {"pregnant", [](Care& c) { c.facts.cautions.pregnancy = Pregnancy::pregnant; },
         GateKind::pregnancy, Closes::anything},
        {"planning", [](Care& c) { c.facts.cautions.pregnancy = Pregnancy::planning; },
         GateKind::pregnancy, Closes::anything},
        {"unsure", [](Care& c) { c.facts.cautions.pregnancy = Pregnancy::unsure; },
         GateKind::pregnancy, Closes::anything},
        {"pregnancy not asked",
         [](Care& c) { c.facts.cautions.pregnancy = Pregnancy::not_answered; }, GateKind::pregnancy,
         Closes::anything},
        {"insulin", [](Care& c) { c.takes("insulin glargine 18"); }, GateKind::insulin,
         Closes::eating_less},
        {"sulfonylurea", [](Care& c) { c.takes("gliclazide MR 60"); }, GateKind::secretagogue,
         Closes::eating_less},
        {"glinide", [](Care& c) { c.takes("repaglinide"); }, GateKind::secretagogue,
         Closes::eating_less},
        {"SGLT2 inhibitor", [](Care& c) { c.takes("empagliflozin 10"); }, GateKind::sglt2,
         Closes::eating_less},
        {"misspelt", [](Care& c) { c.takes("glicazide 80"); }, GateKind::medicines_not_answered,
         Closes::eating_less},
        {"never asked", [](Care& c) { c.facts.medicines_asked_on.reset(); },
         GateKind::medicines_not_answered, Closes::eating_less},
        {"frail", [](Care& c) { c.facts.cautions.frail = Answered::yes; }, GateKind::frail,
         Closes::eating_less},
        {"frail not asked", [](Care& c) { c.facts.cautions.frail = Answered::not_yet; },
         GateKind::frail, Closes::eating_less},
        {"type not told", [](Care& c) { c.facts.told_type.clear(); }, GateKind::type_to_be_checked,
         Closes::eating_less},
        {"autoimmune", [](Care& c) { c.facts.cautions.another_autoimmune_disease = Answered::yes; },
         GateKind::type_to_be_checked, Closes::eating_less},
        {"no eye check in 12 months",
         [](Care& c) { c.facts.cautions.last_eye_check = care_day - std::chrono::days{366}; },
         GateKind::eyes, Closes::eating_less},
        {"eye check not asked", [](Care& c) { c.facts.cautions.last_eye_check.reset(); },
         GateKind::eyes, Closes::eating_less},
        {"eye disease", [](Care& c) { c.facts.cautions.eye_disease = Answered::yes; },
         GateKind::eyes, Closes::eating_less_and_walking},
        {"eyes not asked", [](Care& c) { c.facts.cautions.eye_disease = Answered::not_yet; },
         GateKind::eyes, Closes::eating_less_and_walking},
        {"eating positive", [](Care& c) { c.facts.cautions.eating.positive = Answered::yes; },
         GateKind::eating, Closes::food},
        {"eating not asked", [](Care& c) { c.facts.cautions.eating = {}; }, GateKind::eating,
         Closes::food},
        {"eating 'no' by nobody", [](Care& c) { c.facts.cautions.eating.by.clear(); },
         GateKind::eating, Closes::food},
        {"shame", [](Care& c) { c.entry(DiaryKind::note, care_at(-2), "so ashamed of dinner"); },
         GateKind::eating_signs, Closes::food},
        {"low on a sulfonylurea",
         [](Care& c) {
             c.takes("gliclazide");
             Care::set(c.wears[0], 1000, 4, 65);
         },
         GateKind::lows_with_medicine, Closes::walking},
        {"a cut short very low on insulin",
         [](Care& c) {
             c.takes("insulin glargine");
             Care::set(c.wears[0], 14 * 288 - 1, 1, 50);
         },
         GateKind::lows_with_medicine, Closes::walking},
        {"not looked on a sulfonylurea",
         [](Care& c) {
             c.takes("gliclazide");
             c.wears.clear();
         },
         GateKind::lows_with_medicine, Closes::walking},
        {"severe low earlier on a sulfonylurea",
         [](Care& c) {
             c.takes("gliclazide");
             c.facts.cautions.severe_low_before = Answered::yes;
         },
         GateKind::lows_with_medicine, Closes::walking},
        {"beta-blocker", [](Care& c) { c.takes("bisoprolol 5"); }, GateKind::beta_blocker,
         Closes::walking},
        {"feet", [](Care& c) { c.facts.cautions.numb_feet_or_wound = Answered::yes; },
         GateKind::feet, Closes::walking},
        {"chest", [](Care& c) { c.facts.cautions.chest_symptoms = Answered::yes; }, GateKind::chest,
         Closes::walking},
        {"chest not asked", [](Care& c) { c.facts.cautions.chest_symptoms = Answered::not_yet; },
         GateKind::chest, Closes::walking},
    };
    return rows;
}

TEST(Gates, each_condition_closes_what_its_rule_says_and_nothing_else) {
    for (const GateRow& row : gate_rows()) {
        Care care;
        row.with(care);
        for (const Proposed proposed : every_proposed) {
            const auto found = kinds(offer(care, proposed));
            EXPECT_EQ(std::ranges::count(found, row.kind), closes(row.closes, proposed) ? 1 : 0)
                << row.what << " for " << static_cast<int>(proposed);
        }
    }
}

TEST(Gates, a_sulfonylurea_without_a_low_does_not_close_a_walk) {
    Care care;
    care.takes("gliclazide");
    EXPECT_THAT(kinds(offer(care, Proposed::walking)), IsEmpty());
    care.entry(DiaryKind::finger_prick, care_at(-3)).glucose =
        Glucose{380, GlucoseUnit::mmol_per_l};
    EXPECT_THAT(kinds(offer(care, Proposed::walking)), Contains(GateKind::lows_with_medicine));
}

TEST(Gates, turned_nineteen_this_year_is_of_age) {
    Care care;
    care.facts.born_year = 2007;  // 2026 is the year asked in
    EXPECT_THAT(kinds(offer(care, Proposed::other)), IsEmpty());
}

// Rule 9: medicines and supplements are never a change or a trial arm.
TEST(Gates, words_that_name_a_medicine_or_supplement_are_never_offered) {
    for (const char* words : {"half the gliclazide", "skip the evening insulin", "vitamin C",
                              "a cinnamon supplement", "take the Tablet later", "metformin"}) {
        EXPECT_THAT(kinds(offer(Care{}, Proposed::other, words)),
                    Contains(GateKind::names_a_medicine))
            << words;
    }
    for (const char* words :
         {"walk 15 minutes after dinner", "porridge in place of toast", "dinner by 19:00"}) {
        EXPECT_THAT(kinds(offer(Care{}, Proposed::other, words)), IsEmpty()) << words;
    }
}

PrescriberAnswer yes_from_the_prescriber(AskedAbout about, int days_ago = 10) {
    return {about, true, "Dr Larch", care_day - std::chrono::days{days_ago}, {}};
}

TEST(Gates, a_prescribers_answer_opens_a_plan_but_never_an_offer) {
    for (const char* medicine : {"empagliflozin", "gliclazide", "insulin glargine"}) {
        Care care;
        care.takes(medicine);
        EXPECT_THAT(kinds(plan(care, Proposed::low_carbohydrate)), Not(IsEmpty()));
        care.facts.prescriber_answers = {yes_from_the_prescriber(AskedAbout::low_carbohydrate)};
        EXPECT_THAT(kinds(plan(care, Proposed::low_carbohydrate)), IsEmpty()) << medicine;
        EXPECT_THAT(kinds(plan(care, Proposed::fasting)), Not(IsEmpty())) << medicine;
        EXPECT_THAT(kinds(offer(care, Proposed::low_carbohydrate)), Not(IsEmpty())) << medicine;
    }
}

TEST(Gates, no_answer_opens_pregnancy_eating_age_or_an_open_list_of_medicines) {
    for (const GateRow& row : gate_rows()) {
        Care care;
        row.with(care);
        for (const AskedAbout about : {AskedAbout::low_carbohydrate, AskedAbout::fasting,
                                       AskedAbout::weight_loss, AskedAbout::walking}) {
            care.facts.prescriber_answers.push_back(yes_from_the_prescriber(about));
        }
        const bool stays = row.kind == GateKind::pregnancy || row.kind == GateKind::eating ||
                           row.kind == GateKind::may_be_under_18 ||
                           row.kind == GateKind::eating_signs || row.kind == GateKind::frail ||
                           row.kind == GateKind::medicines_not_answered ||
                           row.kind == GateKind::type_to_be_checked;
        if (stays) {
            EXPECT_THAT(kinds(plan(care, Proposed::fasting)), Contains(row.kind)) << row.what;
        }
    }
}

TEST(Gates, the_type_once_checked_opens_until_another_sign_is_seen) {
    Care care;
    care.entry(DiaryKind::symptom, care_at(-20), "Very thirsty");
    EXPECT_THAT(kinds(offer(care, Proposed::weight_loss)), Contains(GateKind::type_to_be_checked));
    care.facts.prescriber_answers = {yes_from_the_prescriber(AskedAbout::diabetes_type)};
    EXPECT_THAT(kinds(offer(care, Proposed::weight_loss)), IsEmpty());
    care.entry(DiaryKind::symptom, care_at(-5), "thirst again");
    EXPECT_THAT(kinds(offer(care, Proposed::weight_loss)), Contains(GateKind::type_to_be_checked));
}

// Safety rule 14.
TEST(Gates, speak_within_the_coachs_licence) {
    Care care;
    care.takes("empagliflozin");
    const auto gates = offer(care, Proposed::low_carbohydrate);
    const auto unlicensed = gates_for_coach(gates, Licence::none);
    ASSERT_EQ(unlicensed.size(), 1U);
    EXPECT_THAT(unlicensed[0], HasSubstr("Ask the clinic."));
    EXPECT_THAT(unlicensed[0], Not(HasSubstr("ketoacidosis")));
    EXPECT_THAT(gates_for_coach(gates, Licence::dietitian)[0], HasSubstr("ketoacidosis"));
    EXPECT_THAT(gates[0].for_client, HasSubstr("ring your clinic today"));
}

TEST(Gates, no_text_bears_a_word_that_lulls_or_a_dose) {
    for (const GateRow& row : gate_rows()) {
        Care care;
        row.with(care);
        for (const Proposed proposed : every_proposed) {
            for (const Gate& gate : offer(care, proposed, "gliclazide")) {
                const std::string text = in_scope(gate.for_coach, Licence::nurse) + gate.for_client;
                for (const char* word : {"no lows", " safe", " fine", "cured", " dose", "mg"}) {
                    EXPECT_THAT(text, Not(HasSubstr(word)));
                }
                EXPECT_FALSE(gate.for_coach.record.empty());
            }
        }
    }
}

}  // namespace
}  // namespace tracewright
