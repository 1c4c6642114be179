#pragma once

#include "coaching/paper_client.hpp"
#include "coaching/prescriber_letter.hpp"
#include "store/practice_store.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What the papers on a client read: the review that is shown of the same data, and all that is
/// kept, raw, for the letter.
struct ClientForPapers {
    FirstReview review;
    ClientFacts facts;
    std::vector<StandingEscalation> escalations;
    std::vector<Wear> wears;  ///< all of them; of files those of the review
    Diary diary;
    std::string coach;  ///< empty: from files
    Licence licence = Licence::none;

    PaperClient paper_client() const { return {review, facts, escalations, coach, licence}; }
    LetterRecord record() const { return {wears, diary}; }
};

/// Of a practice; what escalates is looked for first. `input` is that of the review, `coach` who
/// asks.
Stored<ClientForPapers> client_for_papers(PracticeStore& store, const ClientRecord& client,
                                          ReviewInput input, const Coach& coach,
                                          const Acting& acting);

}  // namespace tracewright
