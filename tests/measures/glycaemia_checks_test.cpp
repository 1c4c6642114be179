// Walks tests/data/glycaemia-checks.csv: every row is met, or is a named variant that the project's
// own measure must not give, or is listed with the test that meets it or why none does. Sources
// stand in the rows; rows marked 'memory' say so in the failure text.
#include "measures/check_table.hpp"
#include "measures/rows_elsewhere.hpp"

#include "inference/weighted_quantile.hpp"
#include "measures/day_sums.hpp"
#include "measures/episodes.hpp"
#include "measures/glucose_indicator.hpp"
#include "measures/mean_swing.hpp"
#include "measures/measure_set.hpp"
#include "measures/risk_index.hpp"
#include "measures/risk_summary.hpp"
#include "measures/simple_indices.hpp"
#include "measures/time_in_bands.hpp"
#include "source_folder.hpp"
#include "trace/readings_for_tests.hpp"
#include "units/a1c.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <functional>
#include <iostream>
#include <set>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

using Results = std::vector<std::string>;
const ZoneHistory floating{Zone::floating()};

std::string exact(double value) {
    return fmt::format("{}", value);
}

std::string decimals(double value, int places) {
    const double scale = std::pow(10, places);
    return fmt::format("{:.{}f}", std::floor(value * scale + 0.5 + 1e-9) / scale, places);
}

Results all(std::initializer_list<double> values) {
    Results results;
    for (const double v : values) {
        results.push_back(exact(v));
    }
    return results;
}

std::vector<Reading> readings_of(const std::vector<double>& values, std::chrono::seconds interval,
                                 GlucoseUnit unit = GlucoseUnit::mg_per_dl,
                                 Instant from = midnight) {
    std::vector<Reading> readings;
    for (const double v : values) {
        readings.emplace_back(from + interval * static_cast<int>(readings.size()),
                              Glucose{rounded_hundredths(v), unit}, interval);
    }
    return readings;
}

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

/// A measure of a few values, an interval apart, by the very code that the command runs.
double measured(const std::string& name, const std::vector<Reading>& readings,
                GlucoseUnit unit = GlucoseUnit::mg_per_dl) {
    const Measures measures = measures_of(view_of(readings), floating, {unit, false, 1});
    return find(measures, name)->value.value();
}

double of_series(const std::string& name, const CheckRow& row,
                 std::chrono::seconds interval = std::chrono::minutes{5}) {
    return measured(name, readings_of(row.list("mgdl"), interval));
}

std::string band_code(Band band) {
    constexpr std::array codes{"TBR2", "TBR1", "TIR", "TAR1", "TAR2"};
    return codes[static_cast<std::size_t>(band)];
}

Results bands_of(const std::vector<double>& values, GlucoseUnit unit) {
    Results results;
    for (const Reading& r : readings_of(values, std::chrono::minutes{5}, unit)) {
        results.push_back(band_code(band_of(r)));
    }
    return results;
}

std::vector<Reading> episode_readings(const CheckRow& row) {
    return readings_of(row.list("mgdl"),
                       std::chrono::minutes{static_cast<int>(row.number("interval_min"))});
}

Results episode(const CheckRow& row, EpisodeKind kind,
                EpisodeRules rules = EpisodeRules::consensus_2023) {
    const auto readings = episode_readings(row);
    for (const Episode& e : episodes_of(view_of(readings), rules)) {
        if (e.kind == kind) {
            const auto minutes = [](std::chrono::seconds s) {
                return static_cast<double>(s.count()) / 60;
            };
            return all({minutes(e.from - midnight), minutes(e.to - midnight), minutes(e.lasted),
                        e.extreme.value().value()});
        }
    }
    return {"none"};
}

Results symmetrised_and_risk(const CheckRow& row) {
    const double g = row.number("mgdl");
    // The rows at 20 and 600 show the formula's own value, before r is held to 100.
    return all({symmetrised(g), 10 * symmetrised(g) * symmetrised(g)});
}

double solved(const std::function<double(double)>& f, double low, double high) {
    for (int i = 0; i < 200; ++i) {
        const double middle = (low + high) / 2;
        ((f(low) < 0) == (f(middle) < 0) ? low : high) = middle;
    }
    return (low + high) / 2;
}

/// The constants from their conditions: f(hi) = -f(lo) = sqrt(10), f(h) = -f(l).
Results derived_constants(double lo, double l, double h, double hi) {
    const auto centre = [](double a, double b, double alpha) {
        return (std::pow(std::log(a), alpha) + std::pow(std::log(b), alpha)) / 2;
    };
    const double alpha =
        solved([&](double a) { return centre(lo, hi, a) - centre(l, h, a); }, 0.5, 2.0);
    const double beta = centre(lo, hi, alpha);
    return all({alpha, beta, std::sqrt(10.0) / (std::pow(std::log(hi), alpha) - beta)});
}

double fraction(const std::string& text) {
    const auto slash = text.find('/');
    return slash == std::string::npos
               ? std::stod(text)
               : std::stod(text.substr(0, slash)) / std::stod(text.substr(slash + 1));
}

std::vector<Reading> two_days(const CheckRow& row, std::chrono::seconds interval) {
    auto readings = readings_of(row.list("day1"), interval);
    const auto second = readings_of(row.list("day2"), interval, GlucoseUnit::mg_per_dl,
                                    midnight + std::chrono::days{1});
    readings.insert(readings.end(), second.begin(), second.end());
    return readings;
}

double quantile_of(const CheckRow& row, double p, QuantileType type) {
    return quantile(row.list("mgdl"), p, type);
}

Results percentiles(const CheckRow& row, QuantileType type) {
    return all({quantile_of(row, 0.05, type), quantile_of(row, 0.25, type),
                quantile_of(row, 0.5, type), quantile_of(row, 0.75, type),
                quantile_of(row, 0.95, type)});
}

Results own_percentiles(const CheckRow& row) {
    std::vector<Weighted> values;
    for (const double v : row.list("mgdl")) {
        values.push_back({v, 300});
    }
    constexpr std::array<double, 5> p{0.05, 0.25, 0.5, 0.75, 0.95};
    Results results;
    for (const double q : weighted_quantiles(values, p)) {
        results.push_back(exact(q));
    }
    return results;
}

double adrr_of(const CheckRow& row) {
    return measured("adrr", two_days(row, std::chrono::hours{6}));
}

Results gri_of(const CheckRow& row) {
    const auto pct = row.list("pct");
    const auto gri = glycaemia_risk_index(pct[0], pct[1], pct[3], pct[2]);
    return row.id == "gri-20" ? all({gri.index}) : all({gri.index, gri.low_part, gri.high_part});
}

Results zones_of(const CheckRow& row) {
    Results results;
    for (const double g : row.list("gri")) {
        results.emplace_back(1, glycaemia_risk_zone(g));
    }
    return results;
}

Results mage_of(const CheckRow& row) {
    const auto values = row.list("mgdl");
    const auto swing = mean_swing(values);
    return row.id == "mage-1"
               ? all({swing->sd, swing->first_direction})
               : all({swing->sd, swing->first_direction, *swing->up, *swing->down, swing->both});
}

Results pregnancy_bands(const CheckRow& row) {
    Results results;
    for (const Reading& r : readings_of(row.list("mgdl"), std::chrono::minutes{5})) {
        results.push_back(in_pregnancy_range(r)          ? "TIR"
                          : band_of(r) == Band::very_low ? "TBR2"
                          : r.hundredths() < 6300        ? "TBR1"
                                                         : "TAR");
    }
    return results;
}

Results hypo_levels(const CheckRow& row) {
    Results results;
    for (const Reading& r : readings_of(row.list("mgdl"), std::chrono::minutes{5})) {
        results.push_back(band_of(r) == Band::very_low ? "2"
                          : band_of(r) == Band::low    ? "1"
                                                       : "none");
    }
    return results;
}

int readings_needed(double interval_minutes) {
    const double possible = 14 * 24 * 60 / interval_minutes;
    return static_cast<int>(std::ceil(0.70 * possible - 1e-9));
}

using Handler = std::function<Results(const CheckRow&)>;

/// How each measure of the table is had from the project's own code.
const std::map<std::string, Handler>& handlers() {
    static const std::map<std::string, Handler> table = {
        {"convert_mgdl_to_mmoll",
         [](const CheckRow& r) {
             return all(
                 {converted(r.number("mgdl"), GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l)});
         }},
        {"convert_mmoll_to_mgdl",
         [](const CheckRow& r) {
             return all(
                 {converted(r.number("mmoll"), GlucoseUnit::mmol_per_l, GlucoseUnit::mg_per_dl)});
         }},
        {"display_mmoll_one_decimal",
         [](const CheckRow& r) {
             const double mmol =
                 converted(r.number("mgdl"), GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l);
             return Results{
                 fmt::format("{:.1f}", rounded_for_display(mmol, GlucoseUnit::mmol_per_l))};
         }},
        {"gmi_percent_1dp",
         [](const CheckRow& r) {
             return Results{
                 decimals(glucose_management_indicator(r.number("mean_mgdl")).percent, 1)};
         }},
        {"gmi_mmolmol_1dp",
         [](const CheckRow& r) {
             return Results{decimals(
                 glucose_management_indicator_ifcc(r.number("mean_mmoll")).mmol_per_mol, 1)};
         }},
        {"gmi_percent_raw",
         [](const CheckRow& r) {
             return all({glucose_management_indicator(r.number("mean_mgdl")).percent});
         }},
        {"gmi_percent_vs_ifcc_formula",
         [](const CheckRow& r) {
             // The paper's mmol/L mean of 150 mg/dL is 150 / 18.
             const double mean = r.number("mean_mgdl");
             return all(
                 {to_mmol_per_mol(glucose_management_indicator(mean)).mmol_per_mol,
                  glucose_management_indicator_ifcc(mean / mg_per_dl_in_mmol_per_l).mmol_per_mol});
         }},
        {"eag_mgdl_rounded_half_up",
         [](const CheckRow& r) {
             return Results{decimals(estimated_average_mg_per_dl({r.number("a1c_pct")}), 0)};
         }},
        {"eag_mmoll_printed (mg/dL regression / 18)",
         [](const CheckRow& r) {
             return Results{
                 decimals(estimated_average_printed_mmol_per_l({r.number("a1c_pct")}), 1)};
         }},
        {"a1c_from_mean_ADAG_inverse",
         [](const CheckRow& r) { return all({a1c_from_average(r.number("mean_mgdl")).percent}); }},
        {"mean_where_gmi_equals_adag",
         [](const CheckRow&) {
             return all({solved(
                 [](double g) {
                     return glucose_management_indicator(g).percent - a1c_from_average(g).percent;
                 },
                 100, 250)});
         }},
        {"ngsp_to_ifcc_rounded",
         [](const CheckRow& r) {
             return Results{decimals(to_mmol_per_mol({r.number("pct")}).mmol_per_mol, 0)};
         }},
        {"ifcc_to_ngsp_1dp",
         [](const CheckRow& r) {
             return Results{decimals(to_percent({r.number("mmolmol")}).percent, 1)};
         }},
        {"ifcc_to_ngsp_raw",
         [](const CheckRow& r) { return all({to_percent({r.number("mmolmol")}).percent}); }},
        {"band_mgdl",
         [](const CheckRow& r) { return bands_of(r.list("mgdl"), GlucoseUnit::mg_per_dl); }},
        {"band_mmoll",
         [](const CheckRow& r) { return bands_of(r.list("mmoll"), GlucoseUnit::mmol_per_l); }},
        {"band_native_unit_not_converted",
         [](const CheckRow& r) {
             const auto readings =
                 readings_of(r.list("mmoll"), std::chrono::minutes{5}, GlucoseUnit::mmol_per_l);
             return Results{band_code(band_of(readings[0])), band_code(band_of(readings[1])),
                            in_tight_range(readings[2]) ? "in 3.9-7.8" : "outside"};
         }},
        {"band_pregnancy_mgdl", pregnancy_bands},
        {"ada_hypo_level", hypo_levels},
        {"time_in_tight_range_pct",
         [](const CheckRow& r) { return all({of_series("tight_range", r)}); }},
        {"time_in_ranges_pct TBR2;TBR1;TIR;TAR1;TAR2",
         [](const CheckRow& r) {
             return all({of_series("very_low", r), of_series("low", r), of_series("in_range", r),
                         of_series("high", r), of_series("very_high", r)});
         }},
        {"readings_needed_70pct_of_14_days",
         [](const CheckRow& r) {
             return all({static_cast<double>(readings_needed(r.number("interval_min")))});
         }},
        {"days_fraction",
         [](const CheckRow& r) { return all({100 * r.number("days") / r.number("of")}); }},
        {"percent_of_day_to_minutes",
         [](const CheckRow& r) { return all({r.number("pct") / 100 * 1440}); }},
        {"mean_pooled;mean_of_daily_means",
         [](const CheckRow& r) {
             const auto readings = two_days(r, std::chrono::minutes{5});
             double by_days = 0;
             for (const DayOfTrace& day : days_of_trace(view_of(readings), floating)) {
                 by_days += day.sums.mean(GlucoseUnit::mg_per_dl) / 2;
             }
             return all({measured("mean", readings), by_days});
         }},
        {"hypo_event_level1 start;end;duration;nadir",
         [](const CheckRow& r) { return episode(r, EpisodeKind::low); }},
        {"hypo_event_level2_2023 start;end;duration;nadir",
         [](const CheckRow& r) { return episode(r, EpisodeKind::very_low); }},
        {"hypo_extended_2023",
         [](const CheckRow& r) {
             return Results{episode(r, EpisodeKind::extended_low).size() > 1 ? "yes" : "no"};
         }},
        {"sd_sample", [](const CheckRow& r) { return all({of_series("sd", r)}); }},
        {"cv_percent_sample_sd", [](const CheckRow& r) { return all({of_series("cv", r)}); }},
        {"j_index_mgdl", [](const CheckRow& r) { return all({of_series("j_index", r)}); }},
        {"j_index_mmoll",
         [](const CheckRow& r) {
             const auto readings =
                 readings_of(r.list("mmoll"), std::chrono::minutes{5}, GlucoseUnit::mmol_per_l);
             return all({j_index_mmol_per_l(measured("mean", readings, GlucoseUnit::mmol_per_l),
                                            measured("sd", readings, GlucoseUnit::mmol_per_l))});
         }},
        {"mage (section 3.3 rule; sample SD) sd;mage", mage_of},
        {"mage sd;first_direction;up;down;both", mage_of},
        {"modd",
         [](const CheckRow& r) {
             return all({measured("modd", two_days(r, std::chrono::hours{6}))});
         }},
        {"conga1 (sample SD of 1 h differences)",
         [](const CheckRow& r) {
             return all(
                 {measured("conga1", readings_of(r.list("hourly_mgdl"), std::chrono::hours{1}))});
         }},
        {"mean_absolute_glucose_change_per_hour",
         [](const CheckRow& r) {
             return all(
                 {measured("mag", readings_of(r.list("hourly_mgdl"), std::chrono::hours{1}))});
         }},
        {"kovatchev_constants alpha;beta;gamma",
         [](const CheckRow& r) {
             return derived_constants(fraction(r.text("lo")), fraction(r.text("l")),
                                      fraction(r.text("h")), fraction(r.text("hi")));
         }},
        {"kovatchev_constants_mmol alpha;beta;gamma",
         [](const CheckRow& r) {
             return derived_constants(fraction(r.text("lo")), fraction(r.text("l")),
                                      fraction(r.text("h")), fraction(r.text("hi")));
         }},
        {"kovatchev f;risk", symmetrised_and_risk},
        {"kovatchev_zero_risk",
         [](const CheckRow&) {
             const double mg = solved(symmetrised, 50, 300);
             return all({mg, solved(symmetrised_mmol_variant, 3, 15)});
         }},
        {"lbgi;hbgi;bgri",
         [](const CheckRow& r) {
             const double low = of_series("lbgi", r);
             const double high = of_series("hbgi", r);
             return all({low, high, low + high});
         }},
        {"adrr (two days for arithmetic only)",
         [](const CheckRow& r) { return all({adrr_of(r)}); }},
        {"gri vlow;low;vhigh;high -> gri;hypo;hyper", gri_of},
        {"gri_of_tir-20_series", gri_of},
        {"gri_zone", zones_of},
        {"gvp", [](const CheckRow& r) { return all({of_series("gvp", r)}); }},
        {"m_value ref=120 no range term;range term/20",
         [](const CheckRow& r) {
             const auto values = r.list("mgdl");
             return all(
                 {of_series("m_value", r), (*std::max_element(values.begin(), values.end()) -
                                            *std::min_element(values.begin(), values.end())) /
                                               20});
         }},
        {"m_value_single_reading ref=100;ref=120",
         [](const CheckRow& r) {
             return all({m_value_term(r.number("mgdl"), 100), m_value_term(r.number("mgdl"))});
         }},
        {"grade_single", [](const CheckRow& r) { return all({grade_score(r.number("mmoll"))}); }},
        {"rate_of_change",
         [](const CheckRow& r) {
             const auto t = r.list("t_min");
             const auto g = r.list("mgdl");
             return all({(g[1] - g[0]) / (t[1] - t[0])});
         }},
        {"rate_unit",
         [](const CheckRow& r) {
             return all({converted(r.number("mgdl_per_min"), GlucoseUnit::mg_per_dl,
                                   GlucoseUnit::mmol_per_l)});
         }},
        {"percentiles 5;25;50;75;95 Hyndman-Fan type 7", own_percentiles},
        {"percentiles 5;25;50;75;95 of 14 days type 7", own_percentiles},
        {"dawn_threshold",
         [](const CheckRow& r) {
             return all(
                 {converted(r.number("mgdl"), GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l)});
         }},
        {"lab_a1c_minus_gmi",
         [](const CheckRow& r) {
             return all(
                 {r.number("a1c") - glucose_management_indicator(r.number("mean_mgdl")).percent});
         }},
    };
    return table;
}

/// Variants met only when asked for by name, with what the project's own measure gives instead.
struct Variant {
    Handler variant;
    Handler own;
};

const std::map<std::string, Variant>& variants() {
    static const std::map<std::string, Variant> table = {
        {"agp-q6",
         {[](const CheckRow& r) { return percentiles(r, QuantileType::type6); }, own_percentiles}},
        {"agp-q8",
         {[](const CheckRow& r) { return percentiles(r, QuantileType::type8); }, own_percentiles}},
        {"agp14-q6",
         {[](const CheckRow& r) { return percentiles(r, QuantileType::type6); }, own_percentiles}},
        {"agp14-q8",
         {[](const CheckRow& r) { return percentiles(r, QuantileType::type8); }, own_percentiles}},
        {"sd-n",
         {[](const CheckRow& r) { return all({of_series("sd", r) * std::sqrt(4.0 / 5.0)}); },
          [](const CheckRow& r) { return all({of_series("sd", r)}); }}},
        {"hypo-l2-4-2017",
         {[](const CheckRow& r) {
              return episode(r, EpisodeKind::very_low, EpisodeRules::consensus_2017);
          },
          [](const CheckRow& r) { return episode(r, EpisodeKind::very_low); }}},
        {"lbgi-mm",
         {[](const CheckRow& r) {
              double low = 0;
              double high = 0;
              const auto values = r.list("mmoll");
              for (const double v : values) {
                  const double f = symmetrised_mmol_variant(v);
                  (f < 0 ? low : high) += 10 * f * f / static_cast<double>(values.size());
              }
              return all({low, high});
          },
          [](const CheckRow& r) {
              const auto readings =
                  readings_of(r.list("mmoll"), std::chrono::minutes{5}, GlucoseUnit::mmol_per_l);
              return all({measured("lbgi", readings), measured("hbgi", readings)});
          }}},
    };
    return table;
}

Variant regression_variant() {
    return {[](const CheckRow& r) { return all({1.59 * r.number("a1c_pct") - 2.59}); },
            [](const CheckRow& r) {
                return all({estimated_average_printed_mmol_per_l({r.number("a1c_pct")})});
            }};
}

Variant mmol_risk_variant() {
    return {[](const CheckRow& r) {
                const double f = symmetrised_mmol_variant(r.number("mmoll"));
                return all({f, 10 * f * f});
            },
            [](const CheckRow& r) {
                const double g = risk_scale_mg_per_dl(
                    {rounded_hundredths(r.number("mmoll")), GlucoseUnit::mmol_per_l});
                return all({symmetrised(g), 10 * symmetrised(g) * symmetrised(g)});
            }};
}

std::optional<Variant> variant_of(const CheckRow& row) {
    if (row.id.starts_with("eag-mmreg-")) {
        return regression_variant();
    }
    if (row.id.starts_with("kov-mm-")) {
        return mmol_risk_variant();
    }
    const auto found = variants().find(row.id);
    return found == variants().end() ? std::nullopt : std::optional{found->second};
}

bool is_number(const std::string& text) {
    char* end = nullptr;
    std::strtod(text.c_str(), &end);
    return !text.empty() && end == text.c_str() + text.size();
}

bool meets(const CheckRow& row, const Results& results) {
    const Results expected = row.expected_texts();
    if (results.size() != expected.size()) {
        return false;
    }
    for (std::size_t i = 0; i < expected.size(); ++i) {
        const bool as_numbers = is_number(expected[i]) && is_number(results[i]);
        const bool near = as_numbers && std::abs(std::stod(results[i]) - std::stod(expected[i])) <=
                                            row.within() + 1e-9 * std::abs(std::stod(expected[i]));
        if (!near && results[i] != expected[i]) {
            return false;
        }
    }
    return true;
}

std::string told(const CheckRow& row, const Results& results) {
    return fmt::format("{} expected {} got {} ({}; confirmed: {})", row.id, row.expected,
                       fmt::join(results, ";"), row.source, row.confirmed);
}

const std::vector<CheckRow>& rows() {
    static const auto all_rows =
        check_rows(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/data/glycaemia-checks.csv");
    return all_rows;
}

}  // namespace

TEST(GlycaemiaChecks, every_row_is_met_or_named_as_a_variant_or_listed_with_its_test) {
    int met = 0;
    int memory = 0;
    std::map<std::string, int> by_others;
    for (const CheckRow& row : rows()) {
        if (variant_of(row)) {
            continue;  // the next test
        }
        if (const auto handler = handlers().find(row.measure); handler != handlers().end()) {
            const Results results = handler->second(row);
            EXPECT_TRUE(meets(row, results)) << told(row, results);
            ++met;
            memory += row.confirmed == "memory" ? 1 : 0;
            continue;
        }
        const RowElsewhere* elsewhere = row_elsewhere(row.id);
        ASSERT_NE(elsewhere, nullptr)
            << row.id << " (" << row.measure << ") is neither met nor listed";
        ++by_others[elsewhere->test.empty() ? elsewhere->why : elsewhere->file];
    }
    std::cout << met << " rows met here, " << memory << " of them from memory\n";
    for (const auto& [where, count] : by_others) {
        std::cout << count << " rows: " << where << "\n";
    }
    EXPECT_GE(met, 150);
}

TEST(GlycaemiaChecks, named_variants_give_their_value_and_the_projects_own_measure_does_not) {
    std::set<std::string> seen;
    for (const CheckRow& row : rows()) {
        if (const auto variant = variant_of(row)) {
            const Results results = variant->variant(row);
            EXPECT_TRUE(meets(row, results)) << told(row, results);
            EXPECT_FALSE(meets(row, variant->own(row)))
                << row.id << ": the project's own must differ";
            seen.insert(row.id);
        }
    }
    EXPECT_EQ(seen.size(), 4U + 1 + 1 + 4 + 8 + 1);
}

// A row that another room's test meets would be met by nobody once that test is renamed or dropped.
TEST(GlycaemiaChecks, the_tests_that_meet_the_other_rows_are_there) {
    for (const RowElsewhere& elsewhere : rows_elsewhere()) {
        EXPECT_TRUE(
            std::any_of(rows().begin(), rows().end(),
                        [&](const CheckRow& row) { return row.id.starts_with(elsewhere.start); }))
            << "no row begins with " << elsewhere.start;
        EXPECT_NE(elsewhere.test.empty(), elsewhere.why.empty()) << elsewhere.start;
        if (elsewhere.test.empty()) {
            continue;
        }
        std::ifstream file(TRACEWRIGHT_SOURCE_FOLDER "/tests/" + elsewhere.file);
        const std::string text(std::istreambuf_iterator<char>(file), {});
        EXPECT_NE(text.find("TEST(" + elsewhere.test + ")"), std::string::npos)
            << elsewhere.start << ": no " << elsewhere.test << " in " << elsewhere.file;
        EXPECT_NE(text.find(elsewhere.names), std::string::npos)
            << elsewhere.file << " does not speak of " << elsewhere.names;
    }
}

TEST(GlycaemiaChecks, the_table_is_whole) {
    EXPECT_EQ(rows().size(), 243U);
    EXPECT_EQ(std::count_if(rows().begin(), rows().end(),
                            [](const CheckRow& row) { return row.confirmed == "memory"; }),
              39);
}
