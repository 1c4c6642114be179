#include "clients.hpp"
#include "story_clock.hpp"

namespace tracewright {

ClientStory client_maple() {
    ClientStory story = plain_client("maple", "Maple");
    story.body_mass_kg = 76;
    story.basal_mg_per_dl = 118;
    story.routine.late_dinner_chance = 0;
    for (const int day : {day_number(3, 5), day_number(3, 9), day_number(3, 12), day_number(3, 15),
                          day_number(4, 10), day_number(4, 14), day_number(4, 18)}) {
        story.lows.push_back({day, 0.5, 2.6, 0.2});
    }
    story.took = "gliclazide 80, metformin 500";
    const auto five = five_minute_sensor();
    story.wears = {{.label = "wear 1",
                    .kind = five,
                    .put_on = in_2026(3, 2, 8, 30),
                    .lasts = two_weeks,
                    .dips = {{in_2026(3, 7, 2, 10), std::chrono::minutes{35}, 45}},
                    .dialect = {.encoding = FileEncoding::utf_8_marked, .low_text = "LO"},
                    .diary_within = true},
                   {.label = "wear 2",
                    .kind = five,
                    .put_on = in_2026(4, 7, 8, 30),
                    .lasts = std::chrono::minutes{13 * 1440},
                    .end = "still on",
                    .dialect = {.encoding = FileEncoding::utf_8_marked, .low_text = "LO"},
                    .diary_within = true}};
    story.truths = {
        {"night lows on a sulfonylurea",
         "on 5, 9, 12 and 15 March and 10, 14 and 18 April glucose falls below 54 mg/dL (3.0 "
         "mmol/L) some time between 01:30 and 04:30, for 15 minutes or longer",
         "both wears; gliclazide is on the list; no symptom is written"},
        {"a pressure dip beside a medicine that can cause lows",
         "45 mg/dL for 35 minutes on 7 March 02:10", "wear 1: must be escalated all the same"}};
    story.facts = R"json({
      "why_they_came": "I wake up sweaty and don't know why.",
      "born_year": 1953, "told_type": "type 2", "diagnosed": "2009",
      "contacts": [{"who": "daughter (invented)", "how": "ring at any time"}],
      "medicines_answered": true,
      "medicines": [{"as_written": "gliclazide 80 mg twice a day", "from": "2016-06-01", "until": null},
                    {"as_written": "metformin 500 mg twice a day", "from": "2010-01-01", "until": null},
                    {"as_written": "bisoprolol 2.5 mg", "from": "2019-01-01", "until": null}],
      "cautions": ["lives alone", "drives"],
      "goals": [{"text": "sleep through", "agreed": "2026-02-28"}],
      "consent": {"given": "2026-02-28", "to": ["keep my record", "letters to my prescriber"]},
      "eating_screen": {"asked": "2026-02-28", "by": "Coach Fern (invented)", "result": "no sign"},
      "labs": [{"on": "2026-02-25", "what": "HbA1c", "value": 6.6, "unit": "%"}],
      "sessions": {"bought": 6, "held": ["2026-02-28", "2026-03-20", "2026-04-07"]},
      "sensors": {"bought": 3, "used": 2},
      "promises": [{"text": "letter to the prescriber about the nights of March", "made": "2026-03-20", "by": "2026-03-23", "kept": "2026-03-21"}],
      "agreed_change": null
    })json";
    return story;
}

}  // namespace tracewright
