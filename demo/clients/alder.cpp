#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_alder() {
    ClientStory story = plain_client("alder", "Alder");
    story.body_mass_kg = 88;
    story.basal_mg_per_dl = 118;
    story.unit = GlucoseUnit::mmol_per_l;
    story.routine.late_dinner_chance = 0.4;
    story.effects.production_per_hour_late = 0.11;
    const auto fifteen = fifteen_minute_sensor();
    const FileDialect german{.delimiter = ';',
                             .decimal_comma = true,
                             .date_style = DateStyle::day_first_dots,
                             .date_and_clock_apart = true,
                             .german = true,
                             .encoding = FileEncoding::windows_1252,
                             .carriage_returns = true,
                             .repeated_rows = 3,
                             .row_of_abc = true,
                             .footer = "Ende der Aufzeichnung"};
    story.dinners = {{"Brot, Käse, Gürkchen", 48},
                     {"Kartoffeln, Fisch, Bohnen", 54},
                     {"Gemüsepfanne mit Reis", 66},
                     {"Omelett mit Brot", 36}};
    story.took = "Metformin 1000";
    story.wears = {{.label = "wear 1",
                    .kind = fifteen,
                    .put_on = in_2026(1, 12, 18, 7),
                    .lasts = two_weeks,
                    .dialect = german,
                    .diary_within = true},
                   {.label = "wear 2",
                    .kind = fifteen,
                    .put_on = in_2026(2, 9, 17, 52),
                    .lasts = two_weeks,
                    .site = "upper arm, right",
                    .dialect = german,
                    .diary_within = true}};
    story.truths = {
        {"fasting follows late dinner",
         "the liver's production at night up 11 % for each hour of dinner after 19:00: fasting up "
         "by about 18 mg/dL (1.0 mmol/L) after a dinner at 21:30 against one at 18:45",
         "both wears, 28 nights; sleep has no effect"}};
    story.facts = R"json({
      "why_they_came": "Morgens ist der Wert zu hoch, ich weiß nicht warum.",
      "born_year": 1959, "told_type": "type 2", "diagnosed": "2018",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "Metformin 1000 mg 1-0-1", "from": "2019-02-01", "until": null},
                    {"as_written": "Sitagliptin 100 mg morgens", "from": "2023-09-15", "until": null}],
      "cautions": [],
      "goals": [{"text": "know what raises the mornings", "agreed": "2026-01-10"}],
      "consent": {"given": "2026-01-10", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-01-10", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-08", "what": "HbA1c", "value": 53, "unit": "mmol/mol"}],
      "sessions": {"bought": 6, "held": ["2026-01-10", "2026-02-27"]},
      "sensors": {"bought": 2, "used": 2},
      "promises": [],
      "agreed_change": {"text": "dinner before 19:30 on four days a week", "from": "2026-02-27"}
    })json";
    return story;
}

}  // namespace tracewright
