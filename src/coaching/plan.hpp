#pragma once

#include "coaching/candidate_changes.hpp"
#include "coaching/care_input.hpp"
#include "coaching/gates.hpp"
#include "findings/question_findings.hpp"
#include "findings/review_input.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What may be said of one candidate.
enum class CandidateSays {
    worth_agreeing,  ///< 80 % sure or more that the gain is worth having
    find_out_first,  ///< in between, from others alone, or others disagree: a trial tells
    not_worth_it     ///< under 20 % sure
};

/// By what an agreed change is looked at, planned on the same day from the client's own noise.
struct CheckPlan {
    std::optional<int> days;   ///< of readings on each side of the change; empty: out of reach
    std::optional<int> pairs;  ///< of days in the trial that would tell instead
    std::string by;            ///< in a few words, for what is agreed
    std::string words;         ///< the whole sentence
};

/// A change that may be offered, with what it may be worth to this client.
struct RankedCandidate {
    const CandidateChange* change = nullptr;
    std::optional<QuestionFinding> own;  ///< what the client's own days say; shown by itself
    OthersOfCandidate others;            ///< shown apart from it
    std::optional<NormalTelling> both;   ///< the two together, per `change` of the cause
    int days_touched = 0;                ///< nights, days or meals on which there was room for it
    int days_read = 0;
    double hours = 0;                 ///< expected gain in hours in range a day
    std::array<double, 2> hours95{};  ///< of `both`, not of the client's days alone
    double probability = 0;           ///< that the gain is at least the worth
    CandidateSays says = CandidateSays::find_out_first;
    std::vector<std::string> cautions;
    std::vector<std::string> sentences;  ///< for the coach, in order
};

/// A change that may not be offered now: nothing is said of what it would be worth.
struct ClosedCandidate {
    const CandidateChange* change = nullptr;
    std::vector<Gate> gates;
    Proposed proposed{};  ///< what it is for this client
};
/// What opens a gate: a question to the client, a letter to the prescriber; empty: nothing does. Of
/// pregnancy: nothing does, and the prescriber is to be told (safety rule 11).
std::string opens(const Gate& gate);
/// Whether a letter to the prescriber is the next step at this gate.
bool calls_for_letter(const Gate& gate);

enum class PlanSays { agree_on_one, find_out_first, no_change_yet, one_is_agreed, nothing_offered };

struct PlanSettings {
    /// Hours in range a day that are worth a change: half an hour; ours, no source.
    double worth_hours = 0.5;
};

struct Plan {
    PlanSays says = PlanSays::no_change_yet;
    std::string sentence;
    std::vector<RankedCandidate> ranked;  ///< by expected gain, then the lesser effort
    std::vector<ClosedCandidate> closed;
    std::optional<CheckPlan> check;   ///< of the first of `ranked`
    std::vector<Gate> agreed_closed;  ///< gates_since_agreed
    double worth_hours = 0;
};

/// Candidate changes of one client, each through the gates of safety.md 7 to 14 before anything is
/// said of it. The client's own findings (asked together, counted together) are joined with what
/// was found in others where a row can be told in the same measure; the hours are those that the
/// days read would have had in range, had the change been made on those with room for it. A sum
/// over the client's own days to rank by, not a forecast. Method: docs/methods/plan.md.
Plan plan_for(const ReviewInput& input, const CareInput& care, const PlanSettings& settings = {});

}  // namespace tracewright
