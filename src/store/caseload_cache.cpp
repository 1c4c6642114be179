#include "store/caseload_cache.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"

#include <algorithm>
#include <set>

namespace tracewright {

namespace {

// What is closed is read of whole wears, once for the day. Else the list asks of a trace when its
// last reading was and on which days there was one: the first of each of the client's days and the
// last of all tell it.
void keep_what_is_asked(CaseloadClient& client, Instant as_of) {
    const ZoneHistory clock = client_clock(client.facts);
    const MedicineTimeline medicines = client_medicines(client.facts, clock);
    client.closed_since = closed_since(
        {client.facts, client.wears, client.diary, medicines, clock, as_of}, client.trials);
    for (Wear& wear : client.wears) {
        std::vector<Reading> kept;
        Interval day{};
        for (const Reading& reading : wear.readings) {
            if (!day.contains(reading.at)) {
                kept.push_back(reading);
                day = clock.day_of(clock.date_at(reading.at)).interval();
            }
        }
        if (!kept.empty() && kept.back().at != wear.readings.back().at) {
            kept.push_back(wear.readings.back());
        }
        kept.shrink_to_fit();
        wear.readings = std::move(kept);
    }
}

// The days by which medicines and answers count: that of the look, and that two weeks before, where
// the spread of glucose begins to be looked at.
std::array<CivilDate, 2> days_that_count(const CaseloadClient& client, Instant as_of) {
    const ZoneHistory clock = client_clock(client.facts);
    return {clock.date_at(as_of), clock.date_at(as_of - std::chrono::days{14})};
}

// A last reading stands beyond the look.
bool stands_beyond(const CaseloadClient& client, Instant as_of) {
    return std::ranges::any_of(client.wears, [&](const Wear& wear) {
        return !wear.empty() && wear.sensed_span().to > as_of;
    });
}

}  // namespace

void CaseloadCache::forget() {
    clients_.clear();
    numbers_.clear();
    last_deed_.clear();
    ahead_.clear();
    days_.clear();
    as_of_.reset();
    audit_read_ = 0;
}

Stored<CaseloadClient> CaseloadCache::read(SqlitePractice& practice, const ClientLine& line,
                                           Instant as_of) {
    auto client = reads_(practice, line, as_of);
    const auto later =
        practice.diary(line.id, Interval{as_of + std::chrono::seconds{1}, Instant::max()});
    if (!client || !later) {
        return client ? tl::make_unexpected(later.error()) : std::move(client);
    }
    keep_what_is_asked(*client, as_of);
    ahead_[line.id] = !later->empty() || (line.last_reading && *line.last_reading > as_of) ||
                      last_deed_[line.id] > as_of || stands_beyond(*client, as_of);
    days_[line.id] = days_that_count(*client, as_of);
    ++read_last_;
    return client;
}

Stored<std::vector<CaseloadLine>> CaseloadCache::lines(SqlitePractice& practice, Instant as_of) {
    return practice.reading([&] { return lines_of_this_moment(practice, as_of); });
}

Stored<std::vector<CaseloadLine>> CaseloadCache::lines_of_this_moment(SqlitePractice& practice,
                                                                      Instant as_of) {
    if (!as_of_ || as_of < *as_of_) {
        forget();
    }
    as_of_.reset();  // an error leaves nothing half read
    read_last_ = 0;
    const auto deeds = practice.audit_since(audit_read_);
    const auto listed = practice.client_numbers();
    if (!deeds || !listed) {
        return tl::make_unexpected(deeds ? listed.error() : deeds.error());
    }
    const bool written_otherwise = std::ranges::any_of(
        *deeds, [](const AuditLine& line) { return line.deed == writing_changed_deed; });
    if (written_otherwise) {
        clients_.clear();
        numbers_.clear();
    }
    std::set<std::int64_t> changed;
    for (const AuditLine& deed : *deeds) {
        if (deed.client) {
            changed.insert(*deed.client);
            Instant& last = last_deed_.try_emplace(*deed.client, deed.at).first->second;
            last = std::max(last, deed.at);
        }
    }
    std::map<std::int64_t, std::size_t> place_of;
    for (std::size_t i = 0; i < numbers_.size(); ++i) {
        place_of[numbers_[i]] = i;
    }
    std::vector<CaseloadClient> clients;
    for (const std::int64_t number : *listed) {
        const auto known = place_of.find(number);
        if (known == place_of.end() || changed.contains(number) || ahead_[number] ||
            days_[number] != days_that_count(clients_[known->second], as_of)) {
            const auto line = practice.client_line(number);
            auto client = line ? read(practice, *line, as_of)
                               : Stored<CaseloadClient>(tl::make_unexpected(line.error()));
            if (!client) {
                return tl::make_unexpected(client.error());
            }
            clients.push_back(std::move(*client));
        } else {
            clients.push_back(std::move(clients_[known->second]));
        }
    }
    clients_ = std::move(clients);  // whoever is on the list no more is forgotten here
    numbers_ = *listed;
    as_of_ = as_of;
    audit_read_ = deeds->empty() ? audit_read_ : deeds->back().id;
    return caseload(clients_, as_of);
}

}  // namespace tracewright
