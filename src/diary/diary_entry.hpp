#pragma once

#include "time/instant.hpp"
#include "units/glucose.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

enum class DiaryKind {
    meal,
    movement,
    sleep,
    mood,
    medicine,
    finger_prick,
    ketones,
    lab,
    alcohol,
    illness,
    symptom,
    sensor,  ///< what was done to the sensor: put on, fell off, taken off
    note
};

const char* name_of(DiaryKind kind);

/// A written amount: "45", "~45" (estimated), "40-50" (midpoint and half width).
struct Amount {
    double value = 0;
    double half_width = 0;
    bool estimated = false;
};

/// Whose definition of carbohydrate a number follows; the two are never mixed.
enum class CarbohydrateBasis { not_told, total, available };

/// One line of what was eaten, done, slept, felt, taken or measured.
struct DiaryEntry {
    DiaryKind kind = DiaryKind::note;
    Instant at;
    std::optional<Instant> until;  ///< sleep and movement, where the end was written
    WallTime written;              ///< the wall time as written
    bool time_uncertain = false;   ///< a date without a time, or the repeated hour met alone
    std::string text;              ///< as written; empty if none
    bool not_described = false;    ///< an entry that says it was not described: not "no food"

    std::optional<Amount> carbohydrate_g;
    CarbohydrateBasis carbohydrate_basis = CarbohydrateBasis::not_told;
    std::optional<double> fibre_g;
    std::optional<double> protein_g;
    std::optional<double> fat_g;
    std::optional<double> energy_kcal;
    std::optional<std::string> portion;
    std::optional<std::string> slot;  ///< as written: "breakfast", "Lunch"
    std::optional<Glucose> glucose;   ///< finger-pricks
    std::optional<double> number;     ///< dose, ketones, steps, mood, minutes: with `number_unit`
    std::string number_unit;

    std::string source;   ///< file as given
    int source_line = 0;  ///< first line of the row it came from, 1-based
};

/// Entries ascending by time; equal times keep file order.
using Diary = std::vector<DiaryEntry>;

}  // namespace tracewright
