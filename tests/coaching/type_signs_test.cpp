#include "coaching/type_signs.hpp"

#include "care_for_tests.hpp"
#include "coaching/gates.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

namespace tracewright {
namespace {

std::vector<TypeSignSeen> signs_of(const Care& care) {
    return care.ask([](const CareInput& in) { return type_signs(in); });
}

struct SignRow {
    const char* what;
    std::function<void(Care&)> with;
    std::optional<TypeSign> sign;  // empty: none
};

LabResult a1c(int days_ago, double value, const char* unit = "%") {
    return {care_day - std::chrono::days{days_ago}, "HbA1c", value, unit};
}

LabResult weight(int days_ago, double kg) {
    return {care_day - std::chrono::days{days_ago}, "weight", kg, "kg"};
}

void diagnosed(Care& care, int age, int days_ago) {
    care.facts.diagnosed_on = care_day - std::chrono::days{days_ago};
    const std::chrono::year_month_day date{
        std::chrono::sys_days{care.facts.diagnosed_on->time_since_epoch()}};
    care.facts.born_year = static_cast<int>(date.year()) - age;
}

// Half of each day at `level`: above 250 mg/dL that is most of it.
void high_days(Care& care, int days, int readings_a_day) {
    for (int day = 0; day < days; ++day) {
        Care::set(care.wears[0], day * 288, readings_a_day, 260);
    }
}

// Conditions: safety rule 7; their limits are our own rule where the header says so.
TEST(TypeSigns, each_condition_is_one_sign_and_its_neighbour_is_none) {
    const std::vector<SignRow> rows{
        {"nothing", [](Care&) {}, {}},
        {"nothing told", [](Care& c) { c.facts.told_type = " "; }, TypeSign::type_not_told},
        {"type 1", [](Care& c) { c.facts.told_type = "type 1"; }, TypeSign::other_type_told},
        {"not sure", [](Care& c) { c.facts.told_type = "type 2, not sure"; },
         TypeSign::other_type_told},
        {"weight",
         [](Care& c) {
             c.facts.labs = {weight(80, 90), weight(2, 85.5)};
         },
         TypeSign::weight_loss},
        {"less weight",
         [](Care& c) {
             c.facts.labs = {weight(80, 90), weight(2, 86)};
         },
         {}},
        {"weight as agreed",
         [](Care& c) {
             c.facts.labs = {weight(80, 90), weight(2, 80)};
             c.facts.agreed_change = {"smaller plates", care_day - std::chrono::days{80}, {}};
         },
         {}},
        {"thirst", [](Care& c) { c.entry(DiaryKind::symptom, care_at(-2), "So THIRSTY"); },
         TypeSign::thirst},
        {"thirst in a meal",
         [](Care& c) { c.entry(DiaryKind::meal, care_at(-2), "thirst drink"); },
         {}},
        {"ketones", [](Care& c) { c.entry(DiaryKind::ketones, care_at(-2)).number = 0.6; },
         TypeSign::raised_ketones},
        {"few ketones", [](Care& c) { c.entry(DiaryKind::ketones, care_at(-2)).number = 0.5; }, {}},
        {"two days high",
         [](Care& c) {
             c.wears.clear();
             c.wear(-4, 4, 240);
             high_days(c, 2, 150);
         },
         TypeSign::mostly_above_250},
        {"one day high",
         [](Care& c) {
             c.wears.clear();
             c.wear(-4, 4, 240);
             high_days(c, 1, 150);
         },
         {}},
        {"half of the days high",
         [](Care& c) {
             c.wears.clear();
             c.wear(-4, 4, 240);
             high_days(c, 3, 144);
         },
         {}},
        {"diagnosed at 34", [](Care& c) { diagnosed(c, 34, 2000); }, TypeSign::young_at_diagnosis},
        {"diagnosed at 34 or 35", [](Care& c) { diagnosed(c, 35, 2000); },
         TypeSign::young_at_diagnosis},
        {"diagnosed at 36", [](Care& c) { diagnosed(c, 36, 2000); }, {}},
        {"autoimmune", [](Care& c) { c.facts.cautions.another_autoimmune_disease = Answered::yes; },
         TypeSign::another_autoimmune_disease},
        {"worse on tablets",
         [](Care& c) {
             c.facts.labs = {a1c(150, 7.0), a1c(10, 8.0)};
         },
         TypeSign::quick_worsening},
        {"worse on tablets, other scale",  // 53 and 64 mmol/mol: 7.0 and 8.0 %
         [](Care& c) {
             c.facts.labs = {a1c(150, 53, "mmol/mol"), a1c(10, 65, "mmol/mol")};
         },
         TypeSign::quick_worsening},
        {"worse on tablets, as laboratories call it",
         [](Care& c) {
             c.facts.labs = {a1c(150, 7.0), a1c(10, 8.0, "percent")};
             c.facts.labs[0].what = "Hb A1c (lab)";
             c.facts.labs[1].what = "Haemoglobin A1c";
         },
         TypeSign::quick_worsening},
        {"slowly worse",
         [](Care& c) {
             c.facts.labs = {a1c(250, 7.0), a1c(10, 8.0)};
         },
         {}},
        {"a little worse",
         [](Care& c) {
             c.facts.labs = {a1c(150, 7.0), a1c(10, 7.9)};
         },
         {}},
        {"worse without medicine",
         [](Care& c) {
             c.facts.labs = {a1c(150, 7.0), a1c(10, 8.0)};
             c.takes("none");
         },
         {}},
        {"new after 60 with pancreas trouble",
         [](Care& c) {
             diagnosed(c, 62, 300);
             c.facts.cautions.others = "chronic Pancreatitis";
         },
         TypeSign::new_after_sixty},
        {"new after 60", [](Care& c) { diagnosed(c, 62, 300); }, {}},
        {"old after 60 with pancreas trouble",
         [](Care& c) {
             diagnosed(c, 62, 800);
             c.facts.cautions.others = "pancreatitis";
         },
         {}},
        // Half at 60 and half at 180: SD 60 of a mean of 120, CV 50 %.
        {"wide",
         [](Care& c) {
             for (int day = 0; day < 14; ++day) {
                 Care::set(c.wears[0], day * 288, 144, 60);
                 Care::set(c.wears[0], day * 288 + 144, 144, 180);
             }
         },
         TypeSign::wide_spread},
        // 77 and 163: SD 43, CV 35.8 %.
        {"not so wide",
         [](Care& c) {
             for (int day = 0; day < 14; ++day) {
                 Care::set(c.wears[0], day * 288, 144, 77);
                 Care::set(c.wears[0], day * 288 + 144, 144, 163);
             }
         },
         {}},
        {"wide on insulin",
         [](Care& c) {
             c.takes("insulin glargine");
             for (int day = 0; day < 14; ++day) {
                 Care::set(c.wears[0], day * 288, 144, 60);
                 Care::set(c.wears[0], day * 288 + 144, 144, 180);
             }
         },
         {}},
    };
    for (const SignRow& row : rows) {
        Care care;
        row.with(care);
        const auto signs = signs_of(care);
        ASSERT_EQ(signs.size(), row.sign ? 1U : 0U) << row.what;
        if (row.sign) {
            EXPECT_EQ(signs[0].sign, *row.sign) << row.what;
        }
    }
}

TEST(TypeSigns, an_open_list_of_medicines_does_not_hide_a_wide_spread) {
    Care care;
    care.facts.medicines_asked_on.reset();
    for (int day = 0; day < 14; ++day) {
        Care::set(care.wears[0], day * 288, 144, 60);
        Care::set(care.wears[0], day * 288 + 144, 144, 180);
    }
    ASSERT_EQ(signs_of(care).size(), 1U);
}

TEST(TypeSigns, are_told_without_a_diagnosis) {
    Care care;
    care.entry(DiaryKind::symptom, care_at(-2), "thirsty");
    const auto signs = signs_of(care);
    EXPECT_EQ(type_signs_for_coach(signs),
              "This does not fit the usual course (the diary says 'thirsty' on Sat 14 February "
              "2026). Ask the clinic whether the type has been checked.");
    EXPECT_EQ(type_signs_for_client(signs), "Please see your clinic soon.");
    EXPECT_EQ(type_signs_for_coach({}), "");
    EXPECT_EQ(type_signs_for_client({}), "");
    Care untold;
    untold.facts.told_type.clear();
    EXPECT_EQ(type_signs_for_client(signs_of(untold)), "");
    EXPECT_THAT(type_signs_for_coach(signs_of(untold)), testing::HasSubstr("not on record"));
}

// What is on record is not asked for, nobody is sent to the clinic twice, and what was agreed on
// eating less before does not go on.
TEST(TypeSigns, another_type_told_is_quoted_from_the_record_and_is_no_open_question) {
    Care care;
    care.facts.told_type = "Type 1";
    const auto signs = signs_of(care);
    ASSERT_EQ(signs.size(), 1U);
    EXPECT_EQ(type_signs_for_coach(signs),
              "This does not fit the usual course (on record as the type told is \"Type 1\"). Ask "
              "the clinic whether the type has been checked.");
    EXPECT_EQ(type_signs_for_client(signs), "");
    const auto gates = care.ask(
        [](const CareInput& in) { return gates_before_offer(Proposed::low_carbohydrate, {}, in); });
    ASSERT_EQ(gates.size(), 1U);
    EXPECT_FALSE(gates.front().open_question);
    const auto told = gates_for_coach(gates, Licence::none);
    EXPECT_EQ(told, std::vector{type_signs_for_coach(signs)});
    care.facts.told_type.clear();
    const auto open = care.ask(
        [](const CareInput& in) { return gates_before_offer(Proposed::low_carbohydrate, {}, in); });
    EXPECT_TRUE(open.front().open_question);
    EXPECT_EQ(gates_for_coach(open, Licence::none).front(),
              "It is not on record which type the client was told. Ask the client and the clinic.");
}

TEST(TypeSigns, what_counts_as_told_type_2) {
    for (const char* told : {"type 2", "Type 2 diabetes", "T2", "2", "type II", "prediabetes"}) {
        EXPECT_TRUE(told_type_2(told)) << told;
    }
    for (const char* told : {"", "type 1", "T1", "type 2?", "maybe type 2", "type 1.5",
                             "LADA, first told type 2", "type 2 after pancreatitis", "diabetes"}) {
        EXPECT_FALSE(told_type_2(told)) << told;
    }
}

}  // namespace
}  // namespace tracewright
