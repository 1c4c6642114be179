#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_willow() {
    ClientStory story = plain_client("willow", "Willow");
    story.body_mass_kg = 71;
    story.basal_mg_per_dl = 120;
    story.diary.forgets_snack = 0.4;
    const auto five = five_minute_sensor();
    const FileDialect local{.delimiter = ';', .date_style = DateStyle::day_first_dots};
    story.diary_dialect = local;
    story.wears = {{.label = "wear 1",
                    .kind = five,
                    .put_on = in_2026(1, 30, 20, 0),
                    .lasts = two_weeks,
                    .dialect = local},
                   {.label = "wear 2",
                    .kind = five,
                    .put_on = in_2026(3, 23, 20, 5),
                    .lasts = two_weeks,
                    .site = "upper arm, right",
                    .dialect = local}};
    story.truths = {
        {"a daylight-saving week",
         "on 29 March the clock jumps from 02:00 to 03:00: the day has 23 hours and at most 276 "
         "readings",
         "wear 2, written in local time without offset"},
        {"an unanswered eating screen", "asked on 28 January, no answer",
         "the client's facts: papers and shares leave out what the rule on eating turns off"}};
    story.facts = R"json({
      "why_they_came": "I have counted everything for years and would like to count less.",
      "born_year": 1984, "told_type": "type 2", "diagnosed": "2024",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 500 mg", "from": "2024-10-01", "until": null}],
      "cautions": [],
      "goals": [{"text": "fewer numbers", "agreed": "2026-01-28"}],
      "consent": {"given": "2026-01-28", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-01-28", "by": "Coach Reed (invented)", "result": null},
      "labs": [{"on": "2026-01-26", "what": "HbA1c", "value": 7.2, "unit": "%"}],
      "sessions": {"bought": 4, "held": ["2026-01-28", "2026-02-18"]},
      "sensors": {"bought": 2, "used": 2},
      "promises": [{"text": "ask again about the screen, gently", "made": "2026-02-18", "by": "2026-03-04", "kept": null}],
      "agreed_change": null
    })json";
    return story;
}

}  // namespace tracewright
