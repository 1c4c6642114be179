#pragma once

#include "coaching/gates.hpp"
#include "coaching/paper_client.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What a letter to the prescriber is about: everything that is open, one escalation, or something
/// proposed that a gate closes.
struct LetterAbout {
    std::optional<std::int64_t> escalation;  ///< by its number; empty: all that is open
    std::optional<Proposed> proposed;        ///< what the gates are asked about
    std::string words{};                     ///< the proposed change's own
};

/// Why a letter is written and what it asks, each a sentence.
struct LetterReasons {
    std::vector<std::string> reasons;
    std::vector<std::string> asked;
    bool answer_opens = false;  ///< an answer is written down: who, when, until when
};

/// The strongest reason first: emergencies, very lows, help by another, repeated lows, very highs,
/// illness, improvement on risky medicine, weight; then what does not fit the type told, little
/// food beside an SGLT2 inhibitor, and every gate of what is proposed. Of escalations of one kind
/// the latest with how many there are and when (of many the latest three and the first); answered
/// ones of the last 14 days with their answer. No sentence proposes a medicine or names a
/// diagnosis. Without any reason the lists are empty.
LetterReasons letter_reasons(const PaperClient& client, const LetterAbout& about);

/// "15 minutes' walk" in a sentence: what is proposed, in plain words: "fewer carbohydrates".
const char* name_of(Proposed proposed);

/// Why an agreed change does not go on, told to the prescriber: a sentence for each gate, without
/// the coach's own to-do. Never empty for gates that close by what is known.
std::string closed_since_words(const std::vector<Gate>& gates);

}  // namespace tracewright
