// Laboratory results that are kept; invented. Which names count: own list, from memory.
#include "coaching/labs_not_read.hpp"

#include "coaching/a1c_results.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

constexpr CivilDate on{std::chrono::days{20'500}};

TEST(A1cResults, are_read_by_the_names_that_laboratories_give_them) {
    for (const char* what : {"A1c", "HbA1c", "HbA1c (lab)", "HbA1c (IFCC)", "hemoglobin a1c",
                             "Haemoglobin A1c", "Hb A1c", "glycated haemoglobin"}) {
        const LabResult lab{on, what, 6.6, "%"};
        EXPECT_EQ(a1c_results(std::span(&lab, 1)).size(), 1U) << what;
    }
    for (const char* what : {"estimated A1c", "A1c goal", ""}) {
        const LabResult lab{on, what, 6.6, "%"};
        EXPECT_TRUE(a1c_results(std::span(&lab, 1)).empty()) << what;
    }
}

TEST(LabsNotRead, are_told_as_they_were_written) {
    const std::vector<LabResult> labs{{on, "HbA1c", 44, "mmol/mol"},
                                      {on, "HbA1c", 44, "%"},
                                      {CivilDate{}, "HbA1c", 6.6, "%"},
                                      {on, "HbA1c", 6.6, ""},
                                      {on, "fasting glucose", 6, "mmol/L"},
                                      {on, "weight", 81, "kg"},
                                      {on, "LDL", 2.5, "mmol/L"}};
    const auto left = labs_not_read(labs);
    ASSERT_EQ(left.size(), 4U);
    EXPECT_EQ(lab_words(left[0]), "HbA1c 44 %");
    EXPECT_EQ(lab_words(left[1]), "HbA1c 6.6 %");
    EXPECT_EQ(lab_words(left[2]), "HbA1c 6.6");
    EXPECT_EQ(lab_words(left[3]), "LDL 2.5 mmol/L");
}

}  // namespace
}  // namespace tracewright
