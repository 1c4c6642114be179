#pragma once

#include "coaching/client_facts.hpp"
#include "coaching/escalation.hpp"
#include "coaching/licence.hpp"
#include "findings/first_review.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// An escalation as it stands when a review is made.
struct StandingEscalation {
    Escalation escalation;
    Instant first_seen;
    std::string answer;  ///< "Wed 4 March 09:10, Sorrel: rang the client"; empty: not answered yet
    std::int64_t number = 0;  ///< by which it is answered
};

/// A client's review: the readings and diary of a window, with what the practice knows.
struct ClientReviewInput {
    ReviewInput review;
    std::string name;
    ClientFacts facts;
    std::vector<StandingEscalation> escalations;  ///< of the window, from `escalations`
    Licence licence = Licence::none;              ///< of the coach it is made for
};

/// The first review joined with the client's facts: what is not answered leads, why they came comes
/// next, then the findings, medicines with their changes, cautions, how complete the diary is, the
/// last agreed change, and dips that may be pressure. Ends with one thing seen, one to ask, one to
/// note. Reads nothing and asks no clock.
FirstReview client_review(ClientReviewInput input);

}  // namespace tracewright
