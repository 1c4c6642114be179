#pragma once

#include "store/sqlite_database.hpp"
#include "store/trace_block.hpp"
#include "trace/wear.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// A wear as kept. Its readings stand in blocks and are read apart.
struct WearRow {
    std::int64_t id = 0;
    std::vector<std::uint8_t> sealed_source;
    Instant start;
    bool start_told = false;
    WearEnd end = WearEnd::not_told;
    std::optional<Instant> planned_end;
    std::chrono::seconds interval{0};
    std::optional<Instant> changed_by_hand_at;
};

/// Wears and blocks of readings in the embedded database. Within a caller's transaction; throws
/// DatabaseFailure.
class TraceTable {
  public:
    explicit TraceTable(Database& database);

    std::vector<WearRow> wears(std::int64_t client);
    std::int64_t add_wear(std::int64_t client, const WearRow& wear);
    void change_wear(const WearRow& wear);
    void remove_wear(std::int64_t wear);

    /// Whole days that reach into the window (all of them without one), readings outside it cut
    /// off. Throws std::runtime_error at a damaged block.
    std::vector<Reading> readings(std::int64_t client, std::int64_t wear,
                                  std::optional<Interval> window = std::nullopt);
    std::optional<Bytes> block(std::int64_t client, std::int64_t wear, UtcDay day);
    void put_block(std::int64_t client, std::int64_t wear, UtcDay day, std::size_t readings,
                   std::span<const std::uint8_t> block);
    void remove_block(std::int64_t client, std::int64_t wear, UtcDay day);

    /// Tells a wear of a reading at that moment, which may be its last.
    void reach(std::int64_t wear, Instant at);
    /// The moment of the client's last reading.
    std::optional<Instant> last_reading(std::int64_t client);
    /// Of every client who has a reading. One pass: asked client by client it costs three times
    /// that.
    std::map<std::int64_t, Instant> last_readings();
    /// A sentence for every block that does not read, or reads otherwise than its row says.
    std::vector<std::string> faults();

  private:
    Database& database_;
    Statement wears_;
    Statement add_wear_;
    Statement change_wear_;
    Statement remove_wear_;
    Statement blocks_;
    Statement count_;
    Statement block_;
    Statement put_block_;
    Statement remove_block_;
    Statement reach_;
};

}  // namespace tracewright
