#include "findings/wording.hpp"
#include "render/sensor_json.hpp"
#include "serve/asked_record.hpp"
#include "serve/route.hpp"
#include "store/fixings_of_wears.hpp"

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
    for (std::size_t i = 0; i < found.wears.size(); ++i) {
        json["wears"][i]["from_words"] = full_date(found.wears[i].from);
        json["wears"][i]["lasted_words"] = hours_and_minutes(found.wears[i].lasted);
    }
    json["supplies"] = {{"sensors", json_of(record->facts.sensors)},
                        {"sessions", json_of(record->facts.sessions)}};
    json["last_reading"] = json_of_last_reading(record->input);
    return json_reply(json);
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/sensor", Asks::who_may_look, sensor_reply, Holds::never,
     "sensor_looked_at"},
};

}  // namespace

std::span<const Route> sensor_routes() {
    return table;
}

}  // namespace tracewright
