#include "render/story_json.hpp"

#include "render/labs_json.hpp"
#include "render/plan_json.hpp"
#include "time/day_text.hpp"

namespace tracewright {

Json json_of_story(const Story& story, const ReviewInput& input) {
    Json json = {{"version", story_json_version}, {"seed", input.seed}};
    json["very_low"] = story.very_low.empty() ? Json(nullptr) : Json(story.very_low);
    json["last_reading_words"] = story.last_reading;
    json["care"] = story.care;
    json["changes"] = Json::array();
    for (const DidItHelp& one : story.changes) {
        json["changes"].push_back(
            {{"change", json_of_change(one.change)},
             {"none_because", one.compared ? Json(nullptr) : Json(one.none_because)},
             {"finding", one.compared ? json_of(one.compared->finding) : Json(nullptr)},
             {"closed", one.closed.empty() ? Json(nullptr) : Json(one.closed)},
             {"else_changed", one.else_changed}});
    }
    json["trials"] = Json::array();
    for (const Finding& finding : story.trials) {
        json["trials"].push_back(json_of(finding));
    }
    json["kept"] = story.kept;
    json["unknown"] = story.unknown;
    json["next_lab"] = {
        {"on", story.next_lab.clinic_leads ? Json(nullptr) : Json(day_text(story.next_lab.on))},
        {"because", story.next_lab.because}};
    json["labs"] = json_of_labs(story.labs, input);
    return json;
}

}  // namespace tracewright
