#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_rowan() {
    ClientStory story = plain_client("rowan", "Rowan");
    story.body_mass_kg = 79;
    story.basal_mg_per_dl = 126;
    story.routine.late_with_short = 0.8;
    story.routine.appetite = 0.85;
    story.effects.production_per_hour_late = 0.11;
    const auto five = five_minute_sensor();
    const FileDialect american{.delimiter = '\t',
                               .date_style = DateStyle::month_first_slashes,
                               .encoding = FileEncoding::utf_16_le,
                               .carriage_returns = true,
                               .newest_first = true};
    story.diary_dialect = american;
    story.wears = {{.label = "wear 1",
                    .kind = five,
                    .put_on = in_2026(1, 19, 9, 3),
                    .lasts = two_weeks,
                    .dialect = american},
                   {.label = "wear 2",
                    .kind = five,
                    .put_on = in_2026(3, 9, 9, 11),
                    .lasts = two_weeks,
                    .overpatch = true,
                    .dialect = american}};
    story.truths = {
        {"late dinner and short sleep travel together",
         "correlation of dinner hour with sleep lost about 0.8; only the dinner acts: the liver's "
         "production at night up 11 % for each hour after 19:00, sleep nothing: fasting up by "
         "about 11 mg/dL (0.6 mmol/L) after a dinner past 20:20 against one before",
         "both wears, 28 nights: one at a time, either looks to blame"}};
    story.facts = R"json({
      "why_they_came": "Shift work and late meals: which of the two is it?",
      "born_year": 1977, "told_type": "type 2", "diagnosed": "2023",
      "contacts": [{"who": "partner (invented)", "how": "ring in the evening"}],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin XR 750", "from": "2024-01-15", "until": null}],
      "cautions": [],
      "goals": [{"text": "find out before changing anything", "agreed": "2026-01-17"}],
      "consent": {"given": "2026-01-17", "to": ["keep my record", "show hours in range to my partner"]},
      "eating_screen": {"asked": "2026-01-17", "by": "Coach Reed (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-14", "what": "HbA1c", "value": 7.1, "unit": "%"}],
      "sessions": {"bought": 5, "held": ["2026-01-17", "2026-02-06", "2026-03-27"]},
      "sensors": {"bought": 3, "used": 2},
      "promises": [{"text": "plan of nights that would part the two", "made": "2026-03-27", "by": "2026-04-03", "kept": "2026-04-02"}],
      "agreed_change": null
    })json";
    return story;
}

}  // namespace tracewright
