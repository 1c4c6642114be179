#pragma once

#include "coaching/care_input.hpp"
#include "coaching/client_medicines.hpp"

#include <string>
#include <vector>

namespace tracewright {

// Everybody in here is invented.

inline constexpr CivilDate care_day{std::chrono::days{20'500}};  // 16 February 2026

inline Instant care_at(int day, int hour = 0, int minute = 0) {
    return Instant{std::chrono::days{20'500 + day}} + std::chrono::hours{hour} +
           std::chrono::minutes{minute};
}

/// A client of whom everything was asked and against whom nothing speaks: metformin, 60 years old.
/// A test changes one thing.
struct Care {
    ClientFacts facts;
    std::vector<Wear> wears;
    Diary diary;
    ZoneHistory clock{Zone::fixed(std::chrono::seconds{0})};
    Instant as_of = care_at(0, 12);

    Care() {
        facts.born_year = 1966;
        facts.told_type = "Type 2";
        facts.medicines_asked_on = care_day - std::chrono::days{100};
        takes("metformin 500");
        Cautions& cautions = facts.cautions;
        cautions.pregnancy = Pregnancy::no;
        cautions.eating = {care_day - std::chrono::days{30}, "Dr Larch", Answered::no};
        for (Answered* answer :
             {&cautions.severe_low_before, &cautions.kidney_disease, &cautions.liver_disease,
              &cautions.heart_disease, &cautions.chest_symptoms, &cautions.eye_disease,
              &cautions.numb_feet_or_wound, &cautions.stomach_surgery, &cautions.frail,
              &cautions.another_autoimmune_disease}) {
            *answer = Answered::no;
        }
        cautions.last_eye_check = care_day - std::chrono::days{200};
        wear(-14, 14);
    }

    void takes(const std::string& written) { facts.medicines = {{written, {}, {}}}; }

    /// Readings of 120 mg/dL each five minutes over whole days.
    Wear& wear(int from_day, int days, int level = 120) {
        Wear& made = wears.emplace_back();
        made.label = "wear " + std::to_string(wears.size());
        made.start = care_at(from_day);
        made.interval = std::chrono::minutes{5};
        for (int i = 0; i < days * 288; ++i) {
            made.readings.emplace_back(made.start + i * made.interval,
                                       Glucose{level * 100, GlucoseUnit::mg_per_dl}, made.interval);
        }
        return made;
    }
    static void set(Wear& wear, int from, int count, int level) {
        for (int i = from; i < from + count; ++i) {
            Reading& reading = wear.readings[static_cast<std::size_t>(i)];
            reading = Reading(reading.at, Glucose{level * 100, GlucoseUnit::mg_per_dl},
                              reading.interval());
        }
    }
    DiaryEntry& entry(DiaryKind kind, Instant at, const std::string& text = {}) {
        DiaryEntry made;
        made.kind = kind;
        made.at = at;
        made.text = text;
        return diary.emplace_back(made);
    }
    void meal(Instant at, double grams) {
        entry(DiaryKind::meal, at).carbohydrate_g = Amount{grams, 0, false};
    }

    /// Calls `ask` with the input: its parts live as long as the call.
    template <typename Ask>
    auto ask(Ask ask_it) const {
        const MedicineTimeline medicines = client_medicines(facts, clock);
        return ask_it(CareInput{facts, wears, diary, medicines, clock, as_of});
    }
};

}  // namespace tracewright
