#include "store/client_table.hpp"

#include "store/client_document.hpp"
#include "store/stored_column.hpp"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <stdexcept>

namespace tracewright {

namespace {

ClientMark mark_from(std::span<const std::uint8_t> bytes) {
    ClientMark mark{};
    std::copy_n(bytes.begin(), std::min(bytes.size(), mark.size()), mark.begin());
    return mark;
}

std::string place_from(std::span<const std::uint8_t> mark) {
    return fmt::format("client {:02x}", fmt::join(mark, ""));
}

}  // namespace

std::optional<ClientMark> ClientTable::mark_of(std::int64_t client) {
    Statement find(database_, "SELECT mark FROM client WHERE id = ?");
    if (!find.with(client).step()) {
        return std::nullopt;
    }
    return mark_from(find.blob(0));
}

std::optional<std::string> ClientTable::place_of(std::int64_t client) {
    const auto mark = mark_of(client);
    return mark ? std::optional(place_from(*mark)) : std::nullopt;
}

std::optional<std::int64_t> ClientTable::client_marked(const ClientMark& mark) {
    Statement find(database_, "SELECT id FROM client WHERE mark = ?");
    if (!find.with(std::span<const std::uint8_t>(mark)).step()) {
        return std::nullopt;
    }
    return find.integer(0);
}

std::optional<ClientRow> ClientTable::client(std::int64_t client) {
    Statement find(database_,
                   "SELECT mark, handle, sealed_name, sealed_facts, revision FROM client "
                   "WHERE id = ?");
    if (!find.with(client).step()) {
        return std::nullopt;
    }
    ClientRow row;
    row.id = client;
    row.mark = mark_from(find.blob(0));
    row.handle = find.text(1);
    const std::string place = place_from(row.mark);
    row.name = opened_text(seal_, find.blob(2), place + " name");
    auto facts = client_facts_read(opened_text(seal_, find.blob(3), place + " facts"));
    if (!facts) {
        throw std::runtime_error(facts.error());
    }
    row.facts = std::move(*facts);
    row.revision = find.integer(4);
    return row;
}

std::vector<ClientTable::Called> ClientTable::clients() {
    Statement all(database_, "SELECT id, mark, handle, sealed_name FROM client ORDER BY handle");
    std::vector<Called> clients;
    while (all.step()) {
        clients.push_back({all.integer(0), std::string(all.text(2)),
                           opened_text(seal_, all.blob(3), place_from(all.blob(1)) + " name")});
    }
    return clients;
}

std::optional<ClientTable::Called> ClientTable::called(std::int64_t client) {
    Statement find(database_, "SELECT mark, handle, sealed_name FROM client WHERE id = ?");
    if (!find.with(client).step()) {
        return std::nullopt;
    }
    return Called{client, std::string(find.text(1)),
                  opened_text(seal_, find.blob(2), place_from(find.blob(0)) + " name")};
}

std::vector<std::int64_t> ClientTable::numbers() {
    Statement all(database_, "SELECT id FROM client ORDER BY handle");
    std::vector<std::int64_t> numbers;
    while (all.step()) {
        numbers.push_back(all.integer(0));
    }
    return numbers;
}

std::optional<std::int64_t> ClientTable::with_handle(std::string_view handle) {
    Statement find(database_, "SELECT id FROM client WHERE handle = ?");
    return find.with(handle).step() ? std::optional(find.integer(0)) : std::nullopt;
}

std::int64_t ClientTable::add(const std::string& handle, const std::string& name,
                              const ClientFacts& facts, Instant at) {
    ClientMark mark{};
    randombytes_buf(mark.data(), mark.size());
    const std::string place = place_from(mark);
    Statement add(database_,
                  "INSERT INTO client(mark, handle, sealed_name, sealed_facts, revision, added_at) "
                  "VALUES (?, ?, ?, ?, 1, ?)");
    add.with(std::span<const std::uint8_t>(mark), handle, seal_.sealed(name, place + " name"),
             seal_.sealed(client_document(facts), place + " facts"), at.time_since_epoch().count())
        .run();
    return database_.last_row();
}

void ClientTable::change(const ClientRow& row) {
    const std::string place = place_from(row.mark);
    Statement change(database_,
                     "UPDATE client SET handle = ?2, sealed_name = ?3, sealed_facts = ?4, "
                     "revision = ?5 WHERE id = ?1");
    change
        .with(row.id, row.handle, seal_.sealed(row.name, place + " name"),
              seal_.sealed(client_document(row.facts), place + " facts"), row.revision)
        .run();
}

void ClientTable::remove(std::int64_t client) {
    // What belongs to the client goes with it: every other table refers to it so.
    Statement remove(database_, "DELETE FROM client WHERE id = ?");
    remove.with(client).run();
}

std::vector<std::pair<std::int64_t, Coach>> CoachTable::coaches() {
    Statement all(database_,
                  "SELECT id, handle, sealed_name, role, licence, left_at FROM coach ORDER BY id");
    std::vector<std::pair<std::int64_t, Coach>> coaches;
    while (all.step()) {
        const std::int64_t id = all.integer(0);
        coaches.emplace_back(
            id, Coach{std::string(all.text(1)),
                      opened_text(seal_, all.blob(2), fmt::format("coach {} name", all.text(1))),
                      static_cast<CoachRole>(all.integer(3)), static_cast<Licence>(all.integer(4)),
                      !all.is_null(5)});
    }
    return coaches;
}

std::int64_t CoachTable::add(const Coach& coach, Instant at) {
    Statement add(database_,
                  "INSERT INTO coach(handle, sealed_name, role, licence, added_at) "
                  "VALUES (?, ?, ?, ?, ?)");
    add.with(coach.handle, seal_.sealed(coach.name, "coach " + coach.handle + " name"),
             static_cast<int>(coach.role), static_cast<int>(coach.licence),
             at.time_since_epoch().count())
        .run();
    return database_.last_row();
}

void CoachTable::change(std::int64_t id, const Coach& coach, Instant at) {
    Statement change(database_,
                     "UPDATE coach SET handle = ?2, sealed_name = ?3, role = ?4, licence = ?5, "
                     "left_at = CASE WHEN ?6 THEN coalesce(left_at, ?7) END WHERE id = ?1");
    change
        .with(id, coach.handle, seal_.sealed(coach.name, "coach " + coach.handle + " name"),
              static_cast<int>(coach.role), static_cast<int>(coach.licence), int{coach.left},
              at.time_since_epoch().count())
        .run();
}

}  // namespace tracewright
