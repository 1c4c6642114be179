#include "store/record_table.hpp"

#include "store/stored_column.hpp"

#include <nlohmann/json.hpp>

#include <stdexcept>

namespace tracewright {

std::int64_t RecordTable::add_note(std::int64_t client, const std::string& place,
                                   const std::string& text, const Acting& acting) {
    Statement add(database_,
                  "INSERT INTO note(client, at, coach, sealed_text) VALUES (?, ?, ?, ?)");
    add.with(client, seconds(acting.at), acting.coach, seal_.sealed(text, place + " note")).run();
    return database_.last_row();
}

std::vector<NoteRecord> RecordTable::notes(std::int64_t client, const std::string& place) {
    Statement all(database_,
                  "SELECT id, at, coach, sealed_text FROM note WHERE client = ? ORDER BY id");
    std::vector<NoteRecord> notes;
    for (all.with(client); all.step();) {
        notes.push_back({all.integer(0), instant(all.integer(1)), all.integer(2),
                         opened_text(seal_, all.blob(3), place + " note")});
    }
    return notes;
}

std::int64_t RecordTable::add_promise(std::int64_t client, const std::string& place,
                                      const std::string& text, CivilDate due,
                                      const Acting& acting) {
    Statement add(database_,
                  "INSERT INTO promise(client, made_at, coach, due, sealed_text) "
                  "VALUES (?, ?, ?, ?, ?)");
    add.with(client, seconds(acting.at), acting.coach,
             static_cast<std::int64_t>(due.time_since_epoch().count()),
             seal_.sealed(text, place + " promise"))
        .run();
    return database_.last_row();
}

std::vector<PromiseRecord> RecordTable::promises(std::int64_t client, const std::string& place) {
    Statement all(database_,
                  "SELECT id, made_at, coach, due, kept_at, sealed_text FROM promise "
                  "WHERE client = ? ORDER BY id");
    std::vector<PromiseRecord> promises;
    for (all.with(client); all.step();) {
        PromiseRecord promise;
        promise.id = all.integer(0);
        promise.made_at = instant(all.integer(1));
        promise.coach = all.integer(2);
        promise.due = CivilDate{std::chrono::days{all.integer(3)}};
        if (const auto kept = all.optional_integer(4)) {
            promise.kept_at = instant(*kept);
        }
        promise.text = opened_text(seal_, all.blob(5), place + " promise");
        promises.push_back(std::move(promise));
    }
    return promises;
}

bool RecordTable::keep_promise(std::int64_t client, std::int64_t promise, const Acting& acting) {
    Statement open(database_,
                   "SELECT 1 FROM promise WHERE client = ? AND id = ? AND kept_at IS NULL");
    if (!open.with(client, promise).step()) {
        return false;
    }
    Statement keep(database_, "UPDATE promise SET kept_at = ? WHERE id = ?");
    keep.with(seconds(acting.at), promise).run();
    return true;
}

void RecordTable::put_escalation(std::int64_t client, const std::string& place,
                                 const std::string& event, const std::string& document,
                                 const Acting& acting) {
    Statement put(database_,
                  "INSERT INTO escalation(client, event, first_seen, sealed_escalation) "
                  "VALUES (?, ?, ?, ?) ON CONFLICT(client, event) DO UPDATE SET "
                  "sealed_escalation = excluded.sealed_escalation");
    put.with(client, event, seconds(acting.at), seal_.sealed(document, place + " escalation"))
        .run();
}

bool RecordTable::withdraw_escalation(std::int64_t client, std::int64_t escalation) {
    Statement withdraw(database_,
                       "DELETE FROM escalation WHERE client = ? AND id = ? AND NOT EXISTS "
                       "(SELECT 1 FROM acknowledgement WHERE escalation = escalation.id) "
                       "RETURNING id");
    return withdraw.with(client, escalation).step();
}

std::vector<EscalationRecord> RecordTable::escalations(std::int64_t client,
                                                       const std::string& place) {
    Statement all(database_,
                  "SELECT id, event, first_seen, sealed_escalation FROM escalation "
                  "WHERE client = ? ORDER BY id");
    Statement answers(database_,
                      "SELECT at, coach, sealed_answer FROM acknowledgement WHERE escalation = ? "
                      "ORDER BY id");
    std::vector<EscalationRecord> escalations;
    for (all.with(client); all.step();) {
        EscalationRecord record{all.integer(0),
                                std::string(all.text(1)),
                                instant(all.integer(2)),
                                opened_text(seal_, all.blob(3), place + " escalation"),
                                {}};
        for (answers.with(record.id); answers.step();) {
            const auto answer = nlohmann::json::parse(
                opened_text(seal_, answers.blob(2), place + " acknowledgement"));
            record.answers.push_back({instant(answers.integer(0)), answers.integer(1),
                                      answer.at("by").get<std::string>(),
                                      answer.at("done").get<std::string>()});
        }
        escalations.push_back(std::move(record));
    }
    return escalations;
}

bool RecordTable::acknowledge(std::int64_t client, const std::string& place,
                              std::int64_t escalation, const std::string& by,
                              const std::string& done, const Acting& acting) {
    Statement known(database_, "SELECT 1 FROM escalation WHERE client = ? AND id = ?");
    if (!known.with(client, escalation).step()) {
        return false;
    }
    const nlohmann::json answer{{"by", by}, {"done", done}};
    Statement add(database_,
                  "INSERT INTO acknowledgement(escalation, at, coach, sealed_answer) "
                  "VALUES (?, ?, ?, ?)");
    add.with(escalation, seconds(acting.at), acting.coach,
             seal_.sealed(answer.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace),
                          place + " acknowledgement"))
        .run();
    return true;
}

std::int64_t RecordTable::keep_finding(std::int64_t client, const std::string& place,
                                       Interval window, const std::string& document,
                                       const Acting& acting) {
    Statement keep(database_,
                   "INSERT INTO finding(client, at, coach, window_from, window_to, last_import, "
                   "sealed_finding) SELECT ?1, ?2, ?3, ?4, ?5, "
                   "coalesce((SELECT max(id) FROM import WHERE client = ?1), 0), ?6");
    keep.with(client, seconds(acting.at), acting.coach, seconds(window.from), seconds(window.to),
              seal_.sealed(document, place + " finding"))
        .run();
    return database_.last_row();
}

std::vector<KeptFinding> RecordTable::findings(std::int64_t client, const std::string& place) {
    Statement all(database_,
                  "SELECT id, at, coach, window_from, window_to, last_import, sealed_finding "
                  "FROM finding WHERE client = ? ORDER BY id");
    std::vector<KeptFinding> findings;
    for (all.with(client); all.step();) {
        findings.push_back({all.integer(0), instant(all.integer(1)), all.integer(2),
                            Interval{instant(all.integer(3)), instant(all.integer(4))},
                            all.integer(5), opened_text(seal_, all.blob(6), place + " finding")});
    }
    return findings;
}

}  // namespace tracewright
