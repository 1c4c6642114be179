// Every file of the practice comes in as any other file would, and every row is accounted for.
#include "client_files.hpp"
#include "clients/clients.hpp"
#include "intake/bring_in.hpp"
#include "practice_folder.hpp"

#include <gtest/gtest.h>

#include <unistd.h>
#include <filesystem>

using namespace tracewright;
namespace fs = std::filesystem;

namespace {

class ClientFiles : public ::testing::TestWithParam<std::size_t> {};

fs::path own_folder(const std::string& name) {
    const fs::path path = fs::temp_directory_path() / (name + "-" + std::to_string(::getpid()));
    fs::create_directories(path);
    return path;
}

Intake brought_in(const ClientFile& file, const ClientLife& life, const std::string& path) {
    IntakeOptions options;
    options.zones = life.zones;
    options.as_of = life.zones.resolve(story_today).first;
    if (!file.dialect.workbook) {
        return bring_in_bytes(file.bytes(), file.name, options);
    }
    EXPECT_TRUE(write_workbook(file.table, path));
    return bring_in(path, options);
}

std::string one_line_for_each(const Intake& intake) {
    std::string text;
    for (const RowNote& note : intake.ledger.notes()) {
        text += "\n" + std::to_string(note.line) + " " + note.code + " " + note.found;
        if (text.size() > 600) {
            break;
        }
    }
    for (const Question& question : intake.questions) {
        text += "\n? " + question.sentence;
    }
    return text;
}

// The readings that came in are those that the sensor made, at the same moments.
void expect_same_readings(const Intake& intake, const ClientFile& file, const LivedWear& wear) {
    ASSERT_EQ(intake.readings.size(), file.readings);
    auto made = wear.readings.begin();
    for (const Reading& reading : intake.readings) {
        made = std::find_if(made, wear.readings.end(),
                            [&](const SensorReading& other) { return other.at >= reading.at; });
        ASSERT_NE(made, wear.readings.end());
        ASSERT_EQ(made->at, reading.at);
        if (made->beyond == SensorReading::Beyond::no) {
            // Half of the last digit, which is a tenth of a mmol/L at its coarsest.
            EXPECT_NEAR(reading.value().in(GlucoseUnit::mg_per_dl), made->mg_per_dl, 0.91);
        } else {
            EXPECT_NE(reading.limit(), Limit::none);
        }
    }
}

}  // namespace

TEST_P(ClientFiles, come_in_with_every_row_accounted_for) {
    const ClientLife life = client_life(client_stories()[GetParam()], 1);
    const fs::path folder = own_folder("tracewright-demo-files");
    for (const ClientFile& file : client_files(life)) {
        const Intake intake = brought_in(file, life, (folder / file.name).string());
        const std::string what = life.story.key + " " + file.name + one_line_for_each(intake);
        ASSERT_FALSE(intake.error) << what << intake.error->sentence();
        EXPECT_TRUE(intake.questions.empty()) << what;
        const Ledger& ledger = intake.ledger;
        EXPECT_EQ(ledger.with(Fate::stored), file.readings + file.entries) << what;
        EXPECT_EQ(ledger.with(Fate::duplicate), file.repeated_rows) << what;
        EXPECT_EQ(ledger.with(Fate::rejected), file.unreadable_rows) << what;
        EXPECT_EQ(ledger.with(Fate::conflict), 0U) << what;
        EXPECT_EQ(ledger.read(), file.table.rows.size()) << what;
        EXPECT_GE(intake.diary.size(), file.entries) << what;
        if (!file.wear.empty()) {
            for (const LivedWear& wear : life.wears) {
                if (wear.plan.label == file.wear) {
                    EXPECT_EQ(intake.unit, wear.plan.kind.unit) << what;
                    expect_same_readings(intake, file, wear);
                }
            }
        }
    }
    fs::remove_all(folder);
}

INSTANTIATE_TEST_SUITE_P(OfEachClient, ClientFiles, ::testing::Range<std::size_t>(0, 12),
                         [](const auto& which) { return client_stories()[which.param].key; });

TEST(ClientFilesOfAll, bear_the_mark_invented_in_name_or_title) {
    for (const ClientStory& story : client_stories()) {
        EXPECT_NE(story.name.find("(invented)"), std::string::npos);
        for (const ClientFile& file : client_files(client_life(story, 1))) {
            EXPECT_TRUE(file.name.starts_with("invented-"));
            if (file.dialect.title_rows) {
                EXPECT_TRUE(file.table.titles.front().starts_with("Invented"));
            }
        }
    }
}

TEST(ClientFilesOfAll, come_in_many_dialects) {
    std::set<char> delimiters;
    std::set<DateStyle> dates;
    std::set<FileEncoding> encodings;
    std::set<long> intervals;
    std::set<GlucoseUnit> units;
    int workbooks = 0, newest_first = 0, commas = 0, within = 0;
    for (const ClientStory& story : client_stories()) {
        for (const WearPlan& wear : story.wears) {
            delimiters.insert(wear.dialect.delimiter);
            dates.insert(wear.dialect.date_style);
            encodings.insert(wear.dialect.encoding);
            intervals.insert(wear.kind.interval.count());
            units.insert(wear.kind.unit);
            workbooks += wear.dialect.workbook ? 1 : 0;
            newest_first += wear.dialect.newest_first ? 1 : 0;
            commas += wear.dialect.decimal_comma ? 1 : 0;
            within += wear.diary_within ? 1 : 0;
        }
    }
    EXPECT_EQ(delimiters.size(), 4U);
    EXPECT_EQ(dates.size(), 4U);
    EXPECT_EQ(encodings.size(), 4U);
    EXPECT_EQ(intervals, (std::set<long>{1, 5, 15}));
    EXPECT_EQ(units.size(), 2U);
    EXPECT_GT(workbooks, 0);
    EXPECT_GT(newest_first, 0);
    EXPECT_GT(commas, 0);
    EXPECT_GT(within, 0);
}
