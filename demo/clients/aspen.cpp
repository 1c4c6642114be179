#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_aspen() {
    ClientStory story = plain_client("aspen", "Aspen");
    story.body_mass_kg = 97;
    story.basal_mg_per_dl = 140;
    story.levels = {{day_number(2, 2), 130}};
    story.unit = GlucoseUnit::mmol_per_l;
    story.diary.finger_prick_chance = 0.6;
    story.took = "metformin";
    const FileDialect plain{};
    story.wears = {{.label = "wear 1",
                    .kind = fifteen_minute_sensor(),
                    .put_on = in_2026(1, 6, 10, 0),
                    .lasts = two_weeks,
                    .bias_z = 1.2,
                    .bias_drawn = false,
                    .dialect = plain},
                   {.label = "wear 2",
                    .kind = five_minute_sensor(),
                    .put_on = in_2026(3, 17, 10, 0),
                    .lasts = two_weeks,
                    .bias_z = -0.8,
                    .bias_drawn = false,
                    .dialect = plain},
                   {.label = "wear 3",
                    .kind = fifteen_minute_sensor(),
                    .put_on = in_2026(3, 19, 10, 6),
                    .lasts = std::chrono::minutes{10 * 1440},
                    .site = "upper arm, right",
                    .bias_z = 0.9,
                    .bias_drawn = false,
                    .dialect = plain}};
    story.truths = {
        {"another sensor kind between wears",
         "wear 1 reads 4.9 % high, wear 2 3.1 % low: about 12 mg/dL (0.7 mmol/L) of the change is "
         "the sensors'",
         "wear 1 (15 minutes, mmol/L) against wear 2 (5 minutes, mg/dL), ten weeks apart; wears 2 "
         "and 3 together for ten days show it"},
        {"a medicine was raised in between",
         "resting level 140 to 130 mg/dL from 2 February, when metformin was raised; habits stayed",
         "wear 1 against wear 2"}};
    story.facts = R"json({
      "why_they_came": "Did the new dose or my walking do it?",
      "born_year": 1965, "told_type": "type 2", "diagnosed": "2017",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "metformin 500 mg twice a day", "from": "2018-01-01", "until": "2026-02-02"},
                    {"as_written": "metformin 1000 mg twice a day", "from": "2026-02-02", "until": null}],
      "cautions": [],
      "goals": [{"text": "one honest comparison", "agreed": "2026-01-04"}],
      "consent": {"given": "2026-01-04", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-01-04", "by": "Coach Reed (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-03", "what": "HbA1c", "value": 58, "unit": "mmol/mol"},
               {"on": "2026-04-13", "what": "HbA1c", "value": 54, "unit": "mmol/mol"}],
      "sessions": {"bought": 6, "held": ["2026-01-04", "2026-01-23", "2026-04-02"]},
      "sensors": {"bought": 4, "used": 3},
      "promises": [],
      "agreed_change": {"text": "walk to work on three days", "from": "2026-01-23"}
    })json";
    return story;
}

}  // namespace tracewright
