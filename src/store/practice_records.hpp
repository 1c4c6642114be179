#pragma once

#include "coaching/share.hpp"
#include "diary/client_foods.hpp"
#include "time/instant.hpp"
#include "trace/suspect.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// Something a coach wrote down about a client.
struct NoteRecord {
    std::int64_t id = 0;
    Instant at;
    std::int64_t coach = 0;
    std::string text;
};

/// Something a coach promised a client.
struct PromiseRecord {
    std::int64_t id = 0;
    Instant made_at;
    std::int64_t coach = 0;
    CivilDate due;
    std::optional<Instant> kept_at;
    std::string text;
};

/// A coach's word on a stretch of a client's trace.
struct StretchRecord {
    std::int64_t id = 0;
    Instant at;
    std::int64_t coach = 0;
    ToldStretch told;
};

/// Who answered an escalation, when, and what was done.
struct AcknowledgementRecord {
    Instant at;
    std::int64_t coach = 0;
    std::string by;    ///< the name as it was then
    std::string done;  ///< what was done
};

/// An escalation as it stands; the document is the room of the ladder's own.
struct EscalationRecord {
    std::int64_t id = 0;
    std::string event;  ///< stable key of what happened: the same event is one record
    Instant first_seen;
    std::string document;
    std::vector<AcknowledgementRecord> answers;
};

/// A correction, recipe or usual food of a client, and when it was last told.
struct FoodRecord {
    std::int64_t id = 0;
    Instant at;
    std::int64_t coach = 0;
    ClientFood food;
};

/// What was done on one day of a trial, as the client told it then.
struct TrialDayRecord {
    Instant at;
    std::int64_t coach = 0;
    CivilDate day;
    std::string done;  ///< "a", "b" or "neither"
};

/// That a trial was stopped before its end.
struct TrialStop {
    Instant at;
    std::int64_t coach = 0;
    std::string why;
};

/// A trial as it was drawn (trial_document): never rewritten. What was told of its days stands
/// beside it, the first telling first: of one day the last telling counts.
struct TrialRecord {
    std::int64_t id = 0;
    Instant planned_at;
    std::int64_t coach = 0;
    std::string document;
    std::vector<TrialDayRecord> days;
    std::optional<TrialStop> stopped;
};

/// One look through a share.
struct ShareLook {
    Instant at;
    std::string asked;   ///< what was asked for, in the service's own words, never the holder's
    std::string answer;  ///< "open", or why not
};

/// A share that was given, with the looks through it, the first look first.
struct ShareRecord {
    std::int64_t id = 0;
    std::int64_t coach = 0;
    Share share;
    std::vector<ShareLook> looks;
};

/// The share that a token opens, whatever its state, without its looks.
struct OpenedShare {
    std::int64_t client = 0;
    ShareRecord record;
};

/// A finding that a coach kept, with the data it was drawn from.
struct KeptFinding {
    std::int64_t id = 0;
    Instant at;
    std::int64_t coach = 0;
    Interval window{};
    std::int64_t last_import = 0;
    std::string document;
};

}  // namespace tracewright
