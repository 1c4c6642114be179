#include "practice_manifest.hpp"

#include "number_words.hpp"

#include <nlohmann/json.hpp>

#include <chrono>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

std::string date_words(std::chrono::year_month_day date) {
    return padded(static_cast<int>(date.year()), 4) + "-" +
           padded(static_cast<unsigned>(date.month()), 2) + "-" +
           padded(static_cast<unsigned>(date.day()), 2);
}

std::string time_words(WallTime at) {
    const auto day = std::chrono::floor<std::chrono::days>(at);
    const auto minutes = std::chrono::floor<std::chrono::minutes>(at - day).count();
    return date_words(std::chrono::year_month_day{day}) + "T" + padded(minutes / 60, 2) + ":" +
           padded(minutes % 60, 2);
}

std::string instant_words(Instant at) {
    return time_words(WallTime{at.time_since_epoch()}) + ":00Z";
}

Json zones_json(const ClientLife& life) {
    Json zones = Json::array({{{"zone", life.story.home_zone}, {"from", nullptr}}});
    for (const auto& change : life.story.zones) {
        std::string at = change.at;
        at[10] = 'T';
        zones.push_back({{"zone", change.zone}, {"from", at}, {"from_is_in", "zone_left"}});
    }
    return zones;
}

Json wear_json(const LivedWear& wear, const ClientLife& life) {
    const WearPlan& plan = wear.plan;
    Json json{{"label", plan.label},
              {"kind", plan.kind.name},
              {"interval_minutes", plan.kind.interval.count()},
              {"unit", name_of(plan.kind.unit)},
              {"put_on", time_words(plan.put_on)},
              {"put_on_instant", instant_words(wear.worn.from)},
              {"planned_days", 14},
              {"end", plan.end},
              {"ended", nullptr},
              {"site", plan.site},
              {"overpatch", plan.overpatch}};
    if (plan.end != "still on") {
        json["ended"] = time_words(life.zones.wall_time(wear.worn.to));
    }
    return json;
}

Json file_json(const ClientFile& file, const std::string& folder) {
    return {{"path", folder + "/" + file.name},
            {"holds", file.holds},
            {"wear", file.wear.empty() ? Json(nullptr) : Json(file.wear)},
            {"readings", file.readings},
            {"diary_rows", file.entries},
            {"repeated_rows", file.repeated_rows},
            {"unreadable_rows", file.unreadable_rows}};
}

Json client_json(const PracticeClient& client) {
    const ClientStory& story = client.life.story;
    Json json{{"key", story.key}, {"name", story.name}, {"invented", true}};
    json["body_mass_kg"] = story.body_mass_kg;
    json["unit"] = name_of(story.unit);
    json["zones"] = zones_json(client.life);
    json.update(Json::parse(story.facts));
    for (const LivedWear& wear : client.life.wears) {
        json["wears"].push_back(wear_json(wear, client.life));
    }
    for (const ClientFile& file : client.files) {
        json["files"].push_back(file_json(file, story.key));
    }
    for (const PlantedTruth& truth : story.truths) {
        json["planted"].push_back(
            {{"what", truth.what}, {"size", truth.size}, {"where", truth.where}});
    }
    return json;
}

}  // namespace

std::string practice_manifest(const std::vector<PracticeClient>& clients, std::uint64_t seed) {
    Json json{
        {"format", "tracewright demo practice"},
        {"version", 1},
        {"invented", true},
        {"notice", "Every client, coach, reading and result here is invented. No real person."},
        {"seed", seed},
        {"today", time_words(story_today)},
        {"zone", "Europe/Berlin"},
        {"first_day", date_words(std::chrono::year_month_day{first_story_day})},
        {"coaches",
         Json::array(
             {{{"name", "Coach Fern (invented)"}, {"role", "coach"}, {"licence", nullptr}},
              {{"name", "Coach Reed (invented)"}, {"role", "coach"}, {"licence", nullptr}}})}};
    for (const PracticeClient& client : clients) {
        json["clients"].push_back(client_json(client));
    }
    return json.dump(2) + "\n";
}

}  // namespace tracewright
