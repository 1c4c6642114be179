// The check table of the statistics: a row is a test by its id, or stands here with why not.
#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;
const fs::path source = TRACEWRIGHT_SOURCE_FOLDER;

// By the beginning of the id.
const std::map<std::string, std::string> not_used = {
    {"hac-", "Newey-West errors are not used: too small at 14 to 28 nights"},
    {"fixedb-", "as Newey-West"},
    {"ewc-", "the cosine test is not used: the grid posterior answers"},
    {"bl-", "whole days are resampled: no block length is estimated"},
    {"js-", "shrinkage integrates the spread on a grid instead of James and Stein's rule"},
    {"lmm-", "no mixed model by REML is used: one client at a time, spread on a grid"},
    {"kf-", "no Kalman filter is used: the baseline of the overlap model is harmonic"},
    {"cos-", "no single-harmonic fit is reported"},
    {"cp-", "no change-point is told"},
    {"eq-", "'no difference' is told by the posterior, not by two one-sided tests"},
};

std::string contents(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

}  // namespace

TEST(CheckTable, every_row_is_a_test_or_stands_here_with_why_not) {
    std::string tests;
    for (const auto& entry : fs::recursive_directory_iterator(source / "tests")) {
        const bool this_one = entry.path().filename() == "check_table_test.cpp";
        if (entry.path().extension() == ".cpp" && !this_one) {
            tests += contents(entry.path());
        }
    }
    std::istringstream table(contents(source / "tests/data/statistics-checks.csv"));
    std::string line;
    std::getline(table, line);  // titles
    int tested = 0;
    std::map<std::string, int> reasons_used;
    while (std::getline(table, line)) {
        const std::string id = line.substr(0, line.find(','));
        const auto reason = not_used.find(id.substr(0, id.find('-') + 1));
        if (tests.find(id) != std::string::npos) {
            ++tested;
        } else if (reason != not_used.end()) {
            ++reasons_used[reason->first];
        } else {
            ADD_FAILURE() << id << " is neither a test nor listed as not used";
        }
    }
    EXPECT_GE(tested, 70);
    EXPECT_EQ(reasons_used.size(), not_used.size()) << "a method listed as unused is tested";
}
