#include "findings/wording.hpp"
#include "render/sensor_json.hpp"
#include "serve/asked_number.hpp"
#include "serve/asked_record.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "store/fixings_of_wears.hpp"
#include "trace/wear_end_names.hpp"

#include <algorithm>

namespace tracewright {

namespace {

Json json_of(const Supply& supply) {
    // More used than bought was told wrongly somewhere: nothing is left, and both numbers show it.
    return {{"bought", supply.bought},
            {"used", supply.used},
            {"left", std::max(0, supply.bought - supply.used)}};
}

// With the words of each wear, for those who compute nothing.
Reply sensor_reply(Asked& asked) {
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return record.error();
    }
    const auto fixings = fixings_of(asked.store, asked.client->id, record->input.wears);
    if (!fixings) {
        return problem_of(fixings.error());
    }
    const SensorRecord found = sensor_record(record->input, *fixings);
    Json json = json_of_sensor(found, record->input);
    // A wear without a reading has a number and no line.
    std::size_t line = 0;
    for (std::size_t i = 0; i < record->input.wears.size(); ++i) {
        if (!record->input.wears[i].empty()) {
            json["wears"][line++]["number"] = i + 1;
        }
    }
    for (std::size_t i = 0; i < found.wears.size(); ++i) {
        json["wears"][i]["end_called"] = name_of(found.wears[i].end);
        json["wears"][i]["from_words"] =
            full_date(found.wears[i].from, record->input.zones.writing());
        json["wears"][i]["lasted_words"] = hours_and_minutes(found.wears[i].lasted);
    }
    json["supplies"] = {{"sensors", json_of(record->facts.sensors)},
                        {"sessions", json_of(record->facts.sessions)}};
    json["last_reading"] = json_of_last_reading(record->input);
    return json_reply(json);
}

Reply tell_wear_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"end", "overpatch", "site"});
    if (!fields) {
        return fields.error();
    }
    const auto end = wear_end_called(fields->at("end"));
    const std::string& overpatch = fields->at("overpatch");
    if (!end || (overpatch != "yes" && overpatch != "no" && overpatch != "unknown")) {
        return problem(422, "unfit_field", "A field does not fit",
                       end ? "overpatch: found another text, expected yes, no or unknown"
                           : "end: found another text, expected how a wear ended");
    }
    const auto wears = asked.store.wears(asked.client->id);
    const auto number = asked_number(asked.values[1]);
    if (!wears) {
        return problem_of(wears.error());
    }
    if (!number || *number > static_cast<std::int64_t>(wears->size())) {
        return no_such_number();
    }
    const StoredWear& wear = wears->at(static_cast<std::size_t>(*number - 1));
    WearFixing fixing;
    if (overpatch != "unknown") {
        fixing.overpatch = overpatch == "yes";
    }
    fixing.site = fields->at("site");
    if (!(fixing == wear.fixing)) {
        if (const auto told =
                asked.store.tell_fixing(asked.client->id, wear.id, fixing, asked.acting);
            !told) {
            return problem_of(told.error());
        }
    }
    if (*end != wear.wear.end) {
        if (const auto told = asked.store.change_wear(asked.client->id, wear.id, *end,
                                                      wear.wear.planned_end, asked.acting);
            !told) {
            return problem_of(told.error());
        }
    }
    return no_content();
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/sensor", Asks::who_may_look, sensor_reply, Holds::never,
     "sensor_looked_at"},
    {Method::post, "/api/clients/{handle}/wears/{number}", Asks::who_may_change, tell_wear_reply},
};

}  // namespace

std::span<const Route> sensor_routes() {
    return table;
}

}  // namespace tracewright
