// Rows remission-1 to remission-7: Riddle et al. 2021, 10.2337/dci21-0034.
#include "coaching/remission.hpp"

#include "coaching/care_for_tests.hpp"
#include "measures/check_table.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

using namespace std::chrono_literals;
using std::chrono::days;

CivilDate on(int month, int day) {
    return std::chrono::local_days{std::chrono::year{2026} / month / day};
}

/// A client who stopped metformin on 15 January 2026.
ClientFacts stopped() {
    ClientFacts facts;
    facts.medicines_asked_on = on(1, 20);
    facts.medicines = {{"metformin 500", {}, on(1, 15)}};
    return facts;
}

std::string word_for(RemissionState state) {
    return state == RemissionState::meets     ? "yes"
           : state == RemissionState::not_yet ? "not yet"
                                              : "no";
}

}  // namespace

TEST(Remission, rows_of_the_check_table) {
    int seen = 0;
    for (const CheckRow& row :
         check_rows(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/data/glycaemia-checks.csv")) {
        if (!row.id.starts_with("remission-")) {
            continue;
        }
        ++seen;
        const auto has = [&](const char* name) {
            return ("|" + row.input).find("|" + std::string(name) + "=") != std::string::npos;
        };
        ClientFacts facts = stopped();
        CivilDate today = on(6, 1);
        if (has("days_since_stop")) {
            today = on(1, 15) + days{static_cast<int>(row.number("days_since_stop"))};
        }
        if (has("on_drug")) {
            facts.medicines[0].until.reset();
        }
        if (has("a1c")) {
            facts.labs.push_back({today, "HbA1c", row.number("a1c"), "%"});
        }
        if (has("a1c_unreliable")) {
            facts.cautions.others = "anaemia";
            facts.labs.push_back({today, "HbA1c", 5.5, "%"});  // must not count
        }
        if (has("fpg_mgdl")) {
            facts.labs.push_back({today, "fasting glucose", row.number("fpg_mgdl"), "mg/dL"});
        }
        std::optional<SensorEstimate> sensor;
        if (has("ea1c")) {
            sensor = SensorEstimate{today, row.number("ea1c")};
        }
        const RemissionInput input{facts, today, {}, {}, sensor};
        EXPECT_EQ(word_for(remission_check(input).state), row.expected) << row.id;
    }
    EXPECT_EQ(seen, 7);
}

TEST(Remission, is_exact_to_the_day) {
    ClientFacts facts = stopped();
    facts.labs = {{on(4, 10), "HbA1c", 6.3, "%"}};
    const RemissionInput early{facts, on(4, 14), {}, {}, {}};
    const RemissionCheck not_yet = remission_check(early);
    EXPECT_EQ(not_yet.state, RemissionState::not_yet);
    EXPECT_EQ(not_yet.earliest, on(4, 15));
    EXPECT_NE(remission_finding(not_yet, early).sentence.find("Wed 15 April 2026"),
              std::string::npos);
    facts.labs.push_back({on(4, 16), "HbA1c", 45, "mmol/mol"});
    const RemissionInput met{facts, on(4, 16), {}, {}, {}};
    const RemissionCheck found = remission_check(met);
    EXPECT_EQ(found.state, RemissionState::meets);
    EXPECT_EQ(found.test_next, on(4, 16) + days{365});
    facts.labs.back().on = on(4, 15);
    EXPECT_EQ(remission_check({facts, on(4, 15), {}, {}, {}}).state, RemissionState::meets);
    facts.labs.back().on = on(4, 14);
    EXPECT_EQ(remission_check({facts, on(5, 1), {}, {}, {}}).state, RemissionState::not_yet);
}

TEST(Remission, waits_for_the_latest_of_medicine_diet_and_surgery) {
    ClientFacts facts = stopped();
    facts.labs = {{on(5, 1), "HbA1c", 6.0, "%"}};
    const RemissionCheck diet = remission_check({facts, on(5, 2), on(1, 1), {}, {}});
    EXPECT_EQ(diet.state, RemissionState::not_yet);
    EXPECT_EQ(diet.earliest, on(1, 1) + days{180});
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, on(2, 20), {}}).earliest, on(2, 20) + days{90});
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, on(1, 2), {}}).state, RemissionState::meets);
}

TEST(Remission, any_medicine_that_lowers_glucose_blocks_and_what_was_not_asked_blocks_too) {
    ClientFacts facts = stopped();
    facts.labs = {{on(5, 1), "HbA1c", 6.0, "%"}};
    facts.medicines.push_back({"semaglutide 1 mg weekly", on(2, 1), {}});  // taken for weight
    const RemissionInput weight{facts, on(5, 2), {}, {}, {}};
    EXPECT_EQ(remission_check(weight).state, RemissionState::on_medicine);
    EXPECT_NE(remission_finding(remission_check(weight), weight).sentence.find("semaglutide"),
              std::string::npos);
    facts.medicines.back() = {"ramipril 5 mg", {}, {}};
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::meets);
    facts.medicines.back() = {"the white one", {}, {}};
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::medicines_open);
    facts.medicines.pop_back();
    facts.medicines_asked_on.reset();
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::medicines_open);
}

TEST(Remission, six_point_five_and_forty_eight_are_not_under_the_limit) {
    ClientFacts facts = stopped();
    facts.labs = {{on(5, 1), "HbA1c", 48, "mmol/mol"}};
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::too_high);
    facts.labs = {{on(5, 1), "HbA1c", 6.5, "%"}};
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::too_high);
    // The last result decides, also where an earlier one was under.
    facts.labs = {{on(4, 20), "HbA1c", 6.2, "%"}, {on(5, 1), "HbA1c", 6.7, "%"}};
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::too_high);
    facts.labs.clear();
    EXPECT_EQ(remission_check({facts, on(5, 2), {}, {}, {}}).state, RemissionState::no_result);
}

TEST(Remission, no_text_says_is_in_remission_or_cured) {
    for (const bool doubted : {false, true}) {
        for (const double value : {6.0, 7.0}) {
            for (const int month : {2, 6}) {
                ClientFacts facts = stopped();
                facts.cautions.others = doubted ? "transfusion in May" : "";
                facts.labs = {{on(month, 1), "HbA1c", value, "%"}};
                const RemissionInput input{facts, on(month, 2), {}, {}, {}};
                const Finding finding = remission_finding(remission_check(input), input);
                const std::string all =
                    finding.sentence + finding.client_sentence + finding.next.sentence;
                for (const char* word : {"cured", "in remission", "safe", "fine", "no lows"}) {
                    EXPECT_EQ(all.find(word), std::string::npos) << all;
                }
                if (doubted) {
                    EXPECT_NE(all.find("fasting glucose under 126"), std::string::npos);
                }
            }
        }
    }
}
