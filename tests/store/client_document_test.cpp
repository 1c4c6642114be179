#include "store/client_document.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::HasSubstr;

TEST(ClientDocument, brings_back_a_prescribers_answer) {
    ClientFacts facts;
    const CivilDate on{std::chrono::days{20'500}};
    facts.prescriber_answers = {
        {AskedAbout::fasting, true, "Dr Larch", on, {}},
        {AskedAbout::diabetes_type, false, "Dr Larch", on, on + std::chrono::days{30}}};
    const std::string written = client_document(facts, -1);
    const auto read = client_facts_read(written);
    ASSERT_TRUE(read) << read.error();
    ASSERT_EQ(read->prescriber_answers.size(), 2U);
    EXPECT_EQ(read->prescriber_answers[0].about, AskedAbout::fasting);
    EXPECT_TRUE(read->prescriber_answers[0].agreed);
    EXPECT_EQ(read->prescriber_answers[1].by, "Dr Larch");
    EXPECT_EQ(read->prescriber_answers[1].valid_until, on + std::chrono::days{30});
    EXPECT_EQ(client_document(*read, -1), written);
}

TEST(ClientDocument, an_answer_needs_who_when_and_about_what) {
    for (const char* patch :
         {R"({"prescriber_answers": [{"about": "fasting", "agreed": true, "on": "2026-02-16"}]})",
          R"({"prescriber_answers": [{"about": "fasting", "agreed": true, "by": "Dr Larch"}]})",
          R"({"prescriber_answers": [{"agreed": true, "by": "Dr Larch", "on": "2026-02-16"}]})"}) {
        const auto changed = client_facts_changed({}, patch);
        ASSERT_FALSE(changed) << patch;
        EXPECT_THAT(changed.error(), HasSubstr("who answered"));
    }
}

TEST(ClientDocument, of_an_earlier_program_has_no_answers) {
    const auto read = client_facts_read(R"({"told_type": "type 2"})");
    ASSERT_TRUE(read);
    EXPECT_TRUE(read->prescriber_answers.empty());
}

}  // namespace
}  // namespace tracewright
