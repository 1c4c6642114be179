#include "cli/change_commands.hpp"
#include "cli/json_text.hpp"
#include "cli/wear_command.hpp"
#include "coaching/sensor_record.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

std::vector<const Finding*> findings_of(const SensorRecord& record) {
    std::vector<const Finding*> findings = {&record.life_finding};
    for (const auto* split : {&record.by_overpatch, &record.by_site}) {
        if (*split) {
            findings.push_back(&(*split)->finding);
        }
    }
    findings.push_back(&record.accuracy_finding);
    return findings;
}

Json json_of(const LifeSplit& split) {
    Json json = {{"groups", Json::array()}, {"not_told", split.not_told}};
    for (const AlikeWears& group : split.groups) {
        json["groups"].push_back({{"what", group.what},
                                  {"wears", group.count},
                                  {"fell_off", group.fell_off},
                                  {"failed", group.sensor_failed}});
    }
    json["log_rank_p"] = split.test ? Json(split.test->p) : Json(nullptr);
    return json;
}

Json json_of_record(const SensorRecord& record, const ReviewInput& input) {
    Json json = {{"version", sensor_json_version}, {"seed", input.seed}};
    json["wears"] = Json::array();
    for (const WearLine& wear : record.wears) {
        json["wears"].push_back(
            {{"label", wear.label},
             {"from", iso_date(wear.from)},
             {"lasted_minutes", wear.lasted.count() / 60},
             {"end", words_for(wear.end)},
             {"overpatch", wear.fixing.overpatch ? Json(*wear.fixing.overpatch) : Json(nullptr)},
             {"site", wear.fixing.site}});
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
    json["by_overpatch"] = record.by_overpatch ? json_of(*record.by_overpatch) : Json(nullptr);
    json["by_site"] = record.by_site ? json_of(*record.by_site) : Json(nullptr);
    json["findings"] = Json::array();
    for (const Finding* finding : findings_of(record)) {
        json["findings"].push_back(json_of(*finding));
    }
    return json;
}

// How each wear of the input sat: told in a practice alone, where wears bear the same labels.
Stored<std::vector<WearFixing>> fixings_of(const ClientOfChange& client) {
    std::vector<WearFixing> fixings;
    if (!client.open) {
        return fixings;
    }
    const auto stored = client.open->store().wears(client.open->client);
    if (!stored) {
        return tl::make_unexpected(stored.error());
    }
    for (const Wear& wear : client.input.wears) {
        const auto same = std::ranges::find_if(
            *stored, [&](const StoredWear& one) { return one.wear.label == wear.label; });
        fixings.push_back(same == stored->end() ? WearFixing{} : same->fixing);
    }
    return fixings;
}

}  // namespace

Exit sensor(const WhoseChange& whose, const Streams& streams) {
    const auto client = client_of_change(whose, "sensor_looked_at", streams);
    if (!client) {
        return client.error();
    }
    const auto fixings = fixings_of(*client);
    if (!fixings) {
        return said(fixings.error(), streams);
    }
    const SensorRecord record = sensor_record(client->input, *fixings);
    if (whose.json) {
        streams.out << dumped(json_of_record(record, client->input));
        return client->exit;
    }
    for (const WearLine& wear : record.wears) {
        streams.out << fmt::format("{}  {:<8}  lasted {}, end: {}{}\n", iso_date(wear.from),
                                   wear.label, hours_and_minutes(wear.lasted), words_for(wear.end),
                                   fixing_words(wear.fixing));
    }
    for (const Finding* finding : findings_of(record)) {
        streams.out << "\n";
        print_finding(*finding, streams.out);
    }
    return client->exit;
}

}  // namespace tracewright
