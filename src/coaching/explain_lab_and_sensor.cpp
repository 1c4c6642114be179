#include "coaching/a1c_results.hpp"
#include "coaching/explaining_rules.hpp"
#include "coaching/lab_report.hpp"
#include "findings/wording.hpp"
#include "measures/glucose_indicator.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::size_t fewest_days = 10;
constexpr std::chrono::days near{28};  // both within four weeks; ours
constexpr int looks_back = 90;         // days, drawn

struct Beside {
    A1cResult lab;
    std::vector<DayMean> days;  ///< seen within `near` of it
};

// The latest result with enough days beside it.
std::optional<Beside> lab_beside_days(const Explaining& client) {
    const std::vector<A1cResult> labs = a1c_results(client.question.facts.labs);
    const std::vector<DayMean> all = day_means(client.question.input);
    for (auto lab = labs.rbegin(); lab != labs.rend(); ++lab) {
        std::vector<DayMean> days;
        std::ranges::copy_if(all, std::back_inserter(days), [&](const DayMean& day) {
            return std::chrono::abs(day.date - lab->on) <= near;
        });
        if (days.size() >= fewest_days) {
            return Beside{*lab, std::move(days)};
        }
    }
    return std::nullopt;
}

double percent_of(const Beside& beside) {
    double mean = 0;
    for (const DayMean& day : beside.days) {
        mean += day.mg_per_dl / static_cast<double>(beside.days.size());
    }
    return glucose_management_indicator(mean).percent;
}

// In the scale the laboratory reported.
std::string on_scale(const Beside& beside, double percent) {
    return beside.lab.in_mmol_per_mol
               ? fmt::format("{:.0f} mmol/mol", to_mmol_per_mol(A1cPercent{percent}).mmol_per_mol)
               : fmt::format("{:.1f} %", percent);
}

// "13 days, all of them after it": what lies after it the test can't look back on.
std::string days_words(const Beside& beside) {
    const auto after = std::ranges::count_if(
        beside.days, [&](const DayMean& day) { return day.date > beside.lab.on; });
    const auto all = static_cast<std::ptrdiff_t>(beside.days.size());
    return fmt::format("{} days{}", all,
                       after == 0     ? std::string()
                       : after == all ? std::string(", all of them after it: it can't know them")
                                      : fmt::format(", {} of them after it", after));
}

Illustration drawn_of(const Explaining& client, const Beside& beside) {
    Illustration drawn = client.illustration();
    const CivilDate zero = beside.lab.on;
    const auto x = [&](CivilDate date) { return static_cast<double>((date - zero).count()); };
    const double last = std::max(0.0, x(beside.days.back().date));
    drawn.from = -looks_back;
    drawn.to = last + 2;
    for (const int back : {90, 60, 30}) {
        drawn.ticks.push_back({-static_cast<double>(back), fmt::format("{} days before", back)});
    }
    drawn.ticks.push_back({0, "lab test"});
    IllustratedCurve dots{"one dot a day: the sensor's mean", IllustratedCurve::Look::dots, {{}}};
    for (const DayMean& day : beside.days) {
        dots.runs.front().push_back({x(day.date), client.record.shown(day.mg_per_dl)});
    }
    drawn.curves = {dots};
    drawn.wedge = "what the lab test looks back on";
    return drawn;
}

}  // namespace

ExplainingPage explain_lab_and_sensor(const Explaining& client) {
    if (a1c_results(client.question.facts.labs).empty()) {
        return no_page("no laboratory A1c is on record");
    }
    const auto beside = lab_beside_days(client);
    if (!beside) {
        return no_page("no laboratory A1c has 10 days of sensor within four weeks of it");
    }
    const double sensor = percent_of(*beside);
    const std::string lab_words = beside->lab.in_mmol_per_mol
                                      ? fmt::format("{:.0f} mmol/mol", beside->lab.reported)
                                      : fmt::format("{:.1f} %", beside->lab.reported);
    const std::string course =
        fmt::format("Your lab test (A1c) of {} says {}. Your sensor comes to {} on that scale.",
                    day_words(beside->lab.on, client.question.input.zones.writing()), lab_words,
                    on_scale(*beside, sensor));

    ExplainingPage page;
    page.illustration = drawn_of(client, *beside);
    page.illustration.alternative =
        fmt::format("{} The lab test looks back about three months. The sensor saw {}.", course,
                    days_words(*beside));

    Paper& paper = page.paper;
    say(paper, "The two look at different things. They need not agree.", true);
    say(paper, course);
    show_figure(paper);
    paper.blocks.emplace_back(PaperList{
        {fmt::format("The lab test looks back about three months, most of all on the last one. "
                     "Here your sensor saw {}.",
                     days_words(*beside)),
         "The lab test looks at sugar on red blood cells. How long these live differs from one "
         "person to the next.",
         "A sensor can read a bit high or a bit low."}});
    say(paper, "In one study, half of the visits had the two apart by half a point or more.");
    say(paper, "Your clinic goes by the lab test. Ask them if you wonder which one fits you.");
    name_sources(paper, {{"641 visits, of people most of whom did not have type 2",
                          "Perlman 2021, 10.1089/dia.2020.0501"}});
    for (const std::string& doubt : a1c_doubted_because(client.question.facts)) {
        page.to_know.push_back("The lab test may mislead here: " + doubt + ".");
    }
    page.chosen = fmt::format("A1c of {} beside {} days",
                              full_date(beside->lab.on, client.question.input.zones.writing()),
                              beside->days.size());
    return page;
}

}  // namespace tracewright
