#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_larch() {
    ClientStory story = plain_client("larch", "Larch");
    story.body_mass_kg = 101;
    story.basal_mg_per_dl = 134;
    story.snacks = {{"a piece of cake", 38}, {"biscuits", 30}};
    story.routine.snack_chance = 0.2;
    story.diary.forgets_breakfast = 0.25;
    story.diary.forgets_lunch = 0.3;
    story.diary.forgets_snack = 0.8;
    story.diary.forgets_dinner = 0.4;
    story.diary.forgets_large = 0.3;
    story.diary.forgets_sleep = 0.5;
    story.diary.round_minutes = 30;
    story.diary.carbohydrate_error = 0.3;
    for (const int day : {day_number(3, 6), day_number(3, 8), day_number(3, 10), day_number(3, 12),
                          day_number(3, 14)}) {
        story.planned_meals.push_back({day, 16, Slot::snack, {"fruit juice", 60, 1.6}, false});
    }
    const auto fifteen = fifteen_minute_sensor();
    const FileDialect dialect{.delimiter = ';',
                              .decimal_comma = true,
                              .date_style = DateStyle::day_first_dots,
                              .date_and_clock_apart = true};
    story.unit = GlucoseUnit::mmol_per_l;
    story.diary_dialect = dialect;
    story.wears = {{.label = "wear 1",
                    .kind = fifteen,
                    .put_on = in_2026(3, 1, 8, 0),
                    .lasts = std::chrono::minutes{61 * 60 + 11},
                    .end = "fell off",
                    .dialect = dialect},
                   {.label = "wear 2",
                    .kind = fifteen,
                    .put_on = in_2026(3, 4, 18, 0),
                    .lasts = two_weeks,
                    .site = "upper arm, right",
                    .overpatch = true,
                    .silences = {{in_2026(3, 9, 22, 0), in_2026(3, 10, 5, 0)}},
                    .dialect = dialect}};
    story.truths = {{"a sensor fell off on day 3",
                     "put on 1 March 08:00, last reading within 15 minutes of 3 March 21:10 (61 h "
                     "10 min); the next one put on 4 March 18:00",
                     "wears 1 and 2"},
                    {"a poor diary",
                     "about half of the meals are not written, large ones and snacks least; times "
                     "to the half hour; fruit juice at 16:00 on 6, 8, 10, 12 and 14 March is never "
                     "written: glucose up by 2.5 mmol/L or more in an hour",
                     "wear 2: five rises without an entry"}};
    story.facts = R"json({
      "why_they_came": "My wife sent me.",
      "born_year": 1961, "told_type": "type 2", "diagnosed": "2016",
      "contacts": [{"who": "wife (invented)", "how": "ring in the afternoon"}],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 1000", "from": "2017-01-01", "until": null},
                    {"as_written": "empagliflozin 10 mg", "from": "2024-05-01", "until": null}],
      "cautions": [],
      "goals": [{"text": "write down the afternoons", "agreed": "2026-03-20"}],
      "consent": {"given": "2026-02-27", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-02-27", "by": "Coach Reed (invented)", "result": "no sign"},
      "labs": [{"on": "2026-02-24", "what": "HbA1c", "value": 60, "unit": "mmol/mol"}],
      "sessions": {"bought": 3, "held": ["2026-02-27", "2026-03-20"]},
      "sensors": {"bought": 2, "used": 2},
      "promises": [{"text": "a spare overpatch by post", "made": "2026-03-04", "by": "2026-03-06", "kept": "2026-03-05"}],
      "agreed_change": {"text": "photo of every drink", "from": "2026-03-20"}
    })json";
    return story;
}

}  // namespace tracewright
