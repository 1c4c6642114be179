#include "store/stretch_table.hpp"

#include "store/stored_column.hpp"

namespace tracewright {

std::vector<StretchRecord> StretchTable::told(std::int64_t client, const std::string& place) {
    Statement all(database_,
                  "SELECT id, at, coach, begins, ends, suspect, sealed_why FROM told_stretch "
                  "WHERE client = ? ORDER BY id");
    std::vector<StretchRecord> records;
    for (all.with(client); all.step();) {
        records.push_back({all.integer(0),
                           instant(all.integer(1)),
                           all.integer(2),
                           {{instant(all.integer(3)), instant(all.integer(4))},
                            all.integer(5) != 0,
                            opened_text(seal_, all.blob(6), place + " stretch")}});
    }
    return records;
}

std::int64_t StretchTable::tell(std::int64_t client, const std::string& place,
                                const ToldStretch& told, const Acting& acting) {
    Statement add(database_,
                  "INSERT INTO told_stretch(client, at, coach, begins, ends, suspect, sealed_why) "
                  "VALUES (?, ?, ?, ?, ?, ?, ?)");
    add.with(client, seconds(acting.at), acting.coach, seconds(told.stretch.from),
             seconds(told.stretch.to), told.suspect ? 1 : 0,
             seal_.sealed(told.why, place + " stretch"))
        .run();
    return database_.last_row();
}

bool StretchTable::take_back(std::int64_t client, std::int64_t telling) {
    Statement remove(database_,
                     "DELETE FROM told_stretch WHERE client = ? AND id = ? RETURNING id");
    return remove.with(client, telling).step();
}

}  // namespace tracewright
