#include "store/diary_table.hpp"

#include "store/diary_document.hpp"

#include <limits>

namespace tracewright {

DiaryTable::DiaryTable(Database& database, const Seal& seal)
    : seal_(seal),
      entries_(database,
               "SELECT sealed_entry FROM diary_entry AS one "
               "WHERE client = ? AND at >= ? AND at < ? AND struck = 0 AND NOT EXISTS "
               "(SELECT 1 FROM diary_entry AS later WHERE later.instead_of = one.id) "
               "ORDER BY at, id"),
      has_(database, "SELECT 1 FROM diary_entry WHERE client = ? AND sameness = ?"),
      add_(database,
           "INSERT INTO diary_entry(client, import, at, sameness, sealed_entry) "
           "VALUES (?, ?, ?, ?, ?)"),
      remove_(database, "DELETE FROM diary_entry WHERE import = ?"),
      changes_(database, "SELECT changes()") {}

Diary DiaryTable::entries(std::int64_t client, const std::string& place,
                          std::optional<Interval> window) {
    const auto from =
        window ? window->from.time_since_epoch().count() : std::numeric_limits<std::int64_t>::min();
    const auto to =
        window ? window->to.time_since_epoch().count() : std::numeric_limits<std::int64_t>::max();
    Diary diary;
    for (entries_.with(client, from, to); entries_.step();) {
        const auto document = seal_.opened(entries_.blob(0), place + " diary");
        if (!document) {
            throw std::runtime_error(document.error());
        }
        auto entry = diary_entry_read(*document);
        if (!entry) {
            throw std::runtime_error(entry.error());
        }
        diary.push_back(std::move(*entry));
    }
    return diary;
}

bool DiaryTable::has(std::int64_t client, const DiaryEntry& entry) {
    const auto sameness = seal_.fingerprint(sameness_of(entry));
    const bool found = has_.with(client, std::span<const std::uint8_t>(sameness)).step();
    has_.with();
    return found;
}

void DiaryTable::add(std::int64_t client, std::int64_t import, const std::string& place,
                     const DiaryEntry& entry) {
    const auto sameness = seal_.fingerprint(sameness_of(entry));
    add_.with(client, import, entry.at.time_since_epoch().count(),
              std::span<const std::uint8_t>(sameness),
              seal_.sealed(diary_document(entry), place + " diary"))
        .run();
}

std::int64_t DiaryTable::remove_of_import(std::int64_t import) {
    remove_.with(import).run();
    changes_.with().step();
    const std::int64_t removed = changes_.integer(0);
    changes_.with();
    return removed;
}

}  // namespace tracewright
