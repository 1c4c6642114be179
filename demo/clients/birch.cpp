#include "clients.hpp"
#include "plates.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_birch() {
    ClientStory story = plain_client("birch", "Birch");
    story.body_mass_kg = 95;
    story.basal_mg_per_dl = 116;
    story.lunches.push_back({"white rice with vegetables", 60, 1.6});
    story.lunches.push_back({"white rice with vegetables", 60, 1.6});
    story.lunches.push_back({"white rice with vegetables", 60, 1.6});
    story.planned_meals = {{day_number(2, 11), 15.75, Slot::snack, {"mango", 35}, true}};
    const auto fifteen = fifteen_minute_sensor();
    const FileDialect workbook{.workbook = true};
    story.unit = GlucoseUnit::mmol_per_l;
    story.diary_dialect = {
        .delimiter = ';', .decimal_comma = true, .date_style = DateStyle::day_first_dots};
    story.wears = {{.label = "wear 1",
                    .kind = fifteen,
                    .put_on = in_2026(2, 2, 19, 0),
                    .lasts = two_weeks,
                    .dialect = workbook},
                   {.label = "wear 2",
                    .kind = fifteen,
                    .put_on = in_2026(3, 30, 19, 20),
                    .lasts = two_weeks,
                    .dialect = workbook}};
    story.truths = {
        {"one food is followed by a high rise",
         "white rice with vegetables acts as 1.6 g of glucose for each gram written: two hours "
         "after it higher by about 45 mg/dL (2.5 mmol/L) than if it were as other lunches are",
         "lunches of both wears; mango was eaten once"}};
    story.facts = R"json({
      "why_they_came": "Tell me which lunches to keep.",
      "born_year": 1970, "told_type": "type 2", "diagnosed": "2022",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [],
      "cautions": [],
      "goals": [{"text": "three lunches that work", "agreed": "2026-01-31"}],
      "consent": {"given": "2026-01-31", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-01-31", "by": "Coach Reed (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-29", "what": "HbA1c", "value": 51, "unit": "mmol/mol"}],
      "sessions": {"bought": 6, "held": ["2026-01-31", "2026-02-20"]},
      "sensors": {"bought": 4, "used": 2},
      "promises": [{"text": "recipe list", "made": "2026-04-14", "by": "2026-04-20", "kept": null}],
      "agreed_change": null
    })json";
    return story;
}

}  // namespace tracewright
