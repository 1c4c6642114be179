#pragma once

#include "coaching/care_input.hpp"
#include "coaching/licence.hpp"
#include "coaching/proposed.hpp"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace tracewright {

enum class GateKind : std::uint8_t {
    may_be_under_18,
    pregnancy,
    names_a_medicine,
    type_to_be_checked,
    sglt2,
    insulin,
    secretagogue,
    medicines_not_answered,
    eating,
    eating_signs,
    frail,
    eyes,
    lows_with_medicine,
    beta_blocker,
    feet,
    chest,
    what_it_does  ///< tells why others close: by an answer not given, or in spite of one
};

/// Why something proposed is closed. Every gate is told, not only the first.
struct Gate {
    GateKind kind;
    bool open_question = false;  ///< closed only because something was not asked yet
    bool prescriber_opens = false;
    ScopedText for_coach;
    std::string for_client;  ///< empty where there is nothing to tell the client
};

/// What closes an offer of ours: a plan, a change or a trial arm (safety rules 7 to 12). Empty: it
/// may be offered. What was not asked closes like a yes. `words` are the change's own: a medicine,
/// dose or supplement in them is met, those are never offered; and so is what they say beside the
/// kind it was filed under (proposed_in). An answer of the prescriber does
/// not open an offer (rule 9).
///
///                      all  low carbohydrate, fasting,  food    walking
///                           skipping, weight loss       change
///   under 18, pregnancy  x
///   names a medicine     x
///   type, SGLT2, insulin,
///   secretagogue, frail,
///   eyes                      x
///   eating                    x                          x
///   lows with medicine, beta-blocker, feet, eyes, chest            x
///
/// Ages from the year of birth alone: who may be under 18 counts as under 18.
std::vector<Gate> gates_before_offer(Proposed proposed, const std::string& words,
                                     const CareInput& input);

/// What closes writing down a plan that others made: as above, but what the prescriber has answered
/// for this purpose, with an answer that still holds, is open (rule 8). Under 18, pregnancy, eating
/// and a medicine in the words stay closed.
std::vector<Gate> gates_before_plan(Proposed proposed, const std::string& words,
                                    const CareInput& input);

/// The same for several offers or plans of one client, for whom what closes by what it is about is
/// read once, when first asked for. Shows what `care` shows, and must not outlive it.
class ClientGates {
  public:
    explicit ClientGates(const CareInput& care) : care_(care) {}
    std::vector<Gate> before_offer(Proposed proposed, const std::string& words);
    std::vector<Gate> before_plan(Proposed proposed, const std::string& words);

  private:
    using Read = std::vector<Gate> (*)(const CareInput&);
    CareInput care_;
    std::map<Read, std::vector<Gate>> read_;

    const std::vector<Gate>& read_once(Read rule);
    std::vector<Gate> of_kind(Proposed proposed);
    std::vector<Gate> of_all_and_words(const std::string& words);
};

/// One sentence for each gate, in the scope of the coach's licence (safety rule 14).
std::vector<std::string> gates_for_coach(const std::vector<Gate>& gates, Licence licence);

}  // namespace tracewright
