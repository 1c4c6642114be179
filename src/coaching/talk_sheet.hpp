#pragma once

#include "coaching/paper.hpp"
#include "coaching/paper_client.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// A question to ask before a finding is shown, and the finding that it was made from.
struct TalkQuestion {
    std::string question;
    std::string behind;  ///< for the coach alone; empty for a question that opens any talk
};

/// Three questions from the review's leading findings, in their order, each asked once; what is
/// short is filled with questions that open any talk.
std::vector<TalkQuestion> talk_questions(const PaperClient& client);

/// The coach's own page for a talk: what must be done before it, three questions to ask before a
/// finding is shown, room for the client's explanation, one thing to show, what the client will say
/// of it in their words, importance and confidence from 0 to 10 (below 7: a smaller change; common
/// practice, no source), and what to ask after a lapse.
Paper talk_sheet(const PaperClient& client);

}  // namespace tracewright
