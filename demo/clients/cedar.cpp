#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_cedar() {
    ClientStory story = plain_client("cedar", "Cedar");
    story.body_mass_kg = 90;
    story.basal_mg_per_dl = 128;
    story.zones = {{"2026-02-10 12:00", "America/New_York"}, {"2026-02-17 18:00", "Europe/Berlin"}};
    story.took = "Quorvilan 10";
    const auto five = five_minute_sensor();
    story.wears = {{.label = "wear 1",
                    .kind = five,
                    .put_on = in_2026(2, 5, 7, 30),
                    .lasts = two_weeks,
                    .dialect = {.decimal_comma = false}},
                   {.label = "wear 2",
                    .kind = five,
                    .put_on = in_2026(4, 1, 7, 40),
                    .lasts = std::chrono::minutes{10 * 1440},
                    .dialect = {.newest_first = true}}};
    story.truths = {
        {"a trip across zones",
         "Berlin until noon of 10 February, then New York; back on 17 February at 18:00: days of "
         "30 and of 18 hours",
         "wear 1, written by the client's clock without offset"},
        {"an unrecognised medicine", "'Quorvilan 10', an invented name",
         "the list of medicines and every diary: counts as able to cause lows until answered"}};
    story.facts = R"json({
      "why_they_came": "I travel for work and lose track.",
      "born_year": 1973, "told_type": "type 2", "diagnosed": "2019",
      "contacts": [],
      "medicines_answered": true,
      "medicines": [{"as_written": "Quorvilan 10 (name as on the box, invented)", "from": "2025-08-01", "until": null}],
      "cautions": [],
      "goals": [{"text": "steady on the road", "agreed": "2026-02-03"}],
      "consent": {"given": "2026-02-03", "to": ["keep my record"]},
      "eating_screen": {"asked": "2026-02-03", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-01-30", "what": "HbA1c", "value": 7.3, "unit": "%"}],
      "sessions": {"bought": 3, "held": ["2026-02-03"]},
      "sensors": {"bought": 2, "used": 2},
      "promises": [{"text": "ask the pharmacy what the medicine is", "made": "2026-02-03", "by": "2026-02-10", "kept": null}],
      "agreed_change": null
    })json";
    return story;
}

}  // namespace tracewright
