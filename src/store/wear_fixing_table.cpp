#include "store/wear_fixing_table.hpp"

#include "store/stored_column.hpp"

#include <nlohmann/json.hpp>

#include <stdexcept>

namespace tracewright {

namespace {

std::string document_of(const WearFixing& fixing) {
    return nlohmann::ordered_json{
        {"overpatch",
         fixing.overpatch ? nlohmann::ordered_json(*fixing.overpatch) : nlohmann::ordered_json()},
        {"site", fixing.site}}
        .dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

WearFixing read_fixing(const std::string& document) {
    const auto json = nlohmann::json::parse(document, nullptr, false);
    if (!json.is_object() || !json.contains("overpatch") || !json.contains("site") ||
        !json["site"].is_string()) {
        throw std::runtime_error("found a document that does not tell how a sensor sat");
    }
    WearFixing fixing{{}, json["site"].get<std::string>()};
    if (json["overpatch"].is_boolean()) {
        fixing.overpatch = json["overpatch"].get<bool>();
    }
    return fixing;
}

}  // namespace

std::map<std::int64_t, WearFixing> WearFixingTable::fixings(std::int64_t client,
                                                            const std::string& place) {
    Statement all(database_,
                  "SELECT wear, sealed_fixing FROM wear_fixing JOIN wear ON wear.id = wear "
                  "WHERE wear.client = ?");
    std::map<std::int64_t, WearFixing> fixings;
    for (all.with(client); all.step();) {
        fixings[all.integer(0)] =
            read_fixing(opened_text(seal_, all.blob(1), place + " wear fixing"));
    }
    return fixings;
}

void WearFixingTable::put(std::int64_t wear, const std::string& place, const WearFixing& fixing,
                          const Acting& acting) {
    if (!fixing.told()) {
        Statement forget(database_, "DELETE FROM wear_fixing WHERE wear = ?");
        forget.with(wear).run();
        return;
    }
    Statement put(database_,
                  "INSERT INTO wear_fixing(wear, at, coach, sealed_fixing) VALUES (?, ?, ?, ?) "
                  "ON CONFLICT DO UPDATE SET at = excluded.at, coach = excluded.coach, "
                  "sealed_fixing = excluded.sealed_fixing");
    put.with(wear, seconds(acting.at), acting.coach,
             seal_.sealed(document_of(fixing), place + " wear fixing"))
        .run();
}

}  // namespace tracewright
