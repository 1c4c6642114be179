// The practice on open research data (tests/data/README.md names them): does the guard against
// another client's file ask, and how many bytes does a reading take.
#include "intake/bring_in.hpp"
#include "intake/open_data.hpp"
#include "store/import_plan.hpp"
#include "store/trace_block.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

using namespace tracewright;
using namespace tracewright::testing;
namespace fs = std::filesystem;

namespace {

std::vector<std::vector<Reading>> persons(std::size_t most) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(open_data() / "shanghai_t2dm" / "glucose")) {
        files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    std::vector<std::vector<Reading>> all;
    IntakeOptions options;
    options.zones = ZoneHistory(Zone::floating());
    for (const fs::path& file : files) {
        Intake intake = bring_in(file.string(), options);
        if (!intake.error && intake.readings.size() > 500 && all.size() < most) {
            all.push_back(std::move(intake.readings));
        }
    }
    return all;
}

// The same clock, other dates: both begin on one day.
void shift_to_one_day(std::vector<Reading>& readings) {
    const auto first = std::chrono::floor<std::chrono::days>(readings.front().at);
    for (Reading& reading : readings) {
        reading.at -= first.time_since_epoch();
    }
}

}  // namespace

// Zhao et al. 2023, 'Chinese diabetes datasets for data-driven machine learning', Scientific Data
// 10:35, 10.1038/s41597-023-01940-7 (CC BY 4.0): each person's trace offered as another's.
TEST(OpenDataPractice, another_persons_trace_is_asked_about) {
    SKIP_WITHOUT_OPEN_DATA();
    auto all = persons(30);
    ASSERT_GE(all.size(), 10U);
    for (auto& readings : all) {
        shift_to_one_day(readings);
    }
    const auto never = [](const DiaryEntry&) { return false; };
    int asked = 0;
    int offered = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = 0; j < all.size(); ++j) {
            if (i == j) {
                continue;
            }
            KnownWear known{1, {}};
            known.wear.readings = all[i];
            known.wear.start = all[i].front().at;
            known.wear.interval = std::chrono::minutes{15};
            BroughtIn file;
            file.readings = all[j];
            file.rows_stored = all[j].size();
            ++offered;
            asked += import_plan(std::move(file), {&known, 1}, never).question ? 1 : 0;
        }
    }
    std::cout << "asked about " << asked << " of " << offered << " traces of other people\n";
    EXPECT_GE(asked, offered * 98 / 100);
}

TEST(OpenDataPractice, a_reading_takes_less_than_two_bytes) {
    SKIP_WITHOUT_OPEN_DATA();
    std::size_t bytes = 0;
    std::size_t count = 0;
    for (const auto& readings : persons(200)) {
        for (auto begin = readings.begin(); begin != readings.end();) {
            const UtcDay day = utc_day_of(begin->at);
            const auto end = std::find_if(begin, readings.end(), [&](const Reading& reading) {
                return utc_day_of(reading.at) != day;
            });
            bytes += trace_block(day, {begin, end}).size();
            count += static_cast<std::size_t>(end - begin);
            begin = end;
        }
    }
    ASSERT_GT(count, 0U);
    std::cout << static_cast<double>(bytes) / static_cast<double>(count) << " bytes a reading, "
              << count << " readings each 15 minutes\n";
    EXPECT_LT(bytes, 2 * count);
}
