#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_yarrow() {
    ClientStory story = plain_client("yarrow", "Yarrow");
    story.body_mass_kg = 86;
    story.basal_mg_per_dl = 120;
    story.routine.short_night_chance = 0.35;
    story.routine.walk_after_dinner_chance = 0.45;
    const auto five = five_minute_sensor();
    story.wears = {
        {.label = "wear 1", .kind = five, .put_on = in_2026(1, 8, 8, 15), .lasts = two_weeks},
        {.label = "wear 2",
         .kind = five,
         .put_on = in_2026(2, 19, 8, 20),
         .lasts = two_weeks,
         .site = "upper arm, right"},
        {.label = "wear 3",
         .kind = five,
         .put_on = in_2026(4, 2, 8, 25),
         .lasts = two_weeks,
         .dialect = {.title_rows = false}}};
    story.truths = {{"nothing is planted",
                     "short nights, walks and foods vary as in others and move nothing; dinner "
                     "stays near 18:45",
                     "all three wears: whatever is found here is chance"}};
    story.facts = R"json({
      "why_they_came": "Curious.",
      "born_year": 1971, "told_type": "type 2", "diagnosed": "2021",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 500 mg twice a day", "from": "2021-06-01", "until": null}],
      "cautions": [],
      "goals": [{"text": "look and learn", "agreed": "2026-01-07"}],
      "consent": {"given": "2026-01-07", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-01-07", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-05", "what": "HbA1c", "value": 7.0, "unit": "%"},
               {"on": "2026-04-15", "what": "HbA1c", "value": 7.0, "unit": "%"}],
      "sessions": {"bought": 4, "held": ["2026-01-07", "2026-01-25", "2026-03-08"]},
      "sensors": {"bought": 3, "used": 3},
      "promises": [],
      "agreed_change": null
    })json";
    return story;
}

}  // namespace tracewright
