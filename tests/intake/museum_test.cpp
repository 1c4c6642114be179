// Every file that once was odd still gets an answer: rows with their fates, or an error with an
// address.
#include "intake/bring_in.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>

using namespace tracewright;

TEST(Museum, every_oddity_gets_an_answer) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(
             std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/museum")) {
        const Intake intake = bring_in(entry.path().string());
        const bool rows = intake.ledger.read() + intake.ledger.with(Fate::not_data) +
                              intake.ledger.with(Fate::question) >
                          0;
        EXPECT_TRUE(intake.error.has_value() || rows) << entry.path();
        if (intake.error) {
            EXPECT_FALSE(intake.error->found.empty()) << entry.path();
            EXPECT_FALSE(intake.error->expected.empty()) << entry.path();
        }
        ++files;
    }
    EXPECT_GE(files, 8);
}
