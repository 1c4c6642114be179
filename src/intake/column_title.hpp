#pragma once

#include "diary/diary_entry.hpp"
#include "intake/meal_title.hpp"
#include "intake/offset_text.hpp"
#include "units/glucose.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// What a column is taken for.
enum class Role : std::uint8_t {
    ignored,
    time,  ///< date and time of day
    date,
    clock,
    end_time,  ///< of sleep or movement
    sleep_start,
    sleep_end,
    meal_time,  ///< of one meal of the day
    glucose,
    finger_prick,
    ketones,
    unit,   ///< names the glucose unit of its row
    kind,   ///< names what the row is
    value,  ///< the number that goes with the kind
    meal_text,
    slot,
    carbohydrate,
    fibre,
    protein,
    fat,
    energy,
    portion,
    movement_text,
    minutes,
    steps,
    sleep_hours,
    mood,
    medicine,
    dose,
    lab,
    alcohol,
    illness,
    symptom,
    sensor_event,
    note,
    person,
    device,
    offset  ///< from UTC of the row's time, or its zone
};

const char* name_of(Role role);

/// What a column title says by the ordinary words of several languages; no file's layout is known
/// by heart. `ignored` if it says nothing.
struct TitleMeaning {
    Role role = Role::ignored;
    std::optional<GlucoseUnit> unit;
    double minutes_per_unit = 1;  ///< durations: 1/60 where the title says seconds, 60 for hours
    bool exchanges = false;       ///< carbohydrate in exchanges or units, not grams
    std::optional<WrittenOffset> offset;  ///< of times: "Time (UTC)"
    std::optional<TitledMeal> meal;
};
TitleMeaning title_meaning(std::string_view title);

/// Whether a title that may name persons may as well number rows or things: "ID", "Name".
bool may_number_rows(std::string_view title);

/// Whether a title says that levels were read by a sensor: "Sensor glucose", "CGM".
bool names_sensed_glucose(std::string_view title);

/// Whether a title can be of finger-pricks where another column is the sensor's: "Blood glucose",
/// "BG", "Meter".
bool names_blood_glucose(std::string_view title);

/// Whether a title says that levels are a meter's, in so many words: "Meter", "Finger", "Strip".
bool names_a_meter(std::string_view title);

/// Whether a title of devices says sensor or serial number: "Sensor ID" does, "Device" doesn't.
bool names_a_sensor(std::string_view title);

/// Whether the title of a column of medicines or doses says more than that: "insulin basal" does,
/// "Dose (mg)" and "medicines taken" don't.
bool names_a_medicine(std::string_view title);

/// What a kind cell ("meal", "fingerstick_mg_dl", "walk") says the row is; empty if nothing known.
struct KindMeaning {
    std::optional<DiaryKind> diary;
    bool glucose = false;  ///< a reading of the trace
    bool sensed = false;  ///< by a sensor, in so many words; "sensor" alone may be an event as well
    bool of_blood = false;  ///< a meter's, where other rows are a sensor's
    std::optional<GlucoseUnit> unit;
};
std::optional<KindMeaning> kind_meaning(std::string_view kind);

/// Whether a cell says how glucose was measured and nothing else: "meter", "CGM".
bool says_how_measured(std::string_view kind);

}  // namespace tracewright
