#include "store/stretch_book.hpp"

#include "store/client_table.hpp"
#include "store/practice_schema.hpp"
#include "store/sqlite_failure.hpp"
#include "store/stretch_table.hpp"
#include "store/who_may.hpp"

namespace tracewright {

struct StretchBook::Tables {
    Database database;
    Seal seal;
    CoachTable coaches;
    ClientTable clients;
    AuditTable audit;
    StretchTable stretches;

    explicit Tables(const SqlitePractice& practice)
        : database(practice.path(), Database::Mode::existing),
          seal(practice.key()),
          coaches(database, seal),
          clients(database, seal),
          audit(database),
          stretches(database, seal) {
        set_up_connection(database);
    }

    std::string place(std::int64_t client) {
        const auto place = clients.place_of(client);
        return place ? *place : "";
    }
};

StretchBook::StretchBook(const SqlitePractice& practice)
    : tables_(caught([&]() -> Stored<std::unique_ptr<Tables>> {
          return std::make_unique<Tables>(practice);
      })) {}

StretchBook::~StretchBook() = default;

Stored<std::vector<StretchRecord>> StretchBook::told(std::int64_t client) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<std::vector<StretchRecord>> {
        Tables& tables = **tables_;
        const Transaction moment(tables.database, Transaction::Kind::read);
        return tables.stretches.told(client, tables.place(client));
    });
}

Stored<std::int64_t> StretchBook::tell(std::int64_t client, Interval stretch, bool suspect,
                                       const std::string& why, const Acting& acting) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    if (stretch.to <= stretch.from) {
        return store_error(StoreErrorKind::refused,
                           "found a stretch that ends before it begins, expected some time");
    }
    return caught([&]() -> Stored<std::int64_t> {
        Tables& tables = **tables_;
        Transaction all_or_nothing(tables.database);
        if (const auto allowed = may(tables.coaches, acting, Needs::a_change); !allowed) {
            return tl::make_unexpected(allowed.error());
        }
        const std::string place = tables.place(client);
        if (place.empty()) {
            return no_such_client();
        }
        const std::int64_t telling =
            tables.stretches.tell(client, place, {stretch, suspect, why}, acting);
        tables.audit.add(acting, suspect ? "stretch_marked" : "stretch_counted", client, telling);
        all_or_nothing.commit();
        return telling;
    });
}

Stored<void> StretchBook::take_back(std::int64_t client, std::int64_t telling,
                                    const Acting& acting) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<void> {
        Tables& tables = **tables_;
        Transaction all_or_nothing(tables.database);
        if (const auto allowed = may(tables.coaches, acting, Needs::a_change); !allowed) {
            return tl::make_unexpected(allowed.error());
        }
        if (!tables.stretches.take_back(client, telling)) {
            return store_error(StoreErrorKind::not_found, "found no such stretch of this client");
        }
        tables.audit.add(acting, "stretch_taken_back", client, telling);
        all_or_nothing.commit();
        return {};
    });
}

}  // namespace tracewright
