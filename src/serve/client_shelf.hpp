#pragma once

#include "findings/first_review.hpp"
#include "store/practice_store.hpp"

#include <cstdint>
#include <list>
#include <memory>
#include <string>
#include <utility>

namespace tracewright {

/// All wears and the diary of clients looked at last, opened and joined once, for as long as the
/// version they were read at holds. One for each worker: for one thread.
class ClientShelf {
  public:
    using Sheets = std::shared_ptr<const FirstReview>;

    Stored<Sheets> sheets(PracticeStore& store, const ClientRecord& client, std::uint64_t version);

  private:
    struct Standing {
        std::string handle;
        std::uint64_t version;
        Sheets sheets;
    };
    std::list<Standing> shelf_;  ///< looked at last first
};

}  // namespace tracewright
