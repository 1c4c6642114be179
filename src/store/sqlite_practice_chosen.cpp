// Which of two sensors at once a coach chose to be counted.
#include "store/sqlite_practice.hpp"
#include "store/stored_column.hpp"

namespace tracewright {

std::set<std::int64_t> SqlitePractice::chosen_wears(std::int64_t client) {
    Statement all(*database_,
                  "SELECT wear FROM chosen_wear JOIN wear ON wear.id = wear WHERE wear.client = ?");
    std::set<std::int64_t> chosen;
    for (all.with(client); all.step();) {
        chosen.insert(all.integer(0));
    }
    return chosen;
}

Stored<void> SqlitePractice::choose_wear(std::int64_t client, std::int64_t wear, bool chosen,
                                         const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        Statement own(*database_, "SELECT 1 FROM wear WHERE id = ? AND client = ?");
        if (!own.with(wear, client).step()) {
            return store_error(StoreErrorKind::not_found, "found no such wear of this client");
        }
        // Of those worn at once at most one is chosen.
        Statement forget(*database_,
                         "DELETE FROM chosen_wear WHERE wear IN (SELECT other.id FROM wear AS "
                         "other JOIN wear AS this ON this.client = other.client WHERE this.id = ? "
                         "AND (other.id = this.id OR (other.start <= this.last_at AND this.start "
                         "<= other.last_at)))");
        forget.with(wear).run();
        if (chosen) {
            Statement put(*database_, "INSERT INTO chosen_wear(wear, at, coach) VALUES (?, ?, ?)");
            put.with(wear, seconds(acting.at), acting.coach).run();
        }
        audit_.add(acting, chosen ? "wear_chosen" : "wear_choice_taken_back", client, wear);
        return {};
    });
}

}  // namespace tracewright
