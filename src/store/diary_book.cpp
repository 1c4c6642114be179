#include "store/diary_book.hpp"

#include "store/client_table.hpp"
#include "store/diary_document.hpp"
#include "store/diary_table.hpp"
#include "store/import_table.hpp"
#include "store/practice_schema.hpp"
#include "store/sqlite_failure.hpp"
#include "store/trace_table.hpp"
#include "store/who_may.hpp"

#include <algorithm>

namespace tracewright {

namespace {

// What the entry's import is called: its own day stands in the diary.
constexpr const char* corrected_source = "a correction";
constexpr const char* struck_source = "struck out";

}  // namespace

struct DiaryBook::Tables {
    Database database;
    Seal seal;
    CoachTable coaches;
    ClientTable clients;
    TraceTable trace;
    DiaryTable diary;
    ImportTable imports;
    AuditTable audit;
    Statement standing;
    Statement taken;
    Statement add;

    explicit Tables(const SqlitePractice& practice)
        : database(practice.path(), Database::Mode::existing),
          seal(practice.key()),
          coaches(database, seal),
          clients(database, seal),
          trace(database),
          diary(database, seal),
          imports(database, seal, trace, diary),
          audit(database),
          standing(
              database,
              "SELECT id, import, instead_of IS NOT NULL, sealed_entry FROM diary_entry AS one "
              "WHERE client = ? AND at >= ? AND at < ? AND struck = 0 AND NOT EXISTS "
              "(SELECT 1 FROM diary_entry AS later WHERE later.instead_of = one.id) "
              "ORDER BY at, id"),
          taken(database, "SELECT 1 FROM diary_entry WHERE client = ? AND sameness = ?"),
          add(database,
              "INSERT INTO diary_entry(client, import, at, sameness, sealed_entry, instead_of, "
              "struck) VALUES (?, ?, ?, ?, ?, ?, ?)") {
        set_up_connection(database);
    }

    std::vector<DiaryRecord> read(std::int64_t client, const std::string& place, Interval window) {
        std::vector<DiaryRecord> records;
        for (standing.with(client, window.from.time_since_epoch().count(),
                           window.to.time_since_epoch().count());
             standing.step();) {
            const auto document = seal.opened(standing.blob(3), place + " diary");
            if (!document) {
                throw std::runtime_error(document.error());
            }
            auto entry = diary_entry_read(*document);
            if (!entry) {
                throw std::runtime_error(entry.error());
            }
            records.push_back({standing.integer(0), standing.integer(1), standing.integer(2) != 0,
                               std::move(*entry)});
        }
        return records;
    }

    // A row of its own even where an earlier, superseded one was the same.
    std::array<std::uint8_t, 16> sameness(std::int64_t client, std::int64_t instead_of,
                                          const DiaryEntry& entry, bool struck) {
        const auto plain = seal.fingerprint(sameness_of(entry));
        const bool there = taken.with(client, std::span<const std::uint8_t>(plain)).step();
        taken.with();
        return there || struck ? seal.fingerprint(sameness_of(entry) + " instead of " +
                                                  std::to_string(instead_of))
                               : plain;
    }
};

DiaryBook::DiaryBook(const SqlitePractice& practice)
    : tables_(caught([&]() -> Stored<std::unique_ptr<Tables>> {
          return std::make_unique<Tables>(practice);
      })) {}

DiaryBook::~DiaryBook() = default;

Stored<std::vector<DiaryRecord>> DiaryBook::entries(std::int64_t client, Interval window) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<std::vector<DiaryRecord>> {
        Tables& tables = **tables_;
        const Transaction moment(tables.database, Transaction::Kind::read);
        const auto place = tables.clients.place_of(client);
        if (!place) {
            return no_such_client();
        }
        return tables.read(client, *place, window);
    });
}

Stored<std::int64_t> DiaryBook::correct(std::int64_t client, std::int64_t entry,
                                        const std::optional<DiaryEntry>& corrected,
                                        const Acting& acting) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<std::int64_t> {
        Tables& tables = **tables_;
        Transaction all_or_nothing(tables.database);
        if (const auto allowed = may(tables.coaches, acting, Needs::a_change); !allowed) {
            return tl::make_unexpected(allowed.error());
        }
        const auto place = tables.clients.place_of(client);
        const auto records = place ? tables.read(client, *place, {Instant::min(), Instant::max()})
                                   : std::vector<DiaryRecord>{};
        const auto old = std::ranges::find(records, entry, &DiaryRecord::id);
        if (old == records.end()) {
            return store_error(StoreErrorKind::not_found,
                               "found no such entry in this client's diary");
        }
        if (corrected && std::ranges::any_of(records, [&](const DiaryRecord& one) {
                return sameness_of(one.entry) == sameness_of(*corrected);
            })) {
            return store_error(StoreErrorKind::exists, "found the very entry in the diary already");
        }
        const DiaryEntry& stands = corrected ? *corrected : old->entry;
        ImportPlan plan;
        plan.rows_stored = 1;
        const std::int64_t import = tables.imports.store(
            client, *place, corrected ? corrected_source : struck_source, plan, acting);
        const auto sameness = tables.sameness(client, entry, stands, !corrected);
        tables.add
            .with(client, import, stands.at.time_since_epoch().count(),
                  std::span<const std::uint8_t>(sameness),
                  tables.seal.sealed(diary_document(stands), *place + " diary"), entry,
                  corrected ? 0 : 1)
            .run();
        tables.audit.add(acting, corrected ? "diary_corrected" : "diary_struck_out", client,
                         import);
        all_or_nothing.commit();
        return import;
    });
}

}  // namespace tracewright
