#include "diary/medicine_timeline.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

namespace tracewright {
namespace {

// Names of the table, and words that are no medicine's.
std::vector<std::string> some_list() {
    const auto table = medicine_table();
    const auto picks = *rc::gen::container<std::vector<std::size_t>>(
        rc::gen::inRange<std::size_t>(0, table.size() + 20));
    std::vector<std::string> names;
    for (const std::size_t pick : picks) {
        names.push_back(pick < table.size() ? table[pick].name : "Quorvilan forte");
    }
    return names;
}

MedicineRisks risks_of_names(const std::vector<std::string>& names) {
    std::vector<MedicineText> texts;
    for (const std::string& name : names) {
        texts.push_back(medicine_text(name));
    }
    return risks_of(texts);
}

std::vector<bool> flags(const MedicineRisks& risks) {
    return {risks.can_cause_lows,    risks.sglt2,        risks.insulin,
            risks.secretagogue,      risks.beta_blocker, risks.misleads_sensor,
            risks.unusable_for_lows, !risks.answered};
}

// Fail towards care: nothing that is added to a list makes it less risky.
RC_GTEST_PROP(MedicineRisks, never_shrink_when_a_medicine_is_added, ()) {
    std::vector<std::string> list = some_list();
    RC_PRE(!list.empty());
    const auto before = flags(risks_of_names(list));
    const auto more = some_list();
    list.insert(list.end(), more.begin(), more.end());
    const auto after = flags(risks_of_names(list));
    for (std::size_t i = 0; i < before.size(); ++i) {
        RC_ASSERT(!before[i] || after[i]);
    }
}

RC_GTEST_PROP(MedicineRisks, do_not_depend_on_the_order_of_the_list, ()) {
    std::vector<std::string> list = some_list();
    const auto before = flags(risks_of_names(list));
    std::ranges::reverse(list);
    RC_ASSERT(flags(risks_of_names(list)) == before);
}

// A second way, over the rows themselves: yes or unknown in a row, or in one of its parts.
RC_GTEST_PROP(MedicineRisks, can_cause_lows_where_a_row_says_yes_or_unknown, ()) {
    const auto list = some_list();
    RC_PRE(!list.empty());
    bool can = false;
    for (const std::string& name : list) {
        const auto says = [](const std::string& of) {
            for (const Medicine& row : medicine_table()) {
                if (row.name == of) {
                    return row.causes_lows == CausesLows::yes ||
                           row.causes_lows == CausesLows::unknown;
                }
            }
            return true;
        };
        can = can || says(name);
        for (const Medicine& row : medicine_table()) {
            for (const std::string& part : row.components) {
                can = can || (row.name == name && says(part));
            }
        }
    }
    RC_ASSERT(risks_of_names(list).can_cause_lows == can);
}

// Misspelt by one letter left out: another name of the table, or not recognised; never the same.
TEST(MedicineText, a_name_with_a_letter_left_out_is_never_taken_for_it_unless_the_table_says_so) {
    for (const Medicine& medicine : medicine_table()) {
        for (std::size_t i = 0; i < medicine.name.size(); ++i) {
            std::string near = medicine.name;
            near.erase(i, 1);
            const bool known = std::ranges::any_of(
                medicine_spellings(),
                [&](const MedicineSpelling& one) { return one.spelling == near; });
            const bool letter = std::isalpha(static_cast<unsigned char>(medicine.name[i])) != 0;
            if (!letter || known || medicine.name.find_first_of(" ,-/") != std::string::npos) {
                continue;
            }
            const MedicineText text = medicine_text(near);
            EXPECT_TRUE(text.unrecognised) << near;
        }
    }
}

}  // namespace
}  // namespace tracewright
