#pragma once

#include "coaching/care_for_tests.hpp"
#include "coaching/explaining_page.hpp"

#include <cmath>
#include <string>

namespace tracewright {

/// An invented fortnight that all six pages can be drawn from: porridge at 08:00 with rises that
/// differ from day to day, the same stew at 19:00, a walk after it on every third day, sleep from
/// 23:00 to 07:00 with a rise towards the morning, one tense hour at 15:00 on the sixth day, an A1c
/// two days after the wear.
inline Care lived() {
    Care care;
    care.facts.unit = GlucoseUnit::mg_per_dl;
    care.facts.contacts = {{ContactKind::clinic, "Invented clinic", "030 0000"},
                           {ContactKind::emergency, "", "112"}};
    care.wears.clear();
    Wear& wear = care.wear(-14, 14);
    const auto bump = [](double minutes, double rise) {
        const double up = minutes < 0 ? 0 : minutes < 50 ? minutes / 50 : (140 - minutes) / 90;
        return rise * std::max(0.0, up);
    };
    for (std::size_t i = 0; i < wear.readings.size(); ++i) {
        const auto day = static_cast<int>(i) / 288;
        const double minutes = 5.0 * static_cast<double>(i % 288);
        const double breakfast = 35 + 7 * ((day * 5) % 11);
        const double dinner = day % 3 == 0 ? 40 : 60 + 4 * (day % 5);
        double level = 105 + bump(minutes - 480, breakfast) + bump(minutes - 1140, dinner);
        level += minutes > 180 && minutes < 480 ? 25 * (minutes - 180) / 300 : 0;
        level += minutes >= 480 && minutes < 660 ? 25 * (660 - minutes) / 180 : 0;
        level += day == 5 ? bump(minutes - 900, 38) : 0;
        level += static_cast<double>((i * 7) % 5) - 2;  // a sensor's own wander
        Care::set(wear, static_cast<int>(i), 1, static_cast<int>(std::lround(level)));
    }
    for (int day = -14; day < 0; ++day) {
        care.entry(DiaryKind::meal, care_at(day, 8), "porridge");
        if (day == -9) {
            care.entry(DiaryKind::mood, care_at(day, 15), "tense");
        }
        care.entry(DiaryKind::meal, care_at(day, 19), "stew");
        if ((day + 14) % 3 == 0) {
            care.entry(DiaryKind::movement, care_at(day, 19, 20), "walk").until =
                care_at(day, 19, 40);
        }
        if (day < -1) {
            care.entry(DiaryKind::sleep, care_at(day, 23)).until = care_at(day + 1, 7);
        }
    }
    care.facts.labs = {{care_day + std::chrono::days{2}, "HbA1c", 6.9, "%"}};
    care.as_of = care_at(3, 9);
    return care;
}

inline ReviewInput input_of_care(const Care& care) {
    ReviewInput input;
    input.wears = care.wears;
    input.diary = care.diary;
    input.zones = care.clock;
    input.unit = care.facts.unit;
    input.goals = goals_that_hold(care.facts);
    input.as_of = care.as_of;
    return input;
}

inline ExplainingPage explained(const Care& care, Explains explains) {
    return explaining_page(explains, {input_of_care(care), care.facts});
}

}  // namespace tracewright
