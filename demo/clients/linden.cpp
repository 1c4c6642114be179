#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_linden() {
    ClientStory story = plain_client("linden", "Linden");
    story.body_mass_kg = 92;
    story.basal_mg_per_dl = 126;
    story.routine.short_night_chance = 0.4;
    story.effects.production_per_hour_short = 0.075;
    story.effects.uptake_per_hour_short = 0.05;
    const auto five = five_minute_sensor();
    story.wears = {
        {.label = "wear 1", .kind = five, .put_on = in_2026(1, 5, 8, 2), .lasts = two_weeks},
        {.label = "wear 2",
         .kind = five,
         .put_on = in_2026(2, 23, 8, 4),
         .lasts = two_weeks,
         .site = "upper arm, right",
         .dips = {{in_2026(2, 27, 1, 20), std::chrono::minutes{40}, 45},
                  {in_2026(3, 4, 4, 35), std::chrono::minutes{35}, 40}},
         .dialect = {.title_rows = false}},
        {.label = "wear 3",
         .kind = five,
         .put_on = in_2026(4, 6, 10, 1),
         .lasts = two_weeks - std::chrono::minutes{65},
         .end = "still on",
         .dialect = {.repeated_rows = 2}}};
    story.truths = {{"fasting follows short sleep",
                     "the liver's production at night up 7.5 % for each hour of sleep below 7: "
                     "fasting up by about 9 mg/dL (0.5 mmol/L) an hour; insulin's effect on uptake "
                     "down 5 % an hour the next day",
                     "all three wears, short nights against long ones"},
                    {"pressure dips at night",
                     "45 mg/dL for 40 minutes on 27 February 01:20 and 40 mg/dL for 35 minutes on "
                     "4 March 04:35",
                     "wear 2; no medicine that can cause lows"}};
    story.facts = R"json({
      "why_they_came": "I want to understand my mornings.",
      "born_year": 1968, "told_type": "type 2", "diagnosed": "2021",
      "contacts": [{"who": "practice nurse (invented)", "how": "by the surgery"}],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 500 mg, twice a day", "from": "2022-05-01", "until": null}],
      "cautions": [],
      "goals": [{"text": "wake up below 7", "agreed": "2026-01-03"}],
      "consent": {"given": "2026-01-03", "to": ["keep my record", "show it to my coach"]},
      "eating_screen": {"asked": "2026-01-03", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-02", "what": "HbA1c", "value": 7.0, "unit": "%"},
               {"on": "2026-04-09", "what": "HbA1c", "value": 6.9, "unit": "%"}],
      "sessions": {"bought": 8, "held": ["2026-01-03", "2026-01-21", "2026-03-11", "2026-04-06"]},
      "sensors": {"bought": 4, "used": 3},
      "promises": [{"text": "sleep diary sheet", "made": "2026-04-06", "by": "2026-04-20", "kept": null}],
      "agreed_change": {"text": "in bed by 22:30 on weekdays", "from": "2026-03-11"}
    })json";
    return story;
}

}  // namespace tracewright
