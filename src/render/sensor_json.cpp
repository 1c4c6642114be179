#include "render/sensor_json.hpp"

#include "time/day_text.hpp"

namespace tracewright {

namespace {

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

}  // namespace

Json json_of_sensor(const SensorRecord& record, const ReviewInput& input) {
    Json json = {{"version", sensor_json_version}, {"seed", input.seed}};
    json["wears"] = Json::array();
    for (const WearLine& wear : record.wears) {
        json["wears"].push_back(
            {{"label", wear.label},
             {"from", day_text(wear.from)},
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

}  // namespace tracewright
