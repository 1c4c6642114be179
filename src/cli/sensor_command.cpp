#include "cli/change_commands.hpp"
#include "cli/json_text.hpp"
#include "cli/wear_command.hpp"
#include "coaching/sensor_record.hpp"
#include "findings/wording.hpp"
#include "render/sensor_json.hpp"
#include "store/fixings_of_wears.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

// Told in a practice alone.
Stored<std::vector<WearFixing>> fixings_told(const ClientOfChange& client) {
    return client.open ? fixings_of(client.open->store(), client.open->client, client.input.wears)
                       : Stored<std::vector<WearFixing>>();
}

}  // namespace

Exit sensor(const WhoseChange& whose, const Streams& streams) {
    const auto client = client_of_change(whose, "sensor_looked_at", streams);
    if (!client) {
        return client.error();
    }
    const auto fixings = fixings_told(*client);
    if (!fixings) {
        return said(fixings.error(), streams);
    }
    const SensorRecord record = sensor_record(client->input, *fixings);
    if (whose.json) {
        streams.out << dumped(json_of_sensor(record, client->input));
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
