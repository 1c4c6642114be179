// Measures of the open data against figures computed apart from this project, and against those the
// authors printed. Sources: Zhao et al. 2023, Sci Data 10:35, 10.1038/s41597-023-01940-7; Alsuhaymi
// et al. 2025, 10.5281/zenodo.15169263. Both CC BY 4.0; the figures stand beside the data.
#include "intake/bring_in.hpp"
#include "intake/open_data.hpp"
#include "measures/measure_set.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/wear.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

using Figures = std::map<std::string, std::string>;

std::vector<Figures> table(const std::filesystem::path& path) {
    std::ifstream file(path);
    const auto cells = [](const std::string& line) {
        std::vector<std::string> parts;
        std::istringstream in(line);
        for (std::string part; std::getline(in, part, ',');) {
            parts.push_back(part.ends_with('\r') ? part.substr(0, part.size() - 1) : part);
        }
        return parts;
    };
    std::string line;
    std::getline(file, line);
    const auto titles = cells(line);
    std::vector<Figures> rows;
    while (std::getline(file, line)) {
        const auto values = cells(line);
        Figures& row = rows.emplace_back();
        for (std::size_t i = 0; i < values.size() && i < titles.size(); ++i) {
            row[titles[i]] = values[i];
        }
    }
    return rows;
}

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

double value(const Measures& measures, std::string_view name) {
    return find(measures, name)->value.value();
}

Measures measured(const std::vector<Reading>& readings, GlucoseUnit unit) {
    return measures_of(view_of(readings), ZoneHistory{Zone::floating()}, {unit, false, 1});
}

}  // namespace

// One sensor a wear, a strict grid of 15 minutes: weighing by time is the same as counting rows.
// The figures are printed to four decimals.
TEST(OpenDataMeasures, of_type_2_equal_the_figures_computed_apart) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto folder = open_data() / "shanghai_t2dm";
    int rows = 0;
    for (const Figures& row : table(folder / "reference/computed_independently.csv")) {
        const Intake intake = bring_in(folder / "glucose" / (row.at("record_id") + ".csv"));
        const Measures measures = measured(intake.readings, GlucoseUnit::mg_per_dl);
        const auto expect = [&](double ours, const char* column, double within) {
            EXPECT_NEAR(ours, std::stod(row.at(column)), within)
                << row.at("record_id") << " " << column;
        };
        expect(value(measures, "mean"), "mean_mg_dl", 0.00006);
        expect(value(measures, "sd"), "sd_mg_dl", 0.00006);
        expect(value(measures, "cv"), "cv_pct", 0.00006);
        expect(value(measures, "very_low"), "below_54_pct", 0.00006);
        expect(value(measures, "very_low") + value(measures, "low"), "below_70_pct", 0.00006);
        expect(value(measures, "in_range"), "from_70_to_180_pct", 0.00006);
        expect(value(measures, "high") + value(measures, "very_high"), "above_180_pct", 0.00006);
        expect(value(measures, "very_high"), "above_250_pct", 0.00006);
        expect(value(measures, "gmi"), "gmi_pct", 0.00006);
        ++rows;
    }
    EXPECT_EQ(rows, 15);
}

// The shares that the authors printed in their own analysis, all digits.
TEST(OpenDataMeasures, of_type_2_equal_what_the_authors_printed) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto folder = open_data() / "shanghai_t2dm";
    int printed = 0;
    for (const Figures& row : table(folder / "reference/printed_by_authors.csv")) {
        if (!row.contains("below_70_pct") || row.at("below_70_pct").empty()) {
            continue;
        }
        const Intake intake = bring_in(folder / "glucose" / (row.at("record_id") + ".csv"));
        const Measures measures = measured(intake.readings, GlucoseUnit::mg_per_dl);
        EXPECT_NEAR(value(measures, "very_low") + value(measures, "low"),
                    std::stod(row.at("below_70_pct")), 1e-9);
        EXPECT_NEAR(value(measures, "high") + value(measures, "very_high"),
                    std::stod(row.at("above_180_pct")), 1e-9);
        ++printed;
    }
    EXPECT_EQ(printed, 3);
}

// Scans between the regular readings: counting rows gives the reference, weighing by time differs,
// and by how much is bounded here. Each row given the same time counts as counting does.
TEST(OpenDataMeasures, with_scans_differ_from_counting_rows_by_what_the_scans_weigh) {
    SKIP_WITHOUT_OPEN_DATA();
    const auto folder = open_data() / "t1d_uom";
    for (const Figures& row : table(folder / "reference/computed_independently.csv")) {
        const Intake intake = bring_in(folder / row.at("participant") / "glucose.csv");
        std::vector<Reading> counted;
        for (const Reading& reading : intake.readings) {
            const Instant at =
                intake.readings.front().at + std::chrono::minutes{static_cast<int>(counted.size())};
            counted.emplace_back(at, reading.value(), std::chrono::minutes{1}, reading.limit());
        }
        const Measures by_rows = measured(counted, GlucoseUnit::mmol_per_l);
        EXPECT_NEAR(value(by_rows, "mean"), std::stod(row.at("mean_mmol_l")), 0.00006);
        EXPECT_NEAR(value(by_rows, "sd"), std::stod(row.at("sd_mmol_l")), 0.00006);
        EXPECT_NEAR(value(by_rows, "in_range"), std::stod(row.at("from_3_9_to_10_0_pct")), 0.00006);
        EXPECT_NEAR(value(by_rows, "very_low"), std::stod(row.at("below_3_0_pct")), 0.00006);
        EXPECT_NEAR(value(by_rows, "very_high"), std::stod(row.at("above_13_9_pct")), 0.00006);
        const Measures by_time = measured(intake.readings, GlucoseUnit::mmol_per_l);
        const double difference = std::abs(value(by_time, "in_range") - value(by_rows, "in_range"));
        EXPECT_GT(difference, 0.0001) << row.at("participant");
        EXPECT_LT(difference, 3.0) << row.at("participant");
    }
}
