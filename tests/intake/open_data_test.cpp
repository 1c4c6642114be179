// Every file of the open data comes in through the one door, every row accounted for.
// Sources: Zhao et al. 2023, Sci Data 10:35, 10.1038/s41597-023-01940-7; Alsuhaymi et al. 2025,
// 10.5281/zenodo.15169263. Both CC BY 4.0.
#include "intake/bring_in.hpp"

#include "intake/open_data.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>

using namespace tracewright;
using namespace tracewright::testing;
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> files_in(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(folder)) {
        files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

/// record -> first number column of a reference table.
std::map<std::string, std::uint64_t> counts_in(const fs::path& table) {
    std::map<std::string, std::uint64_t> counts;
    std::ifstream file(table);
    std::string line;
    std::getline(file, line);
    while (std::getline(file, line)) {
        std::istringstream cells(line);
        std::string record, count;
        std::getline(cells, record, ',');
        std::getline(cells, count, ',');
        counts[record] = std::stoull(count);
    }
    return counts;
}

std::uint64_t count_of(const Diary& diary, DiaryKind kind) {
    return static_cast<std::uint64_t>(std::count_if(
        diary.begin(), diary.end(), [&](const DiaryEntry& entry) { return entry.kind == kind; }));
}

void expect_whole(const Intake& intake) {
    EXPECT_FALSE(intake.error.has_value()) << intake.file << ": " << intake.error->sentence();
    EXPECT_TRUE(intake.questions.empty())
        << intake.file << ": " << intake.questions.front().sentence;
    EXPECT_EQ(intake.ledger.with(Fate::question), 0U) << intake.file;
    EXPECT_GT(intake.ledger.read(), 0U) << intake.file;
}

}  // namespace

TEST(OpenData, every_glucose_file_of_type_2_comes_in_whole) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto counts =
        counts_in(open_data() / "shanghai_t2dm/reference/computed_independently.csv");
    for (const auto& [record, count] : counts) {
        const Intake intake = bring_in(open_data() / "shanghai_t2dm/glucose" / (record + ".csv"));
        expect_whole(intake);
        EXPECT_EQ(intake.readings.size(), count) << record;
        EXPECT_EQ(intake.ledger.with(Fate::stored), count) << record;
        EXPECT_EQ(intake.unit, GlucoseUnit::mg_per_dl) << record;
    }
}

TEST(OpenData, every_glucose_file_in_mmol_comes_in_whole) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto counts = counts_in(open_data() / "t1d_uom/reference/computed_independently.csv");
    for (const auto& [person, count] : counts) {
        const Intake intake = bring_in(open_data() / "t1d_uom" / person / "glucose.csv");
        expect_whole(intake);
        EXPECT_EQ(intake.readings.size(), count) << person;
        EXPECT_EQ(intake.unit, GlucoseUnit::mmol_per_l) << person;
    }
}

TEST(OpenData, raw_spreadsheets_and_odd_encodings_give_the_same_as_their_plain_twins) {
    SKIP_WITHOUT_OPEN_DATA();
    for (const fs::path& raw : files_in(open_data() / "shanghai_t2dm/raw")) {
        const std::string name = raw.filename().string();
        const std::string record = name.substr(0, name.find_first_of("._", 7));
        std::string twin;
        for (const fs::path& plain : files_in(open_data() / "shanghai_t2dm/glucose")) {
            twin = name.starts_with(plain.stem().string()) ? plain.stem().string() : twin;
        }
        ASSERT_FALSE(twin.empty()) << name;
        const Intake from_raw = bring_in(raw);
        const Intake glucose = bring_in(open_data() / "shanghai_t2dm/glucose" / (twin + ".csv"));
        const Intake diary = bring_in(open_data() / "shanghai_t2dm/diary" / (twin + ".csv"));
        expect_whole(from_raw);
        expect_whole(diary);
        ASSERT_EQ(from_raw.readings.size(), glucose.readings.size()) << name;
        for (std::size_t i = 0; i < glucose.readings.size(); ++i) {
            EXPECT_EQ(from_raw.readings[i].value(), glucose.readings[i].value())
                << name << " " << i;
            // The plain twins round spreadsheet times to the second.
            EXPECT_LE(std::chrono::abs(from_raw.readings[i].at - glucose.readings[i].at),
                      std::chrono::seconds{60})
                << name << " " << i;
        }
        EXPECT_EQ(count_of(from_raw.diary, DiaryKind::meal), count_of(diary.diary, DiaryKind::meal))
            << name;
        EXPECT_EQ(count_of(from_raw.diary, DiaryKind::finger_prick),
                  count_of(diary.diary, DiaryKind::finger_prick))
            << name;
        EXPECT_EQ(count_of(from_raw.diary, DiaryKind::ketones),
                  count_of(diary.diary, DiaryKind::ketones))
            << name;
    }
}

TEST(OpenData, every_diary_file_comes_in_with_its_rows_accounted_for) {
    SKIP_WITHOUT_OPEN_DATA();
    for (const fs::path& file : files_in(open_data() / "shanghai_t2dm/diary")) {
        const Intake intake = bring_in(file);
        expect_whole(intake);
        EXPECT_EQ(intake.ledger.with(Fate::rejected), 0U) << file;
        EXPECT_GT(intake.diary.size(), 0U) << file;
    }
    for (const char* person : {"2306", "2401", "2405"}) {
        for (const fs::path& file : files_in(open_data() / "t1d_uom" / person)) {
            const Intake intake = bring_in(file);
            expect_whole(intake);
            EXPECT_EQ(intake.ledger.with(Fate::conflict), 0U) << file;
        }
    }
    for (const fs::path& file : files_in(open_data() / "t1d_uom/raw")) {
        expect_whole(bring_in(file));
    }
}

TEST(OpenData, meals_that_were_not_described_are_not_no_food) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto undescribed = [](const char* record) {
        const Intake intake = bring_in(open_data() / "shanghai_t2dm/diary" / record);
        return std::count_if(intake.diary.begin(), intake.diary.end(), [](const DiaryEntry& entry) {
            return entry.kind == DiaryKind::meal && entry.not_described;
        });
    };
    // Counts as stated with the data set.
    EXPECT_EQ(undescribed("2022_0_20210419.csv"), 21);
    EXPECT_EQ(undescribed("2014_0_20201224.csv"), 0);
    EXPECT_EQ(undescribed("2091_0_20201029.csv"), 0);
}
