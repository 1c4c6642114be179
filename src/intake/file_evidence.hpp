#pragma once

#include "intake/column_guesses.hpp"
#include "intake/column_values.hpp"
#include "intake/plain_scan.hpp"
#include "intake/row_source.hpp"
#include "intake/table_shape.hpp"

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace tracewright {

/// How far a column of offsets or zones can be applied to the times beside it.
struct OffsetEvidence {
    struct Unread {
        std::uint64_t rows = 0;
        std::uint32_t first_line = 0;
        std::uint32_t first_column = 0;  ///< where the cell stands in its line
    };
    std::uint64_t read = 0;
    /// What else stands there beside times, nothing among it; of many the first `most_unread`.
    std::map<std::string, Unread> unread;

    static constexpr std::size_t most_unread = 64;
};

/// Everything the columns of a file say before its rows are read.
struct FileEvidence {
    DecimalMarkEvidence mark;
    UnitEvidence unit;
    UnitEvidence meter;                           ///< the levels of finger-pricks
    std::map<std::size_t, UnitEvidence> unit_of;  ///< of each column, where their titles differ
    /// Levels whose own row or cell names their unit, by that unit.
    std::map<GlucoseUnit, UnitEvidence> told_in;
    DateOrderEvidence order;
    TwelveHourEvidence twelve_hour;
    std::map<std::size_t, ColumnValues> persons;  ///< of each column that may name persons
    /// What these columns hold together on one row, in their order, up to `most_people` of it;
    /// without those whose titles may be of row numbers.
    std::set<std::vector<std::string>> people;
    std::map<std::size_t, ColumnValues> devices;    ///< of each column that names devices
    std::map<std::size_t, OffsetEvidence> offsets;  ///< of each column of offsets
    std::uint64_t data_rows = 0;
    std::uint64_t with_clock = 0;  ///< rows whose time is a date and a time of day
    std::uint64_t date_alone = 0;
    bool unit_column_explains = false;
    bool kinds_name_a_sensor = false;
    std::string mark_sample;
    std::string date_sample;
    std::string open_date;  ///< the first whose day and month could be either way round
    std::uint32_t open_date_line = 0;
};

constexpr std::size_t most_people = 64;

/// Reads the source once for what its columns say; leaves it at its beginning.
FileEvidence evidence_of(RowSource& source, const TableShape& shape);

/// What the plain rows say of the columns, as the careful way would have gathered it.
FileEvidence evidence_of(const PlainRows& rows);

}  // namespace tracewright
