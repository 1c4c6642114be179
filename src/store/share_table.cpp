#include "store/share_table.hpp"

#include "store/stored_column.hpp"

#include <nlohmann/json.hpp>

#include <stdexcept>
#include <string_view>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

std::string document_of(const Share& share) {
    Json kinds = Json::array();
    for (const SharedKind kind : every_shared_kind) {
        if (share.kinds.has(kind)) {
            kinds.push_back(name_of(kind));
        }
    }
    return Json{{"recipient", share.recipient},
                {"purpose", share.purpose},
                {"kinds", std::move(kinds)},
                {"days", share.window.count()}}
        .dump(-1, ' ', false, Json::error_handler_t::replace);
}

// What was sealed is ours: anything else in it is a fault of the file. A kind that this program
// does not know opens nothing.
void read_document(const std::string& document, Share& share) {
    const Json read = Json::parse(document, nullptr, false);
    if (!read.is_object() || !read.contains("kinds")) {
        throw std::runtime_error("a share can't be read");
    }
    share.recipient = read.value("recipient", "");
    share.purpose = read.value("purpose", "");
    share.window = std::chrono::days{read.value("days", 0)};
    share.kinds = SharedKinds();
    for (const Json& name : read["kinds"]) {
        if (const auto kind = shared_kind_called(name.get<std::string>())) {
            share.kinds.add(*kind);
        }
    }
}

constexpr std::string_view columns = "SELECT id, coach, at, until, revoked_at, sealed_share ";

}  // namespace

ShareRecord ShareTable::record_of(const Statement& row, const std::string& place) const {
    ShareRecord record{row.integer(0), row.integer(1), {}, {}};
    record.share.given_at = instant(row.integer(2));
    record.share.until = instant(row.integer(3));
    record.share.revoked_at = instant(row.optional_integer(4));
    read_document(opened_text(seal_, row.blob(5), place + " share"), record.share);
    return record;
}

std::vector<ShareRecord> ShareTable::shares(std::int64_t client, const std::string& place) {
    Statement all(database_, std::string(columns) + "FROM share WHERE client = ? ORDER BY id");
    Statement looks(database_,
                    "SELECT at, asked, answer FROM share_look WHERE share = ? ORDER BY id");
    std::vector<ShareRecord> shares;
    for (all.with(client); all.step();) {
        ShareRecord record = record_of(all, place);
        for (looks.with(record.id); looks.step();) {
            record.looks.push_back({instant(looks.integer(0)), std::string(looks.text(1)),
                                    std::string(looks.text(2))});
        }
        shares.push_back(std::move(record));
    }
    return shares;
}

std::int64_t ShareTable::give(std::int64_t client, const std::string& place, const Share& share,
                              const ShareTokenHash& token, const Acting& acting) {
    Statement add(database_,
                  "INSERT INTO share(client, at, coach, until, token_hash, sealed_share) "
                  "VALUES (?, ?, ?, ?, ?, ?)");
    add.with(client, seconds(acting.at), acting.coach, seconds(share.until),
             std::span<const std::uint8_t>(token),
             seal_.sealed(document_of(share), place + " share"))
        .run();
    return database_.last_row();
}

bool ShareTable::revoke(std::int64_t client, std::int64_t share, const Acting& acting) {
    Statement known(database_,
                    "SELECT 1 FROM share WHERE client = ? AND id = ? AND revoked_at IS NULL");
    if (!known.with(client, share).step()) {
        return false;
    }
    Statement close(database_, "UPDATE share SET revoked_at = ? WHERE id = ?");
    close.with(seconds(acting.at), share).run();
    return true;
}

std::optional<ShareTable::Opened> ShareTable::opened_by(const ShareTokenHash& token) {
    Statement known(database_, "SELECT client, id FROM share WHERE token_hash = ?");
    if (!known.with(std::span<const std::uint8_t>(token)).step()) {
        return std::nullopt;
    }
    return Opened{known.integer(0), known.integer(1)};
}

std::optional<ShareRecord> ShareTable::share(std::int64_t share, const std::string& place) {
    Statement one(database_, std::string(columns) + "FROM share WHERE id = ?");
    return one.with(share).step() ? std::optional(record_of(one, place)) : std::nullopt;
}

bool ShareTable::note_look(std::int64_t share, const ShareLook& look) {
    Statement known(database_, "SELECT 1 FROM share WHERE id = ?");
    if (!known.with(share).step()) {
        return false;
    }
    Statement add(database_,
                  "INSERT INTO share_look(share, at, asked, answer) VALUES (?, ?, ?, ?)");
    add.with(share, seconds(look.at), look.asked, look.answer).run();
    return true;
}

}  // namespace tracewright
