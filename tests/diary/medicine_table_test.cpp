#include "diary/medicine_table.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace tracewright {
namespace {

TEST(MedicineTable, every_row_has_a_source_and_a_name_of_its_own) {
    std::set<std::string> names;
    for (const Medicine& medicine : medicine_table()) {
        EXPECT_TRUE(names.insert(medicine.name).second) << medicine.name;
        EXPECT_FALSE(medicine.source.empty()) << medicine.name;
        EXPECT_FALSE(medicine.medicine_class.empty()) << medicine.name;
    }
    EXPECT_GT(names.size(), 200U);
}

TEST(MedicineTable, every_spelling_and_every_part_leads_to_a_row) {
    for (const MedicineSpelling& spelling : medicine_spellings()) {
        EXPECT_NE(medicine_named(spelling.name), nullptr) << spelling.spelling;
    }
    for (const Medicine& medicine : medicine_table()) {
        EXPECT_EQ(parts_of(medicine).size(), std::max<std::size_t>(1, medicine.components.size()))
            << medicine.name;
    }
}

// Source: safety rule 1; classes by ATC (A10B: WHO Collaborating Centre for Drug Statistics
// Methodology, ATC index, from memory).
TEST(MedicineTable, sulfonylureas_glinides_and_insulins_can_cause_lows) {
    for (const Medicine& medicine : medicine_table()) {
        if (medicine.atc.starts_with("A10BB") || medicine.atc.starts_with("A10BX02") ||
            medicine.atc.starts_with("A10A")) {
            EXPECT_EQ(medicine.causes_lows, CausesLows::yes) << medicine.name;
            EXPECT_TRUE(medicine.is_insulin() || medicine.is_secretagogue()) << medicine.name;
        }
        if (medicine.atc.starts_with("A10BK")) {
            EXPECT_TRUE(medicine.sglt2) << medicine.name;
        }
    }
    EXPECT_TRUE(medicine_named("repaglinide")->is_secretagogue());
    EXPECT_TRUE(medicine_named("propranolol")->is_beta_blocker());
}

// Whatever a part can do, the combination can.
TEST(MedicineTable, a_combination_is_as_risky_as_its_parts) {
    for (const Medicine& medicine : medicine_table()) {
        for (const Medicine* part : parts_of(medicine)) {
            if (part->causes_lows == CausesLows::yes) {
                EXPECT_EQ(medicine.causes_lows, CausesLows::yes) << medicine.name;
            }
            if (part->sglt2) {
                EXPECT_TRUE(medicine.sglt2) << medicine.name;
            }
        }
    }
}

}  // namespace
}  // namespace tracewright
