#pragma once

#include "findings/first_review.hpp"
#include "store/caseload_cache.hpp"
#include "store/practice_store.hpp"

#include <cstdint>
#include <list>
#include <memory>
#include <string>
#include <utility>

namespace tracewright {

/// All wears and the diary of clients looked at last, opened and joined once, for as long as the
/// version they were read at holds; and what the list of clients was made of. One for each worker:
/// for one thread.
class ClientShelf {
  public:
    using Sheets = std::shared_ptr<const FirstReview>;

    Stored<Sheets> sheets(PracticeStore& store, const ClientRecord& client, std::uint64_t version);
    CaseloadCache& caseload() { return caseload_; }

  private:
    struct Standing {
        std::string handle;
        std::uint64_t version;
        Sheets sheets;
    };
    CaseloadCache caseload_;
    std::list<Standing> shelf_;  ///< looked at last first
};

}  // namespace tracewright
