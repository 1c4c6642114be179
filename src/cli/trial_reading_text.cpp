#include "cli/json_text.hpp"
#include "cli/kept_trials.hpp"
#include "cli/sheet_commands.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "coaching/trial_offers.hpp"
#include "coaching/trial_report.hpp"

#include <array>
#include <ostream>

namespace tracewright {

namespace {

Json json_of_pairs(const PairsRead& read, bool by_lot) {
    const auto interval = [](const std::optional<std::array<double, 2>>& ends) {
        return ends ? Json{(*ends)[0], (*ends)[1]} : Json(nullptr);
    };
    return {{"pairs", read.pairs},
            {"estimate", read.estimate},
            {"interval95", interval(read.interval95)},
            {"t95", interval(read.t95)},
            {"p", by_lot ? Json(read.p) : Json(nullptr)},
            {"orders_as_far", by_lot ? Json(read.at_least) : Json(nullptr)},
            {"orders", by_lot ? Json(read.patterns) : Json(nullptr)}};
}

Json json_of_reading(const Trial& trial, const TrialReading& reading, const ReviewInput& input,
                     const std::vector<std::string>& gates) {
    constexpr std::array done = {"not_known", "a", "b", "neither"};
    Json days = Json::array();
    for (const TrialDay& day : reading.days) {
        days.push_back({{"date", iso_date(day.date)},
                        {"allotted", day.allotted_a ? "a" : "b"},
                        {"done", done.at(static_cast<std::size_t>(day.done))},
                        {"value", day.value ? Json(*day.value) : Json(nullptr)},
                        {"none_because", day.value ? Json(nullptr) : Json(day.none_because)}});
    }
    Json items = Json::array();
    for (const ReportItem& item : report_items(trial, reading, input)) {
        items.push_back({{"item", item.item}, {"text", item.text}});
    }
    return {
        {"gates", gates},
        {"ended", reading.ended},
        {"unit", facts_of(trial.outcome).unit == OutcomeUnit::hours ? "h" : "mg/dL"},
        {"days", days},
        {"as_allotted", reading.ended ? json_of_pairs(reading.as_allotted, true) : Json(nullptr)},
        {"as_done", reading.as_done ? json_of_pairs(*reading.as_done, false) : Json(nullptr)},
        {"finding", json_of(reading.finding)},
        {"report", items}};
}

}  // namespace

tl::expected<DoneOn, std::string> done_of(const TrialOptions& options) {
    DoneOn told;
    for (const std::string& text : options.done) {
        const auto equals = text.find('=');
        const std::string what = equals == std::string::npos ? "" : text.substr(equals + 1);
        const auto date = date_on_command_line(text.substr(0, equals));
        if (!date || (what != "a" && what != "b" && what != "neither")) {
            return tl::make_unexpected("found --done '" + text +
                                       "', expected DATE=a, DATE=b or DATE=neither");
        }
        told[*date] = what == "a" ? ArmDone::a : what == "b" ? ArmDone::b : ArmDone::neither;
    }
    return told;
}

void print_gates(const std::vector<Gate>& gates, Licence licence, std::ostream& out) {
    out << "Not offered now:\n";
    for (const std::string& sentence : gates_for_coach(gates, licence)) {
        out << "  - " << sentence << "\n";
    }
}

CareInput care_of(const ClientOfChange& client, const MedicineTimeline& medicines) {
    return {client.facts, client.input.wears, client.input.diary,
            medicines,    client.input.zones, client.input.as_of};
}

Exit with_paper(const Trial& trial, const TrialReading* reading, const ClientOfChange& client,
                const TrialOptions& options, const Streams& streams) {
    if (options.page.empty()) {
        return client.exit;
    }
    const Exit paper = write_trial_paper(trial, reading, client, options.page, streams);
    return paper == Exit::done ? client.exit : paper;
}

Exit tell_reading(const Trial& trial, TrialReading reading, const ClientOfChange& client,
                  ReadingForm form, const Streams& streams) {
    const MedicineTimeline medicines = client_medicines(client.facts, client.input.zones);
    const std::vector<Gate> gates = gates_before_trial_papers(trial, care_of(client, medicines));
    const bool told_why = withhold_offer(reading, gates, client.licence);
    if (form.json) {
        Json json = {{"version", trial_json_version}, {"plan", nullptr}};
        json["reading"] =
            json_of_reading(trial, reading, client.input, gates_for_coach(gates, client.licence));
        streams.out << dumped(json);
        return with_paper(trial, &reading, client, form.options, streams);
    }
    print_finding(reading.finding, streams.out);
    if (!gates.empty() && !told_why) {
        streams.out << "\n";
        print_gates(gates, client.licence, streams.out);
    }
    if (form.options.report) {
        streams.out << "\n";
        for (const ReportItem& item : report_items(trial, reading, client.input)) {
            streams.out << "  " << item.item << ": " << item.text << "\n";
        }
    }
    return with_paper(trial, &reading, client, form.options, streams);
}

}  // namespace tracewright
