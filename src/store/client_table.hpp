#pragma once

#include "access/coach.hpp"
#include "access/sealing.hpp"
#include "coaching/client_facts.hpp"
#include "store/audit_table.hpp"
#include "store/sqlite_database.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tracewright {

/// A client's own mark: drawn by lot when the client is added, kept in erasure lists, never shown.
using ClientMark = std::array<std::uint8_t, 16>;

/// A client as kept, names opened.
struct ClientRow {
    std::int64_t id = 0;
    ClientMark mark{};
    std::string handle;
    std::string name;
    ClientFacts facts;
    std::int64_t revision = 0;
};

/// Clients in the embedded database: names and facts sealed. Within a caller's transaction; throws
/// DatabaseFailure, and std::runtime_error at a text that does not open.
class ClientTable {
  public:
    ClientTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    /// The client's own place for sealed text; empty if there is no such client.
    std::optional<std::string> place_of(std::int64_t client);
    std::optional<ClientMark> mark_of(std::int64_t client);
    std::optional<std::int64_t> client_marked(const ClientMark& mark);
    std::optional<ClientRow> client(std::int64_t client);
    /// Id, handle and name, in order of handles; the facts are not opened.
    struct Called {
        std::int64_t id;
        std::string handle;
        std::string name;
    };
    std::vector<Called> clients();
    std::optional<Called> called(std::int64_t client);
    /// In order of handles.
    std::vector<std::int64_t> numbers();
    std::optional<std::int64_t> with_handle(std::string_view handle);
    std::int64_t add(const std::string& handle, const std::string& name, const ClientFacts& facts,
                     Instant at);
    void change(const ClientRow& row);
    void remove(std::int64_t client);

  private:
    Database& database_;
    const Seal& seal_;
};

/// Coaches in the embedded database: names sealed.
class CoachTable {
  public:
    CoachTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    std::vector<std::pair<std::int64_t, Coach>> coaches();
    std::int64_t add(const Coach& coach, Instant at);
    void change(std::int64_t id, const Coach& coach, Instant at);

  private:
    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
