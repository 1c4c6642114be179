#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_hazel() {
    ClientStory story = plain_client("hazel", "Hazel");
    story.body_mass_kg = 84;
    story.basal_mg_per_dl = 120;
    story.routine.walk_after_dinner_chance = 0.5;
    story.effects.uptake_after_walk = 3;
    story.diary.forgets_walk = 0.03;
    story.wears = {{.label = "wear 1",
                    .kind = five_minute_sensor(),
                    .put_on = in_2026(1, 26, 12, 0),
                    .lasts = two_weeks,
                    .dialect = {.delimiter = '|', .date_style = DateStyle::iso_with_offset}},
                   {.label = "wear 2",
                    .kind = one_minute_sensor(),
                    .put_on = in_2026(3, 2, 12, 0),
                    .lasts = two_weeks,
                    .site = "upper arm, right",
                    .dialect = {.title_rows = false}},
                   {.label = "wear 3",
                    .kind = five_minute_sensor(),
                    .put_on = in_2026(3, 20, 18, 0),
                    .lasts = std::chrono::minutes{17 * 1440},
                    .dialect = {.delimiter = ';'}}};
    // By the lot of set-up/hazel-trial.json: A is the walk.
    for (const int day :
         {day_number(3, 22), day_number(3, 23), day_number(3, 25), day_number(3, 29),
          day_number(3, 31), day_number(4, 2), day_number(4, 4)}) {
        story.planned_walks.push_back({day, true});
    }
    for (const int day :
         {day_number(3, 21), day_number(3, 24), day_number(3, 26), day_number(3, 28),
          day_number(3, 30), day_number(4, 1), day_number(4, 5)}) {
        story.planned_walks.push_back({day, false});
    }
    story.truths = {{"a walk after dinner helps",
                     "insulin's effect on uptake times 3 for two hours from the walk's start: two "
                     "to three hours after dinner lower by about 20 mg/dL (1.1 mmol/L), the area "
                     "above the start over three hours by about a quarter",
                     "all three wears, dinners with a walk against those without"},
                    {"a trial by lot of that walk, read after its end",
                     "seven pairs of days from 21 March to 5 April, seed 20260320, kept on every "
                     "evening; the effect is the one above",
                     "wear 3 with set-up/hazel-trial.json"}};
    story.facts = R"json({
      "why_they_came": "My doctor said walk more. Does it do anything?",
      "born_year": 1962, "told_type": "type 2", "diagnosed": "2020",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 850 mg twice daily", "from": "2020-11-01", "until": null},
                    {"as_written": "ramipril 5 mg", "from": "2017-01-01", "until": null}],
      "cautions": ["knee pain on stairs"],
      "goals": [{"text": "walk after dinner on most days", "agreed": "2026-01-24"}],
      "consent": {"given": "2026-01-24", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-01-24", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-20", "what": "HbA1c", "value": 6.9, "unit": "%"}],
      "sessions": {"bought": 4, "held": ["2026-01-24", "2026-02-14", "2026-03-20"]},
      "sensors": {"bought": 3, "used": 3},
      "promises": [{"text": "calendar for a walk trial by lot", "made": "2026-03-20", "by": "2026-03-21", "kept": "2026-03-20"}],
      "agreed_change": {"text": "half an hour's walk after dinner", "from": "2026-02-14"},
      "trial": {
        "version": 1,
        "code": "walk-after-dinner",
        "question": "Does a walk after dinner change the rise after dinner?",
        "a": "walk 15 minutes, begun within half an hour after dinner",
        "b": "no walk in the 90 minutes after dinner",
        "outcome": "dinner",
        "unit": "mg/dL",
        "draw": "fair_coins",
        "seed": 20260320,
        "drawn_at": "2026-03-20T19:00:00+00:00",
        "drawn_at_unix": 1774033200,
        "worth": 10.8,
        "noise_sd": 21.9,
        "power": 0.16,
        "smallest_p": 0.015625,
        "pairs": [
          {"first_day": "2026-03-21", "second_day": "2026-03-22", "a_first": false},
          {"first_day": "2026-03-23", "second_day": "2026-03-24", "a_first": true},
          {"first_day": "2026-03-25", "second_day": "2026-03-26", "a_first": true},
          {"first_day": "2026-03-28", "second_day": "2026-03-29", "a_first": false},
          {"first_day": "2026-03-30", "second_day": "2026-03-31", "a_first": false},
          {"first_day": "2026-04-01", "second_day": "2026-04-02", "a_first": false},
          {"first_day": "2026-04-04", "second_day": "2026-04-05", "a_first": true}
        ]
      }
    })json";
    return story;
}

}  // namespace tracewright
