#pragma once

#include "diary/diary_entry.hpp"
#include "trace/wear.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What a file gave, as the intake read it: what an import starts from.
struct BroughtIn {
    std::string source;  ///< the file's name as given; sealed where it is kept
    std::vector<Reading> readings;
    /// Of further sensors, where the file tells them apart: none empty, none beginning sooner.
    std::vector<std::vector<Reading>> other_sensors;
    Diary diary;
    struct Held {
        Instant at;
        Glucose value;
        std::uint32_t line = 0;
    };
    std::vector<Held> held;  ///< in conflict within the file itself
    std::uint64_t rows_stored = 0;
    std::uint64_t rows_duplicate = 0;
    std::uint64_t rows_conflict = 0;
    std::uint64_t rows_rejected = 0;

    std::uint64_t rows_read() const {
        return rows_stored + rows_duplicate + rows_conflict + rows_rejected;
    }
};

/// A wear the client already has, with its readings near the file's.
struct KnownWear {
    std::int64_t id = 0;
    Wear wear;
};

/// How the coach answered 'is this this client's file?'.
enum class WhoseFile : std::uint8_t {
    not_asked,
    this_client  ///< yes: what contradicts is a second sensor, or stays held row by row
};

/// How well two sets of readings of one time agree.
struct Agreement {
    std::size_t pairs = 0;
    double mean_relative_difference = 0;  ///< mean of |a - b| / mean of both
    double correlation = 0;
};

/// What an import would do to a client; nothing is stored yet. The four row counts add up to the
/// rows read.
struct ImportPlan {
    struct PlannedWear {
        std::optional<std::int64_t> joins;  ///< a wear the client has; else a new one
        Wear wear;                          ///< with the new readings only
    };
    std::vector<PlannedWear> wears;
    Diary entries;                      ///< new ones
    std::vector<BroughtIn::Held> held;  ///< beside what is there, neither dropped
    std::uint64_t rows_stored = 0;
    std::uint64_t rows_duplicate = 0;
    std::uint64_t rows_conflict = 0;
    std::uint64_t rows_rejected = 0;
    /// Set: nothing may be stored until this is answered, and all rows that would have been stored
    /// count as in conflict.
    std::optional<std::string> question;
    std::optional<Agreement> agreement;  ///< where the file overlaps a wear without repeating it

    bool stores_nothing() const { return wears.empty() && entries.empty() && held.empty(); }
};

/// Sorts a file's rows into new, known, and contradicting ones.
/// - The same moment with the same level (to the rounding of the coarser unit) is a duplicate; with
///   another level it is a conflict: what is stored stays (interchange 4.4 rows 16, 17).
/// - A wear that one of the file's sensors repeats is that sensor's: another sensor of the file
///   neither repeats nor contradicts it.
/// - Readings that repeat a wear or follow it within `new_wear_after` join it; others make wears.
/// - The file as a whole is held, with a question, if it contradicts a wear (row 44): where it has
///   a wear's moments, more than 1 in 50 (at least 3) of the levels differ; where its moments lie
///   between, the two agree worse than two sensors on one body do: mean relative difference above
///   25 % or correlation below 0.6, or fewer than 12 pairs to tell by. Limits: ours, no source;
///   docs/methods.md says what they give on the open data.
/// `known_entry` says whether the client has this very diary entry already.
ImportPlan import_plan(BroughtIn file, std::span<const KnownWear> known,
                       const std::function<bool(const DiaryEntry&)>& known_entry,
                       WhoseFile whose = WhoseFile::not_asked,
                       std::chrono::seconds new_wear_after = std::chrono::hours{12});

/// Pairs each reading of `a` with the one of `b` nearest in time, up to half of the longer interval
/// away. `a` and `b` ascending.
Agreement agreement_of(std::span<const Reading> a, std::span<const Reading> b);

}  // namespace tracewright
