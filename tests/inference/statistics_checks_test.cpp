// Walks every row of tests/data/statistics-checks.csv: each is either met by a test that names it
// by its id, or listed here with the room that will need it. Sources stand in the table.
#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace {

const std::string root = TRACEWRIGHT_SOURCE_FOLDER;

std::string content_of(const std::filesystem::path& path) {
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<std::string> ids() {
    std::ifstream file(root + "/tests/data/statistics-checks.csv");
    std::vector<std::string> found;
    std::string line;
    std::getline(file, line);  // header
    while (std::getline(file, line)) {
        found.push_back(line.substr(0, line.find(',')));
    }
    return found;
}

// The tests' text, this file's own left out.
std::string tests_text() {
    std::string text;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root + "/tests")) {
        const bool test = entry.path().extension() == ".cpp";
        if (test && entry.path().filename() != "statistics_checks_test.cpp") {
            text += content_of(entry.path());
        }
    }
    return text;
}

// Rows of methods that no room has yet: ids, or starts of ids that end in '-'.
const std::map<std::string, std::string>& later() {
    static const std::map<std::string, std::string> table = {
        {"reg-05", "likelihood and not restricted likelihood: not used"},
        {"reg-07", "plug-in correlation: not used"},
        {"reg-09", "second-order correlation: not used"},
        {"hac-", "second opinion for 28 nights and more"},
        {"night-04", "second opinion for 28 nights and more"},
        {"fixedb-", "second opinion for 28 nights and more"},
        {"ewc-", "second opinion for 28 nights and more"},
        {"mult-03", "for p values that lean on each other in any way: not used"},
        {"rand-02", "two groups of trial days: not used"},
        {"rand-04", "two groups of trial days: not used"},
        {"boot-04", "facts of a series, no method"},
        {"boot-05", "jackknife: not used"},
        {"bl-", "block lengths within a day: not used"},
        {"eq-", "before and after"},
        {"js-", "one spread for all, plugged in: not used"},
        {"lmm-", "one-way means and slopes by group: not used"},
        {"kf-", "state space form: not used"},
        {"q-01", "quantile types the project does not name"},
        {"q-02", "quantile types the project does not name"},
        {"q-03", "quantile types the project does not name"},
        {"q-04", "quantile types the project does not name"},
        {"q-05", "quantile types the project does not name"},
        {"q-09", "quantile types the project does not name"},
        {"cos-", "harmonic fit: not used"},
        {"rob-01", "few pairs: trials"},
        {"rob-02", "few pairs: trials"},
        {"rob-04", "marks of single readings: trace has its own rules"},
        {"cp-", "change of level"},
    };
    return table;
}

std::string later_because(const std::string& id) {
    for (const auto& [start, why] : later()) {
        if (id == start || (start.ends_with('-') && id.starts_with(start))) {
            return why;
        }
    }
    return {};
}

}  // namespace

TEST(StatisticsChecks, every_row_is_named_by_a_test_or_listed_as_later) {
    const std::string text = tests_text();
    std::map<std::string, int> for_later;
    int met = 0;
    for (const std::string& id : ids()) {
        const std::string why = later_because(id);
        const bool named = text.find(id) != std::string::npos;
        EXPECT_NE(named, !why.empty())
            << id << (named ? " is met and listed as later" : " is neither met nor listed");
        met += named ? 1 : 0;
        for_later[why] += named ? 0 : 1;
    }
    std::cout << met << " rows met\n";
    for (const auto& [why, count] : for_later) {
        if (count > 0) {
            std::cout << count << " rows later: " << why << "\n";
        }
    }
}

TEST(StatisticsChecks, no_entry_of_the_later_list_is_idle) {
    for (const auto& [start, why] : later()) {
        const auto all = ids();
        EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const std::string& id) {
            return id == start || (start.ends_with('-') && id.starts_with(start));
        })) << start;
    }
}
