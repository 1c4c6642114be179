#include "render/caseload_json.hpp"

namespace tracewright {

Json json_of_caseload(std::span<const CaseloadLine> lines, Instant as_of) {
    Json json = {{"version", caseload_json_version},
                 {"as_of", iso_time(as_of, ZoneHistory(Zone::fixed(std::chrono::seconds{0})))}};
    json["clients"] = Json::array();
    for (const CaseloadLine& line : lines) {
        Json told = {{"handle", line.handle}, {"name", line.name}};
        told["needs"] = Json::array();
        for (const Need& need : line.needs) {
            told["needs"].push_back(
                {{"kind", name_of(need.kind)}, {"why", need.why}, {"next", need.next}});
        }
        told["seen"] = line.week.seen;
        told["written"] = line.week.written;
        json["clients"].push_back(std::move(told));
    }
    return json;
}

}  // namespace tracewright
