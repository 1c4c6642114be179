#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

enum class Answer { yes, no_difference_worth_acting_on, cannot_tell };

/// Why a reader should hold a finding loosely. Typed, so that no caller can drop one unseen.
enum class CaveatKind {
    few_days,
    below_consensus_coverage,
    hours_unseen,
    old_data,
    censored,
    sensor_suspect,
    several_wears,
    two_sensors_at_once,
    levels_held,      ///< several told for one moment: none is counted
    levels_not_read,  ///< written in a way that no one reads here
    zone_not_told,
    zones_changed,
    end_not_seen,
    single_readings,
    medicines_not_known,
    medicine_changed,
    travels_together,  ///< with another cause
    diary_incomplete,
    illness_left_out,
    strong_day_to_day,  ///< serial correlation beyond what the method was tried for
    unlike_others,      ///< disagrees with what was published
    absence_read_as_none,
    other_kind_of_sensor,
    days_in_turn,       ///< they rose or fell, one after the other
    chosen_because_bad  ///< what was looked at because it was bad gets better by itself
};

struct Caveat {
    CaveatKind kind;
    std::string sentence;
};

enum class NextStep {
    nothing,
    collect_more,
    run_trial,
    agree_change,
    contact_prescriber,
    finger_prick,
    ask_client
};

struct Next {
    NextStep step = NextStep::nothing;
    std::string sentence;
};

/// A number with its interval, as far as there is one.
struct Estimate {
    double value = 0;
    std::string unit;
    std::optional<std::array<double, 2>> interval95;
    std::string per;  ///< "a day", "per hour less sleep"; empty for a plain level
};

struct Evidence {
    int used = 0;
    std::string used_what;  ///< "days", "nights", "meals"
    int left_out = 0;
    std::string left_out_why;
    std::string method;
    std::uint64_t seed = 0;
    std::vector<std::string> adjusted_for;
};

/// A question, its answer, and all that page, print, command and JSON say of it.
struct Finding {
    std::string code;      ///< stable: "lows", "in_range", "when_high", ...
    std::string question;  ///< in the coach's words
    Answer answer = Answer::cannot_tell;
    std::optional<Estimate> estimate;
    Evidence evidence;
    std::vector<Caveat> caveats;
    Next next;
    std::string sentence;         ///< for the coach
    std::string client_sentence;  ///< for the client; empty where a finding is not for the client
};

}  // namespace tracewright
