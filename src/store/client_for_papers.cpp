#include "store/client_for_papers.hpp"

#include "store/standing_escalations.hpp"

namespace tracewright {

Stored<ClientForPapers> client_for_papers(PracticeStore& store, const ClientRecord& client,
                                          ReviewInput input, const Coach& coach,
                                          const Acting& acting) {
    if (const auto looked = record_escalations(store, client.id, client.facts, acting); !looked) {
        return tl::make_unexpected(looked.error());
    }
    auto standing = standing_escalations(store, client.id, client.facts);
    auto wears = store.wears(client.id, std::nullopt);
    auto diary = store.diary(client.id, std::nullopt);
    if (!standing || !wears || !diary) {
        return tl::make_unexpected(!standing ? standing.error()
                                   : !wears  ? wears.error()
                                             : diary.error());
    }
    ClientForPapers papers;
    papers.coach = coach.name;
    papers.licence = coach.licence;
    papers.facts = client.facts;
    papers.escalations = std::move(*standing);
    for (StoredWear& stored : *wears) {
        papers.wears.push_back(std::move(stored.wear));
    }
    papers.diary = std::move(*diary);
    papers.review =
        client_review({std::move(input), client.name, client.facts, papers.escalations});
    return papers;
}

}  // namespace tracewright
