#include "store/meal_photo_book.hpp"

#include "store/client_table.hpp"
#include "store/diary_document.hpp"
#include "store/meal_photo_table.hpp"
#include "store/practice_schema.hpp"
#include "store/sqlite_failure.hpp"
#include "store/stored_column.hpp"
#include "store/who_may.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

struct MealPhotoBook::Tables {
    Database database;
    Seal seal;
    CoachTable coaches;
    ClientTable clients;
    MealPhotoTable photos;
    AuditTable audit;
    Statement standing;

    explicit Tables(const SqlitePractice& practice)
        : database(practice.path(), Database::Mode::existing),
          seal(practice.key()),
          coaches(database, seal),
          clients(database, seal),
          photos(database, seal),
          audit(database),
          standing(database,
                   "SELECT sealed_entry FROM diary_entry AS one WHERE client = ? AND id = ? AND "
                   "struck = 0 AND NOT EXISTS "
                   "(SELECT 1 FROM diary_entry AS later WHERE later.instead_of = one.id)") {
        set_up_connection(database);
    }

    std::optional<DiaryEntry> entry(std::int64_t client, std::int64_t number,
                                    const std::string& place) {
        std::optional<DiaryEntry> found;
        if (standing.with(client, number).step()) {
            auto entry = diary_entry_read(opened_text(seal, standing.blob(0), place + " diary"));
            if (!entry) {
                throw std::runtime_error(entry.error());
            }
            found = std::move(*entry);
        }
        standing.with();
        return found;
    }
};

namespace {

tl::unexpected<StoreError> no_such_photo() {
    return store_error(StoreErrorKind::not_found, "found no photo of this number of this client");
}

}  // namespace

MealPhotoBook::MealPhotoBook(const SqlitePractice& practice)
    : tables_(caught([&]() -> Stored<std::unique_ptr<Tables>> {
          return std::make_unique<Tables>(practice);
      })) {}

MealPhotoBook::~MealPhotoBook() = default;

Stored<std::vector<MealPhotoLine>> MealPhotoBook::lines(std::int64_t client) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<std::vector<MealPhotoLine>> {
        const Transaction moment((*tables_)->database, Transaction::Kind::read);
        return (*tables_)->photos.lines(client);
    });
}

Stored<MealPhoto> MealPhotoBook::photo(std::int64_t client, std::int64_t number) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<MealPhoto> {
        Tables& tables = **tables_;
        const Transaction moment(tables.database, Transaction::Kind::read);
        const auto lines = tables.photos.lines(client);
        if (std::ranges::find(lines, number, &MealPhotoLine::id) == lines.end()) {
            return no_such_photo();
        }
        return tables.photos.photo(client, number, *tables.clients.place_of(client));
    });
}

Stored<std::int64_t> MealPhotoBook::add(std::int64_t client, std::int64_t entry,
                                        const MealPhoto& photo, const Acting& acting) {
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
        const auto meal = place ? tables.entry(client, entry, *place) : std::nullopt;
        if (!meal) {
            return store_error(StoreErrorKind::not_found,
                               "found no such entry in this client's diary");
        }
        if (meal->kind != DiaryKind::meal) {
            return store_error(StoreErrorKind::refused,
                               "found an entry that is no food or drink, expected a meal");
        }
        if (photo.jpeg.empty() || photo.jpeg.size() > longest_meal_photo) {
            return store_error(StoreErrorKind::refused,
                               "found a photo that is empty or longer than 1 MB");
        }
        const auto there =
            std::ranges::count(tables.photos.lines(client), entry, &MealPhotoLine::entry);
        if (static_cast<std::size_t>(there) >= most_photos_of_a_meal) {
            return store_error(StoreErrorKind::refused,
                               fmt::format("found {} photos of this meal already, expected fewer: "
                                           "remove one first",
                                           there));
        }
        const std::int64_t number = tables.photos.add(client, entry, *place, photo, acting);
        tables.audit.add(acting, "meal_photo_added", client, number);
        all_or_nothing.commit();
        return number;
    });
}

Stored<void> MealPhotoBook::remove(std::int64_t client, std::int64_t number, const Acting& acting) {
    if (!tables_) {
        return tl::make_unexpected(tables_.error());
    }
    return caught([&]() -> Stored<void> {
        Tables& tables = **tables_;
        Transaction all_or_nothing(tables.database);
        if (const auto allowed = may(tables.coaches, acting, Needs::a_change); !allowed) {
            return tl::make_unexpected(allowed.error());
        }
        if (!tables.photos.remove(client, number)) {
            return no_such_photo();
        }
        tables.audit.add(acting, "meal_photo_removed", client, number);
        all_or_nothing.commit();
        return {};
    });
}

}  // namespace tracewright
