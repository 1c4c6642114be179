#pragma once

#include "cli/client_of_change.hpp"
#include "coaching/paper_client.hpp"
#include "coaching/prescriber_letter.hpp"

#include <vector>

namespace tracewright {

/// What the papers on a client read: the review that `review` shows of the same data, and of a
/// practice all that is kept, raw, for the letter.
struct ClientForPapers {
    FirstReview review;
    ClientFacts facts;
    std::vector<StandingEscalation> escalations;
    std::vector<Wear> wears;  ///< all of them; of files those of the review
    Diary diary;
    std::string coach;  ///< empty: from files
    Licence licence = Licence::none;
    Exit exit = Exit::done;

    PaperClient paper_client() const { return {review, facts, escalations, coach, licence}; }
    LetterRecord record() const { return {wears, diary}; }
};

/// `looked`: what the audit notes. `note`: kept among the client's notes; only a practice can keep
/// it. Error: the exit code, its sentence said.
tl::expected<ClientForPapers, Exit> client_for_papers(const WhoseChange& whose, const char* looked,
                                                      const std::string& note,
                                                      const Streams& streams);

}  // namespace tracewright
