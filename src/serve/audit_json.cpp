#include "serve/audit_json.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"
#include "serve/deed_words.hpp"

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

// A moment in words. Whose zone is not known is told by UTC, and that it is.
struct Clock {
    ZoneHistory zones;
    bool known = false;

    std::string words(Instant at) const {
        const WayOfWriting way = zones.writing();
        return full_date(zones.date_at(at), way) + ", " + clock_time(zones.wall_time(at), way) +
               (known ? "" : " UTC");
    }
};

struct OfClient {
    Json named;
    Clock clock;
};

Json named(const std::string& handle, const std::string& name) {
    return {{"handle", handle}, {"name", name}};
}

// What lines speak of, each looked up once.
class Named {
  public:
    static Stored<Named> of(SqlitePractice& practice) {
        const auto coaches = practice.coaches();
        const auto writing = practice.writing();
        if (!coaches || !writing) {
            return tl::make_unexpected(coaches ? writing.error() : coaches.error());
        }
        Named all;
        for (const CoachRecord& record : *coaches) {
            all.coaches_[record.id] = named(record.coach.handle, record.coach.name);
        }
        all.practice_.zones.write(writing->way);
        return all;
    }

    Json coach(std::int64_t id) const {
        const auto found = coaches_.find(id);
        return found == coaches_.end() ? Json() : found->second;
    }
    const Clock& of_practice() const { return practice_; }
    Stored<const OfClient*> client(SqlitePractice& practice, std::int64_t id) {
        if (const auto found = clients_.find(id); found != clients_.end()) {
            return &found->second;
        }
        const auto record = practice.client(id);
        if (!record) {
            return tl::make_unexpected(record.error());
        }
        const Clock clock{client_clock(record->facts), !record->facts.zones.empty()};
        return &clients_.emplace(id, OfClient{named(record->handle, record->name), clock})
                    .first->second;
    }

  private:
    std::map<std::int64_t, Json> coaches_;
    std::map<std::int64_t, OfClient> clients_;
    Clock practice_{ZoneHistory(Zone::fixed(std::chrono::seconds{0}))};
};

}  // namespace

Stored<Json> json_of_audit(SqlitePractice& practice, std::span<const AuditLine> lines) {
    auto those = Named::of(practice);
    if (!those) {
        return tl::make_unexpected(those.error());
    }
    Json list = Json::array();
    for (const AuditLine& line : lines) {
        const OfClient* client = nullptr;
        if (line.client) {
            const auto known = those->client(practice, *line.client);
            if (!known) {
                return tl::make_unexpected(known.error());
            }
            client = *known;
        }
        const Clock& clock = client != nullptr ? client->clock : those->of_practice();
        const bool of_coach = line.number && line.deed.starts_with("coach_");
        list.push_back({{"id", line.id},
                        {"at", iso_time(line.at, clock.zones)},
                        {"label", clock.words(line.at)},
                        {"coach", those->coach(line.coach)},
                        {"deed", line.deed},
                        {"words", words_of_deed(line.deed)},
                        {"client", client != nullptr ? client->named : Json()},
                        {"other_coach", of_coach ? those->coach(*line.number) : Json()}});
    }
    return Json{{"lines", std::move(list)}};
}

Stored<Json> json_of_last(SqlitePractice& practice, const std::optional<AuditLine>& line) {
    if (!line) {
        return Json();
    }
    const auto those = Named::of(practice);
    if (!those) {
        return tl::make_unexpected(those.error());
    }
    const Json coach = those->coach(line->coach);
    return Json{{"label", those->of_practice().words(line->at)},
                {"coach", coach.is_null() ? Json() : coach["name"]}};
}

}  // namespace tracewright
