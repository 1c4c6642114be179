#include "render/measure_words.hpp"

#include "findings/wording.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string_view>

namespace tracewright {

namespace {

struct Words {
    const char* name;  // what stands before the edges, where it has any
    const char* remark;
    const char* mg_per_dl = nullptr;  // its edges, in either unit
    const char* mmol_per_l = nullptr;
};

const std::map<std::string_view, Words>& words() {
    static const std::map<std::string_view, Words> table = {
        {"mean", {"Average", ""}},
        {"median", {"Median", ""}},
        {"sd", {"Standard deviation (SD)", ""}},
        {"cv", {"Coefficient of variation (CV)", "SD as a share of the average"}},
        {"gmi",
         {"Glucose management indicator (GMI)", "a label for the average, not a laboratory A1c"}},
        {"ea1c", {"A1c that goes with this average in a large study", "not a laboratory A1c"}},
        {"very_low", {"Very low: below ", "", "54", "3.0"}},
        {"low", {"Low: ", "", "54 to 69", "3.0 to 3.8"}},
        {"in_range", {"In range: ", "", "70 to 180", "3.9 to 10.0"}},
        {"high", {"High: ", "", "181 to 250", "10.1 to 13.9"}},
        {"very_high", {"Very high: above ", "", "250", "13.9"}},
        {"tight_range", {"", "no consensus goal", "70 to 140", "3.9 to 7.8"}},
        {"pregnancy_range",
         {"", "the range in pregnancy; its clinic leads", "63 to 140", "3.5 to 7.8"}},
        {"lbgi", {"Low blood glucose index (LBGI)", "sensor values lie below finger-prick ones"}},
        {"hbgi", {"High blood glucose index (HBGI)", ""}},
        {"gri",
         {"Glycaemia risk index (GRI)", "not validated without insulin; weights from memory"}},
        {"j_index", {"J-index", ""}},
        {"m_value", {"M-value, reference ", "from memory", "120", "6.7"}},
        {"grade", {"GRADE score, median", ""}},
        {"mage", {"Mean amplitude of excursions (MAGE)", "mean of days"}},
        {"modd", {"Mean of daily differences (MODD)", ""}},
        {"conga1", {"CONGA, 1 hour", ""}},
        {"conga2", {"CONGA, 2 hours", ""}},
        {"conga4", {"CONGA, 4 hours", ""}},
        {"adrr", {"Average daily risk range (ADRR)", "dense readings raise it"}},
        {"mag", {"Mean absolute change", ""}},
        {"gvp",
         {"Glycaemic variability percentage (GVP)", "compare like intervals only; from memory"}},
    };
    return table;
}

// "Low: 54 to 69 mg/dL (3.0 to 3.8)", the unit that the page shows first.
std::string name_in(const Words& words, GlucoseUnit shown) {
    if (words.mg_per_dl == nullptr) {
        return words.name;
    }
    const bool mg = shown == GlucoseUnit::mg_per_dl;
    return fmt::format("{}{} {} ({})", words.name, mg ? words.mg_per_dl : words.mmol_per_l,
                       name_of(shown), mg ? words.mmol_per_l : words.mg_per_dl);
}

std::string number(double value, const std::string& unit) {
    if (unit.starts_with("mg/dL")) {
        return fmt::format("{:.0f}", rounded_for_display(value, GlucoseUnit::mg_per_dl));
    }
    if (unit.starts_with("mmol/L")) {
        return fmt::format("{:.1f}", rounded_for_display(value, GlucoseUnit::mmol_per_l));
    }
    return std::abs(value) < 10 ? fmt::format("{:.1f}", value) : fmt::format("{:.0f}", value);
}

bool is_shown(std::string_view name, const Goals& goals) {
    constexpr std::array<std::string_view, 5> ranges_of_others{"low", "in_range", "high",
                                                               "very_high", "tight_range"};
    if (!shown_range(goals).in_pregnancy()) {
        return name != "pregnancy_range";
    }
    return std::find(ranges_of_others.begin(), ranges_of_others.end(), name) ==
           ranges_of_others.end();
}

std::string with_unit(const std::string& text, const std::string& unit) {
    return unit == "1" ? text : text + " " + unit;
}

}  // namespace

MeasureRow measure_row(const Measure& measure, GlucoseUnit shown) {
    const auto found = words().find(measure.name);
    MeasureRow row;
    row.name = found != words().end() ? name_in(found->second, shown) : std::string(measure.name);
    row.remark = found != words().end() ? found->second.remark : "";
    const bool share = measure.unit == "%" && measure.name != "cv" && measure.name != "gmi" &&
                       measure.name != "ea1c" && measure.name != "gvp";
    const auto told = [&](double value) {
        return share ? percent_words(value) : with_unit(number(value, measure.unit), measure.unit);
    };
    const auto between = [&](const std::array<double, 2>& ends) {
        const std::string from = told(ends[0]);
        // "under 0.1 %" keeps its unit.
        const bool bare = from.front() >= '0' && from.front() <= '9' && measure.unit != "1";
        return from_to_words(from, told(ends[1]), bare ? " " + measure.unit : "");
    };
    if (!measure.value) {
        row.value = "not given";
        row.interval = measure.absent_because;
        constexpr std::string_view promised = ": see bounds";
        if (measure.bounds && row.interval.ends_with(promised)) {
            row.interval.resize(row.interval.size() - promised.size());
            row.value = between(*measure.bounds);
        }
        return row;
    }
    row.value = told(*measure.value);
    row.interval =
        measure.interval95 ? between(*measure.interval95) : "none: " + measure.no_interval_because;
    row.days = std::to_string(measure.days);
    return row;
}

std::vector<std::vector<std::string>> measure_rows(const Measures& measures, const Goals& goals,
                                                   GlucoseUnit shown) {
    std::vector<std::vector<std::string>> rows;
    for (const Measure& measure : measures) {
        if (is_shown(measure.name, goals)) {
            const MeasureRow row = measure_row(measure, shown);
            rows.push_back({row.name, row.value, row.interval, row.days, row.remark});
        }
    }
    return rows;
}

std::string beyond_limit_sentence(const Measures& measures) {
    const auto censored = std::find_if(measures.begin(), measures.end(), [](const Measure& m) {
        return m.value && m.censored_share > 0;
    });
    return censored == measures.end()
               ? ""
               : fmt::format(
                     "For {} of the time glucose was beyond the sensor's limit and counts at "
                     "the limit; where that leaves a measure open by more than 1 %, what "
                     "it may be is given instead.",
                     percent_words(100 * censored->censored_share));
}

PartsTable parts_table(const std::vector<std::pair<std::string, Measures>>& parts,
                       const Goals& goals, GlucoseUnit unit) {
    std::vector<std::pair<const char*, std::string>> shown{
        {"mean", "average"},      {"very_low", "very low"}, {"low", "low"},
        {"in_range", "in range"}, {"high", "high"},         {"very_high", "very high"}};
    if (shown_range(goals).in_pregnancy()) {
        shown = {{"mean", "average"},
                 {"very_low", "very low"},
                 {"pregnancy_range", name_in(words().at("pregnancy_range"), unit)}};
    }
    PartsTable table;
    table.columns = {"part"};
    table.shares = {0.2};
    for (const auto& [name, title] : shown) {
        table.columns.emplace_back(title);
        table.shares.push_back(name == std::string_view("mean") ? 0.19 : 0.122);
    }
    for (const auto& [part, measures] : parts) {
        std::vector<std::string> row{part};
        for (const auto& [name, title] : shown) {
            const Measure* measure = find(measures, name);
            if (measure == nullptr) {
                row.emplace_back();
                continue;
            }
            const MeasureRow words = measure_row(*measure, GlucoseUnit::mg_per_dl);  // no name
            row.push_back(measure->value && measure->interval95
                              ? words.value + "\n" + words.interval
                              : words.value);
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace tracewright
