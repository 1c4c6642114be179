#pragma once

#include "coaching/due_checks.hpp"

#include <array>
#include <string>
#include <vector>

namespace tracewright {

/// What a practice reminds of, and when not. Nothing sends by itself: a reminder is a text that the
/// coach copies.
struct ReminderRules {
    std::chrono::minutes quiet_from{21 * 60};  ///< by the client's clock
    std::chrono::minutes quiet_to{8 * 60};     ///< the same as `quiet_from`: no quiet hours
    int silent_hours = 24;                     ///< without data while a wear is on
    int most_a_day = 2;                        ///< texts to one client; the rest waits
    std::vector<std::string> off;              ///< kinds that this practice does not remind of
};

/// Kinds that can be switched off, in the order in which they are told.
inline constexpr std::array reminder_kinds = {"two_hours", "trial_day",   "trial_ended",
                                              "no_data",   "wear_ending", "agreed_change",
                                              "third_day", "laboratory"};

struct Reminder {
    std::string kind;
    Instant by;
    std::string why;     ///< to the coach
    std::string text;    ///< to copy
    Instant not_before;  ///< now, or the end of the quiet hours
};

struct ClientReminders {
    /// The ladder's first two levels, not acknowledged: apart from all rules, never quiet, never
    /// switched off.
    std::vector<std::string> first;
    std::vector<Reminder> reminders;
    int waiting = 0;  ///< beyond `most_a_day`
};

/// Method: docs/methods/between-wears.md.
ClientReminders reminders_for(const CaseloadClient& client, const ReminderRules& rules,
                              Instant as_of);

}  // namespace tracewright
