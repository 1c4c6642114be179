#include "cli/json_schema.hpp"
#include "source_folder.hpp"
#include "store/client_document.hpp"

#include <gtest/gtest.h>

#include <fstream>

namespace tracewright {
namespace {

using nlohmann::json;

json schema() {
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) +
                       "/docs/formats/client-facts.schema.json");
    return json::parse(file);
}

ClientFacts full_facts() {
    const CivilDate day{std::chrono::days{20'500}};
    ClientFacts facts;
    facts.why_they_came = "Invented";
    facts.born_year = 1966;
    facts.diagnosed_on = day;
    facts.zones = {{"Europe/Berlin", {}}, {"Asia/Tokyo", WallTime{std::chrono::days{20'500}}}};
    facts.contacts = {{ContactKind::prescriber, "Dr Larch", "0"}};
    facts.medicines_asked_on = day;
    facts.medicines = {{"metformin", day, day}};
    facts.prescriber_answers = {{AskedAbout::walking, true, "Dr Larch", day, day}};
    facts.labs = {{day, "weight", 90.5, "kg"}};
    facts.cautions.eating = {day, "Dr Larch", Answered::yes};
    facts.cautions.last_eye_check = day;
    facts.goals_agreed_on = day;
    facts.consent = {day, "all", "the coach", day, day};
    facts.agreed_change = {"a walk",
                           day,
                           day + std::chrono::days{14},
                           "after dinner",
                           "park",
                           "five days",
                           "stairs instead",
                           "the next wear",
                           12,
                           "when unwell",
                           Proposed::walking};
    facts.earlier_changes = {*facts.agreed_change};
    facts.earlier_changes[0].outcome = ChangeOutcome::dropped;
    facts.earlier_changes[0].ended_on = day;
    return facts;
}

TEST(ClientFactsSchema, fits_the_facts_of_a_new_client_and_of_a_full_one) {
    for (const ClientFacts& facts : {ClientFacts{}, full_facts()}) {
        const json document = json::parse(client_document(facts));
        for (const std::string& misfit : testing::misfits(document, schema(), schema())) {
            ADD_FAILURE() << misfit;
        }
    }
}

TEST(ClientFactsSchema, refuses_a_key_or_a_word_of_no_meaning) {
    json document = json::parse(client_document(full_facts()));
    document["cautions"]["frail"] = "perhaps";
    EXPECT_EQ(testing::misfits(document, schema(), schema()).size(), 1U);
    document = json::parse(client_document(full_facts()));
    document["shoe_size"] = 42;
    EXPECT_EQ(testing::misfits(document, schema(), schema()).size(), 1U);
}

}  // namespace
}  // namespace tracewright
