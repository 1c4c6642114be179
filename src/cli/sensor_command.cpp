#include "cli/change_commands.hpp"
#include "cli/json_text.hpp"
#include "coaching/sensor_record.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

Json json_of_record(const SensorRecord& record, const ReviewInput& input) {
    Json json = {{"version", sensor_json_version}, {"seed", input.seed}};
    json["wears"] = Json::array();
    for (const WearLine& wear : record.wears) {
        json["wears"].push_back({{"label", wear.label},
                                 {"from", iso_date(wear.from)},
                                 {"lasted_minutes", wear.lasted.count() / 60},
                                 {"end", words_for(wear.end)}});
    }
    json["still_working"] = Json::array();
    for (const SurvivalStep& step : record.life.steps) {
        json["still_working"].push_back({{"days", step.time},
                                         {"at_risk", step.at_risk},
                                         {"failed", step.failed},
                                         {"share", step.share},
                                         {"interval95", {step.interval95[0], step.interval95[1]}}});
    }
    const SensorAccuracy& found = record.accuracy;
    json["accuracy"] = {
        {"pairs", found.pairs},
        {"unit", "mg/dL"},
        {"bias", found.bias},
        {"mean_absolute", found.mean_absolute},
        {"mard", found.mard},
        {"median_ard", found.median_ard},
        {"within_15_20_30_40", found.agreeing},
        {"zones_a_to_e", found.zones},
        {"limits",
         found.limits ? Json{found.limits->limits[0], found.limits->limits[1]} : Json(nullptr)},
        {"drift_a_day", record.drift ? Json(record.drift->a_day) : Json(nullptr)},
        {"drift_interval95", record.drift
                                 ? Json{record.drift->interval95[0], record.drift->interval95[1]}
                                 : Json(nullptr)}};
    json["yardstick"] = Json::array();
    for (const YardstickResult& result : record.yardstick.results) {
        json["yardstick"].push_back({{"rule", std::string(1, result.rule.letter)},
                                     {"pairs", result.pairs},
                                     {"within", result.within},
                                     {"bound", result.bound},
                                     {"bound_above", result.rule.bound_above},
                                     {"met", result.met}});
    }
    json["findings"] = {json_of(record.life_finding), json_of(record.accuracy_finding)};
    return json;
}

}  // namespace

Exit sensor(const WhoseChange& whose, const Streams& streams) {
    const auto client = client_of_change(whose, "sensor_looked_at", streams);
    if (!client) {
        return client.error();
    }
    const SensorRecord record = sensor_record(client->input);
    if (whose.json) {
        streams.out << dumped(json_of_record(record, client->input));
        return client->exit;
    }
    for (const WearLine& wear : record.wears) {
        streams.out << fmt::format("{}  {:<8}  lasted {}, end: {}\n", iso_date(wear.from),
                                   wear.label, hours_and_minutes(wear.lasted), words_for(wear.end));
    }
    streams.out << "\n";
    print_finding(record.life_finding, streams.out);
    streams.out << "\n";
    print_finding(record.accuracy_finding, streams.out);
    return client->exit;
}

}  // namespace tracewright
