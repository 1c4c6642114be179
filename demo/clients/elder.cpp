#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_elder() {
    ClientStory story = plain_client("elder", "Elder");
    story.body_mass_kg = 82;
    story.basal_mg_per_dl = 118;
    story.levels = {{day_number(2, 16), 114}, {day_number(3, 30), 108}};
    story.routine.appetite = 0.75;
    story.diary.finger_prick_chance = 0.4;
    story.took_until_day = day_number(1, 16);
    story.diary_dialect = {.workbook = true};
    const auto five = five_minute_sensor();
    story.wears = {
        {.label = "wear 1", .kind = five, .put_on = in_2026(1, 2, 9, 0), .lasts = two_weeks},
        {.label = "wear 2",
         .kind = five,
         .put_on = in_2026(2, 16, 9, 0),
         .lasts = two_weeks,
         .overpatch = true},
        {.label = "wear 3",
         .kind = five,
         .put_on = in_2026(3, 30, 9, 0),
         .lasts = two_weeks,
         .overpatch = true,
         .dialect = {.delimiter = ';'}}};
    story.truths = {
        {"a path to the remission criteria",
         "last metformin on 15 January; HbA1c 6.3 % on 16 April, 91 days later: the first day on "
         "which the numbers can be met is 15 April; resting level 118, 114, 108 mg/dL",
         "labs, medicines and the three wears"}};
    story.facts = R"json({
      "why_they_came": "I have lost weight slowly over two years. Can I do without tablets?",
      "born_year": 1966, "told_type": "type 2", "diagnosed": "2022",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 500 mg twice a day", "from": "2022-03-01", "until": "2026-01-15",
                     "stopped_by": "the prescriber"}],
      "cautions": [],
      "goals": [{"text": "stay without tablets, checked", "agreed": "2026-01-16"}],
      "consent": {"given": "2025-12-30", "to": ["keep my record"]},
      "eating_screen": {"asked": "2025-12-30", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-12", "what": "HbA1c", "value": 6.4, "unit": "%"},
               {"on": "2026-03-02", "what": "HbA1c", "value": 6.4, "unit": "%"},
               {"on": "2026-04-16", "what": "HbA1c", "value": 6.3, "unit": "%"}],
      "sessions": {"bought": 8, "held": ["2025-12-30", "2026-01-16", "2026-03-04", "2026-04-17"]},
      "sensors": {"bought": 4, "used": 3},
      "promises": [{"text": "letter to the prescriber with the result of 16 April", "made": "2026-04-17", "by": "2026-04-21", "kept": null}],
      "agreed_change": {"text": "keep the evening walk and the smaller dinner", "from": "2026-01-16"}
    })json";
    return story;
}

}  // namespace tracewright
