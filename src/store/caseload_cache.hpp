#pragma once

#include "coaching/caseload.hpp"
#include "store/client_of_list.hpp"
#include "store/sqlite_practice.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <vector>

namespace tracewright {

/// The list of clients for a program that stays. What was read of a client is kept in memory, never
/// on disk, and read again when the audit names the client: every change writes there, whoever
/// makes it. The lines are made anew at each look, for they tell how long ago things are. Gives
/// what reading everyone and `caseload` give, at every moment and after every change.
///
/// Everyone is read again for an earlier moment than before; one of whom something is dated after
/// the moment of the look is read at every look, as it may have come to be in between. Everyone is
/// read again on a new day of their own clock: what is to be told rests on medicines and answers
/// that begin and end with a day.
class CaseloadCache {
  public:
    /// How one client is read as of a moment.
    using Reads = std::function<Stored<CaseloadClient>(PracticeStore&, const ClientLine&, Instant)>;
    explicit CaseloadCache(Reads reads = client_of_list) : reads_(std::move(reads)) {}

    Stored<std::vector<CaseloadLine>> lines(SqlitePractice& practice, Instant as_of);

    /// How many clients the last look read out of the store.
    std::size_t read_last() const { return read_last_; }

  private:
    Reads reads_;
    std::vector<CaseloadClient> clients_;  ///< in the order of the practice's list
    std::vector<std::int64_t> numbers_;    ///< of the same
    std::map<std::int64_t, Instant> last_deed_;
    std::map<std::int64_t, bool> ahead_;  ///< something is dated after the moment of reading
    std::map<std::int64_t, std::array<CivilDate, 2>> days_;
    std::optional<Instant> as_of_;  ///< of the last look that ended well
    std::int64_t audit_read_ = 0;
    std::size_t read_last_ = 0;

    void forget();
    Stored<std::vector<CaseloadLine>> lines_of_this_moment(SqlitePractice& practice, Instant as_of);
    Stored<CaseloadClient> read(SqlitePractice& practice, const ClientLine& line, Instant as_of);
};

}  // namespace tracewright
