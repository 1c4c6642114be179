#pragma once

#include "diary/diary_entry.hpp"
#include "intake/clock_text.hpp"
#include "intake/file_error.hpp"
#include "intake/ledger.hpp"
#include "intake/open_source.hpp"
#include "time/zone_history.hpp"
#include "trace/reading.hpp"
#include "trace/wear.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What to do where rows tell their distance from UTC and no zone is told.
enum class WithoutZone : std::uint8_t {
    ask,        ///< the zone is a question, and nothing is stored
    as_written  ///< the clock stands at the first row's distance; UTC where none tells another
};

/// Whose levels those of the glucose columns are.
enum class MeasuredBy : std::uint8_t { sensor, meter };

/// What to do where they lie farther apart than a sensor's and nobody has told whose they are.
enum class LevelsApart : std::uint8_t { as_sensor, ask };

/// What the user knows better than the guess. Each overrides one guess; none is needed where the
/// file itself decides.
struct IntakeOptions {
    SourceOptions source;
    std::optional<GlucoseUnit> unit;
    std::optional<DateOrder> date_order;
    std::optional<char> decimal_mark;
    std::optional<std::string> time_column;     ///< header text or 1-based number
    std::optional<std::string> glucose_column;  ///< header text or 1-based number
    std::optional<std::uint32_t> header_line;
    std::optional<std::string> person;  ///< which value of an id column to keep
    ZoneHistory zones{Zone::floating()};
    WithoutZone without_zone = WithoutZone::as_written;
    std::optional<MeasuredBy> measured_by;
    LevelsApart levels_apart = LevelsApart::as_sensor;
    /// The clock of the program: times after it are "in the future". Empty: not checked.
    std::optional<Instant> as_of;
    /// What errors and entries call the file; empty: its path.
    std::string called;
    /// Sheets of a workbook that are not read are noted; whoever reads them as well says no.
    bool tell_other_sheets = true;
    /// A plain file may be read by the fast way; the result is the same.
    bool fast = true;
};

/// One thing the reader found by itself, shown before anything rests on it.
struct Guess {
    std::string what;   ///< "unit", "date order", "delimiter", "header", "time column", ...
    std::string found;  ///< "mmol/L"
    std::string sure;   ///< "certain", "likely" or "asked for by option"
    std::string why;    ///< "column title says mmol/L; median 7.4"
};

/// Something only a person can answer; nothing of the rows concerned is stored until then.
struct Question {
    std::string code;      ///< "unit", "date_order", "decimal_mark", "decimal_comma",
                           ///< "twelve_hour_clock", "person", "measured_by"...
    std::string sentence;  ///< with a sample row's text
    std::string guess;     ///< what we would take
    std::string option;    ///< the option that answers it
};

/// What one column was taken for.
struct ColumnRole {
    std::uint32_t column = 0;  ///< 1-based
    std::string title;
    std::string
        role;  ///< "time", "date", "clock", "glucose", "finger-prick", "meal text", "ignored"...
    std::string unit;  ///< where it has one
};

/// A reading that was not stored beside another of the same moment.
struct HeldReading {
    Instant at;
    Glucose value;
    std::uint32_t line = 0;
};

/// What one file gave. With `error` set there are no readings and no entries.
struct Intake {
    std::string file;
    std::optional<FileError> error;
    SourceFacts facts;
    std::vector<Guess> guesses;
    std::vector<Question> questions;
    std::vector<ColumnRole> columns;
    std::vector<std::vector<std::string>> sample;  ///< up to ten data rows as understood
    Ledger ledger;

    std::vector<Reading> readings;  ///< ascending, distinct moments, intervals set
    /// Those of further sensors, where a column names them: each as `readings`, in order of their
    /// first. They may be of the same moments.
    std::vector<std::vector<Reading>> other_sensors;
    std::vector<HeldReading> held;  ///< conflicts
    Diary diary;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
    /// How many readings there are, of all sensors.
    std::size_t count_of_readings() const;

    Zone zone = Zone::floating();                   ///< what wall times were read by
    std::optional<std::chrono::seconds> stands_at;  ///< no zone told: the rows' distance from UTC
    bool in_utc = false;                            ///< no zone told, and rows tell UTC alone
    bool clock_did_not_change = false;  ///< a device that slept through the clock change
};

/// Takes an intake's readings, sensor by sensor, and cuts them into wears (`wears_of`), in order of
/// their beginnings.
std::vector<Wear> wears_in(Intake& intake, const std::string& source,
                           std::chrono::seconds new_wear_after);

/// Reads one file of sensor readings, diary entries or both; guesses what it must, says what it
/// guessed, and accounts for every row by the table of interchange 4.4. Never throws on input.
Intake bring_in(const std::string& path, const IntakeOptions& options = {});

/// The same of bytes in memory.
Intake bring_in_bytes(std::string bytes, const std::string& name,
                      const IntakeOptions& options = {});

}  // namespace tracewright
