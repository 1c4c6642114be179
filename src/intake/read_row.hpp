#pragma once

#include "diary/diary_entry.hpp"
#include "intake/clock_text.hpp"
#include "intake/ledger.hpp"
#include "intake/number_text.hpp"
#include "intake/table_shape.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What was decided about a file's columns before its rows are read.
struct ReadingPlan {
    TableShape shape;
    char decimal_mark = '.';
    DateOrder date_order = DateOrder::year_first;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
    GlucoseUnit finger_prick_unit = GlucoseUnit::mg_per_dl;  ///< where neither cell nor title says
    /// A unit that rows name against their numbers, and the user has said otherwise.
    std::optional<GlucoseUnit> unit_not_believed;
    std::optional<std::size_t> glucose_first;  ///< of several glucose columns, before the others
    bool serial_1904 = false;
    bool date_is_midnight = false;      ///< in the column of times a date alone stands for 00:00
    std::optional<std::string> person;  ///< keep rows of this one only
    /// The column that names each row's sensor, where the file holds more than one.
    std::optional<std::size_t> sensor_column;
    std::optional<std::size_t> offset_column;  ///< of each row's distance from UTC
    bool by_meter = false;                     ///< the levels of glucose are finger-pricks
    bool kinds_name_a_sensor = false;  ///< some rows' kinds do: blood glucose beside is a meter's
    bool sensors_certain = false;      ///< its title says sensor or serial number, not just device
};

/// A glucose cell of a row.
struct RowGlucose {
    std::int64_t hundredths = 0;
    Limit limit = Limit::none;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
    std::uint32_t column = 0;
};

/// A time that stands beside that of its row.
struct OwnTime {
    WallTime wall{};
    std::optional<std::chrono::seconds> offset;  ///< from UTC, where one is written
};

/// What one row tells of one thing, and when that was where it was not at the row's own time.
struct RowEntry {
    DiaryEntry what;               ///< times not yet set
    std::optional<OwnTime> begin;  ///< empty: the row's time
    bool clock_told = true;        ///< else the time is a usual one, or another thing's
    std::optional<OwnTime> end;    ///< where the row tells it of this entry
};

/// One row with its meaning, its time still as written.
struct ReadRow {
    /// What became of it so far: to be placed in time, or settled by `note`.
    enum class State : std::uint8_t { data, settled } state = State::settled;
    WallTime wall{};
    std::optional<CivilDate> date;               ///< of `wall`, where a date was written
    std::optional<Instant> instant;              ///< where the row itself says its offset
    std::optional<std::chrono::seconds> offset;  ///< where it says one other than UTC's
    bool clock_told = true;                      ///< else the time of day in `wall` is a usual one
    std::optional<WallTime> end_wall;
    std::optional<Instant> end;  ///< of `end_wall`, where its offset is told
    std::uint32_t line = 0;
    std::uint32_t time_column = 0;
    std::uint32_t sensor = 0;  ///< which of the file's, as they come in it
    std::optional<RowGlucose> glucose;
    std::vector<RowEntry> entries;
    std::vector<std::size_t> unread;  ///< columns that say something here and were not read
    std::optional<RowNote> note;   ///< fate of a settled row; `code` empty: counted without a note
    std::vector<RowNote> remarks;  ///< warnings on a row that is read
};

}  // namespace tracewright
