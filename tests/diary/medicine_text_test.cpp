#include "diary/medicine_text.hpp"
#include "diary/medicine_words.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace tracewright {
namespace {

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            cells.emplace_back();
        } else {
            cells.back() += c;
        }
    }
    return cells;
}

std::string joined_names(const MedicineText& text) {
    std::string names;
    for (const Medicine* medicine : text.recognised) {
        names += (names.empty() ? "" : ";") + medicine->name;
    }
    return names;
}

// Source: tests/data/medicine-text-checks.csv, invented wordings (each row says so).
TEST(MedicineText, every_row_of_the_check_table_is_read_as_it_says) {
    std::ifstream file(TRACEWRIGHT_SOURCE_FOLDER "/tests/data/medicine-text-checks.csv");
    std::string line;
    ASSERT_TRUE(std::getline(file, line));
    int rows = 0;
    while (std::getline(file, line)) {
        const auto cells = cells_of(line);
        ASSERT_EQ(cells.size(), 5U) << line;
        const MedicineText text = medicine_text(cells[0]);
        EXPECT_EQ(joined_names(text), cells[1]) << cells[0];
        EXPECT_EQ(text.unrecognised, cells[2] == "yes") << cells[0];
        EXPECT_STREQ(name_of(text.doing), cells[3].c_str()) << cells[0];
        ++rows;
    }
    EXPECT_EQ(rows, 40);
}

TEST(MedicineText, german_words_of_time_and_amount_are_no_medicines) {
    for (const char* written : {"Metformin 1000 mg 1-0-1", "Sitagliptin 100 mg morgens",
                                "Metformin 850 zweimal t\xC3\xA4glich zum Essen",
                                "Gliclazid 30 mg vor dem Fr\xC3\xBChst\xC3\xBC"
                                "ck"}) {
        const MedicineText text = medicine_text(written);
        EXPECT_FALSE(text.unrecognised) << written;
        EXPECT_EQ(text.recognised.size(), 1U) << written;
    }
    EXPECT_TRUE(medicine_text("Metformin und Zuckerpille abends").unrecognised);
    EXPECT_TRUE(medicine_text("Metformin abgesetzt").unrecognised);  // not guessed at: asked
}

TEST(MedicineText, silence_is_no_answer) {
    EXPECT_TRUE(medicine_text("").unrecognised);
    EXPECT_TRUE(medicine_text("  \n ").unrecognised);
    EXPECT_FALSE(medicine_text("none").unrecognised);
    EXPECT_TRUE(medicine_text("none").says_none);
    EXPECT_FALSE(medicine_text("none").says_none &&
                 medicine_text("none of the gliclazide").says_none);
}

// A dose is never a name, whatever its unit; capitals, accents and spaces don't matter.
TEST(MedicineText, amounts_capitals_and_spaces_change_nothing) {
    for (const char* written :
         {"METFORMIN", " metformin ", "metformin 1000mg x2", "Metformin, 1 g bd"}) {
        const MedicineText text = medicine_text(written);
        EXPECT_EQ(joined_names(text), "metformin") << written;
        EXPECT_FALSE(text.unrecognised) << written;
    }
}

TEST(MedicineText, a_near_miss_is_not_guessed_at) {
    for (const char* written : {"gliclaside", "metfornin", "Quorvilan 10", "insullin"}) {
        EXPECT_TRUE(medicine_text(written).unrecognised) << written;
        EXPECT_TRUE(medicine_text(written).recognised.empty()) << written;
    }
}

}  // namespace
}  // namespace tracewright
