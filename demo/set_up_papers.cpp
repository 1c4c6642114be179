#include "set_up_papers.hpp"

#include "number_words.hpp"

#include <nlohmann/json.hpp>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

Json zones_of(const Json& client) {
    Json zones = Json::array();
    for (const Json& zone : client.at("zones")) {
        zones.push_back({{"zone", zone.at("zone")}, {"from", zone.at("from")}});
    }
    return zones;
}

Json contacts_of(const Json& client) {
    Json contacts = Json::array();
    for (const Json& contact : client.at("contacts")) {
        const auto who = contact.at("who").get<std::string>();
        const bool clinic = who.find("nurse") != std::string::npos;
        contacts.push_back({{"kind", clinic ? "clinic" : "emergency"},
                            {"name", who},
                            {"telephone", contact.at("how")}});
    }
    return contacts;
}

Json medicines_of(const Json& client) {
    Json medicines = Json::array();
    for (const Json& medicine : client.at("medicines")) {
        medicines.push_back({{"written", medicine.at("as_written")},
                             {"from", medicine.at("from")},
                             {"until", medicine.at("until")}});
    }
    if (medicines.empty()) {
        medicines.push_back(
            {{"written", "none"}, {"from", client.at("consent").at("given")}, {"until", nullptr}});
    }
    return medicines;
}

Json cautions_of(const Json& client) {
    const Json& screen = client.at("eating_screen");
    const Json& result = screen.at("result");
    Json cautions{{"pregnancy", "no"},
                  {"eating_screen",
                   {{"asked_on", screen.at("asked")},
                    {"by", screen.at("by")},
                    {"positive", result.is_null()      ? "not asked"
                                 : result == "no sign" ? "no"
                                                       : "yes"}}}};
    for (const char* key : {"severe_low_before", "kidney_disease", "liver_disease", "heart_disease",
                            "chest_symptoms", "eye_disease", "numb_feet_or_wound",
                            "stomach_surgery", "frail", "another_autoimmune_disease"}) {
        cautions[key] = "no";
    }
    std::string others;
    for (const Json& caution : client.at("cautions")) {
        others += (others.empty() ? "" : "; ") + caution.get<std::string>();
    }
    cautions["others"] = others;
    return cautions;
}

Json facts_of(const Json& client) {
    Json facts{{"why_they_came", client.at("why_they_came")},
               {"born_year", client.at("born_year")},
               {"told_type", client.at("told_type")},
               {"unit", client.at("unit")},
               {"zones", zones_of(client)},
               {"contacts", contacts_of(client)},
               {"medicines_asked_on", client.at("consent").at("given")},
               {"medicines", medicines_of(client)},
               {"cautions", cautions_of(client)},
               {"labs", client.at("labs")}};
    const Json& goal = client.at("goals").at(0);
    facts["goals"] = {
        {"kind", "adults"}, {"agreed_with", goal.at("text")}, {"agreed_on", goal.at("agreed")}};
    std::string kept;
    for (const Json& what : client.at("consent").at("to")) {
        kept += (kept.empty() ? "" : "; ") + what.get<std::string>();
    }
    facts["consent"] = {{"given_on", client.at("consent").at("given")}, {"what_is_kept", kept}};
    facts["sessions"] = {{"bought", client.at("sessions").at("bought")},
                         {"used", client.at("sessions").at("held").size()}};
    facts["sensors"] = client.at("sensors");
    if (const Json& change = client.at("agreed_change"); !change.is_null()) {
        facts["agreed_change"] = {{"words", change.at("text")}, {"agreed_on", change.at("from")}};
    }
    return facts;
}

}  // namespace

std::vector<std::pair<std::string, std::string>> set_up_papers(const std::string& manifest) {
    std::vector<std::pair<std::string, std::string>> papers;
    std::string clients;
    std::string promises;
    int number = 0;
    const Json practice = Json::parse(manifest);
    for (const Json& client : practice.at("clients")) {
        const std::string handle = "c" + padded(++number, 2);
        const auto key = client.at("key").get<std::string>();
        clients += handle + "\t" + key + "\t" + client.at("name").get<std::string>() + "\n";
        for (const Json& promise : client.at("promises")) {
            promises += handle + "\t" + promise.at("by").get<std::string>() + "\t" +
                        (promise.at("kept").is_null() ? "open" : "kept") + "\t" +
                        promise.at("text").get<std::string>() + "\n";
        }
        papers.emplace_back(key + ".json", facts_of(client).dump(2) + "\n");
        if (client.contains("trial")) {
            papers.emplace_back(key + "-trial.json", client.at("trial").dump(2) + "\n");
        }
    }
    papers.emplace_back("clients.tsv", clients);
    papers.emplace_back("promises.tsv", promises);
    return papers;
}

}  // namespace tracewright
