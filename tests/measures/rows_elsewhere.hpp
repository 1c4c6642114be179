#pragma once

#include <string>
#include <vector>

namespace tracewright::testing {

/// Rows of tests/data/glycaemia-checks.csv that the walk over the measures does not meet.
struct RowElsewhere {
    std::string start;  ///< of the rows' ids
    std::string file;   ///< of tests/: where they are met
    std::string test;   ///< "Suite, name" of the test that meets them
    std::string names;  ///< what the file calls them by
    std::string why;    ///< why no test meets them; else empty
};

inline const std::vector<RowElsewhere>& rows_elsewhere() {
    static const std::vector<RowElsewhere> all = {
        {"iauc-", "responses/incremental_area_test.cpp",
         "IncrementalArea, every_row_of_the_check_table_is_met", "iauc-", ""},
        {"gi-", "diary/food_table_test.cpp", "FoodTable, index_and_load_meet_the_check_table",
         "gi-mixed", ""},
        {"gl-", "diary/food_table_test.cpp", "FoodTable, index_and_load_meet_the_check_table",
         "gl-1", ""},
        {"dawn-", "findings/question_findings_test.cpp",
         "OutcomeValues, twenty_or_more_is_a_dawn_rise", "dawn-1, dawn-2", ""},
        {"a1c-lin-", "coaching/expected_a1c_test.cpp",
         "RedCellMemory, months_by_lifespan_and_the_rule_of_thumb", "a1c-lin-106", ""},
        {"a1c-half", "coaching/expected_a1c_test.cpp",
         "RedCellMemory, months_by_lifespan_and_the_rule_of_thumb", "a1c-half", ""},
        {"a1c-tahara", "coaching/expected_a1c_test.cpp",
         "RedCellMemory, months_by_lifespan_and_the_rule_of_thumb", "a1c-tahara", ""},
        {"remission-", "coaching/remission_test.cpp", "Remission, rows_of_the_check_table",
         "remission-", ""},
        {"mard-", "measures/sensor_accuracy_test.cpp",
         "SensorAccuracy, mard_1_and_the_limits_beside_it", "mard-1", ""},
        {"ba-", "measures/sensor_accuracy_test.cpp",
         "SensorAccuracy, mard_1_and_the_limits_beside_it", "ba-1", ""},
        {"agree-", "measures/sensor_accuracy_test.cpp",
         "SensorAccuracy, agreement_by_the_cut_of_100_and_of_70", "agree-70", ""},
        {"lb-", "measures/sensor_accuracy_test.cpp", "ShareBounds, lb_rows_by_the_exact_bound",
         "lb-min-n", ""},
        {"icgm-", "measures/sensor_accuracy_test.cpp",
         "SensorYardstick, icgm_rules_are_those_of_the_table", "icgm-", ""},
        {"iso15197", "measures/sensor_accuracy_test.cpp",
         "SensorAccuracy, iso_15197_counts_the_edge_in", "iso15197", ""},
        {"parkes-", "measures/sensor_accuracy_test.cpp",
         "ErrorGrid, parkes_and_clarke_letters_of_the_table", "parkes-2", ""},
        {"clarke", "measures/sensor_accuracy_test.cpp",
         "ErrorGrid, parkes_and_clarke_letters_of_the_table", "clarke", ""},
        {"carb-ex", "", "", "", "not used: grams everywhere"},
        {"monnier-", "", "", "",
         "not offered: the share of meals needs every meal's time and an overnight basis of its "
         "own"},
        {"hgi-", "", "", "", "not used: lines fitted in other people, and the sign can flip"},
        {"dx-", "", "", "",
         "not offered: the tool never names a diagnosis (safety rules 7 and 14)"},
    };
    return all;
}

/// The entry of a row; null where none is listed.
inline const RowElsewhere* row_elsewhere(const std::string& id) {
    for (const RowElsewhere& entry : rows_elsewhere()) {
        if (id.starts_with(entry.start)) {
            return &entry;
        }
    }
    return nullptr;
}

}  // namespace tracewright::testing
