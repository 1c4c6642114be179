#pragma once

#include "coaching/prescriber_answer.hpp"
#include "coaching/proposed.hpp"
#include "measures/goals.hpp"
#include "time/instant.hpp"
#include "time/way_of_writing.hpp"
#include "units/glucose.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// To a question about a caution. Not asked is not 'no': what depends on it stays closed.
enum class Answered : std::uint8_t { not_yet, no, yes };

enum class Pregnancy : std::uint8_t { not_answered, no, pregnant, planning, unsure };

enum class ContactKind : std::uint8_t { emergency, prescriber, clinic, other };

struct Contact {
    ContactKind kind = ContactKind::other;
    std::string name;
    std::string telephone;
};

/// A medicine as the client or coach wrote it, with the dates it was taken.
struct MedicineLine {
    std::string written;
    std::optional<CivilDate> from;   ///< empty: since before the coach knew the client
    std::optional<CivilDate> until;  ///< empty: still taken
};

/// That a screen on eating was done, by whom and with what result; never the screen itself.
struct EatingScreen {
    std::optional<CivilDate> asked_on;
    std::string by;
    Answered positive = Answered::not_yet;
};

/// What the coach must be careful about.
struct Cautions {
    Pregnancy pregnancy = Pregnancy::not_answered;
    EatingScreen eating;
    Answered severe_low_before = Answered::not_yet;
    Answered kidney_disease = Answered::not_yet;
    Answered liver_disease = Answered::not_yet;
    Answered heart_disease = Answered::not_yet;
    Answered chest_symptoms = Answered::not_yet;
    Answered eye_disease = Answered::not_yet;
    Answered numb_feet_or_wound = Answered::not_yet;
    Answered stomach_surgery = Answered::not_yet;
    Answered frail = Answered::not_yet;
    Answered another_autoimmune_disease = Answered::not_yet;
    std::optional<CivilDate> last_eye_check;
    std::string others;  ///< in words
};

struct LabResult {
    CivilDate on;
    std::string what;  ///< "HbA1c", "fasting glucose"
    double value = 0;
    std::string unit;
};

/// The zone of the client's clock from a wall time on, read in the zone that was left.
struct ZoneSince {
    std::string zone;              ///< IANA name
    std::optional<WallTime> from;  ///< empty: the home zone
};

struct Consent {
    std::optional<CivilDate> given_on;
    std::string what_is_kept;
    std::string who_sees;
    std::optional<CivilDate> until;
    std::optional<CivilDate> withdrawn_on;
};

/// Bought, and used up so far.
struct Supply {
    int bought = 0;
    int used = 0;
};

/// How an agreed change ended; `open` while it goes on.
enum class ChangeOutcome : std::uint8_t { open, kept, dropped, changed };

/// What a change does to eating.
enum class EatingChange : std::uint8_t {
    not_answered,
    nothing,
    as_much,  ///< other food or another order, no less, no later, no meal left out
    less      ///< less food or carbohydrate, a meal less or later, longer without food
};

/// What a change in a coach's own words does, as the coach answered. What is not answered counts as
/// the riskiest answer.
struct WhatItDoes {
    EatingChange eating = EatingChange::not_answered;
    Answered moves = Answered::not_yet;     ///< the body: a walk, the stairs, the garden
    Answered medicine = Answered::not_yet;  ///< touches one, its dose or its time
};

/// The one thing agreed, in the client's words. What was not told is empty.
struct AgreedChange {
    std::string words;  ///< what the client will do
    std::optional<CivilDate> agreed_on;
    std::optional<CivilDate> check_on;
    std::string when = {};  ///< "right after dinner"
    std::string where = {};
    std::string how_often = {};
    std::string if_not = {};       ///< what then, on a day on which it can't be done
    std::string how_checked = {};  ///< by what it is looked at on `check_on`
    /// Days of readings that the check needs, planned from the client's own noise.
    std::optional<int> check_days = {};
    std::string stop_when = {};  ///< when the client stops at once, or for good
    Proposed kind = Proposed::other;
    ChangeOutcome outcome = ChangeOutcome::open;
    std::optional<CivilDate> ended_on = {};  ///< empty while it goes on
    std::string candidate = {};              ///< code of the one it comes from; empty: own words
    WhatItDoes does = {};
};

/// What a practice knows of one client besides readings and diary: plain values. What was not
/// asked says so and closes only what depends on it.
struct ClientFacts {
    std::string why_they_came;  ///< in their words
    std::optional<int> born_year;
    std::string told_type;  ///< the type of diabetes the client was told
    std::optional<CivilDate> diagnosed_on;
    std::string language;  ///< BCP 47 tag of papers; empty: the practice's own
    GlucoseUnit unit = GlucoseUnit::mmol_per_l;  ///< the one the client thinks in
    WayOfWriting writing;  ///< the practice's, as it stands: not a fact of the client's document
    std::vector<ZoneSince> zones;
    std::vector<Contact> contacts;
    std::optional<CivilDate> medicines_asked_on;  ///< empty: never asked, all counts as risky
    std::vector<MedicineLine> medicines;
    std::vector<PrescriberAnswer> prescriber_answers;
    Cautions cautions;
    Goals goals = consensus_goals(GoalKind::adults);
    std::string goals_agreed_with;
    std::optional<CivilDate> goals_agreed_on;
    std::vector<LabResult> labs;
    Consent consent;
    Supply sessions;
    Supply sensors;
    std::optional<AgreedChange> agreed_change;
    std::vector<AgreedChange> earlier_changes;  ///< ended ones, the earliest first
};

/// The goals that hold: pregnancy (also planned or not sure) has none of ours (safety rule 11).
Goals goals_that_hold(const ClientFacts& facts);

}  // namespace tracewright
