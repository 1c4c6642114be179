#include "store/sqlite_practice.hpp"

#include <algorithm>
#include <cctype>

namespace tracewright {

namespace {

constexpr std::size_t longest_handle = 32;

std::string small(std::string_view text) {
    std::string result(text);
    std::ranges::transform(result, result.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return result;
}

// A handle stands in the audit and in errors: it may not tell the name.
Stored<void> fit_handle(const std::string& handle, const std::string& name) {
    const bool plain =
        !handle.empty() && handle.size() <= longest_handle &&
        handle.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos;
    if (!plain) {
        return store_error(StoreErrorKind::refused,
                           "found a handle of other signs, expected up to 32 small letters a to z, "
                           "digits and hyphens");
    }
    std::string word;
    for (const char c : small(name) + " ") {
        if (std::isalpha(static_cast<unsigned char>(c)) != 0 ||
            static_cast<unsigned char>(c) > 127) {
            word += c;
            continue;
        }
        if (word.size() >= 3 && handle.find(word) != std::string::npos) {
            return store_error(StoreErrorKind::refused,
                               "found a handle with a word of the name in it, expected one that "
                               "does not tell who it is, such as c7");
        }
        word.clear();
    }
    return {};
}

}  // namespace

Stored<std::vector<CoachRecord>> SqlitePractice::coaches() {
    return reading([&]() -> Stored<std::vector<CoachRecord>> {
        std::vector<CoachRecord> records;
        for (auto& [id, coach] : coaches_.coaches()) {
            records.push_back({id, std::move(coach)});
        }
        return records;
    });
}

Stored<std::int64_t> SqlitePractice::add_coach(const Coach& coach, const Acting& acting) {
    return changing(acting, Needs::an_owner, [&]() -> Stored<std::int64_t> {
        if (const auto fit = fit_handle(coach.handle, coach.name); !fit) {
            return tl::make_unexpected(fit.error());
        }
        for (const auto& [id, other] : coaches_.coaches()) {
            if (other.handle == coach.handle) {
                return store_error(StoreErrorKind::exists, "found a coach of this handle already");
            }
        }
        const std::int64_t id = coaches_.add(coach, acting.at);
        audit_.add(acting, "coach_added", std::nullopt, id);
        return id;
    });
}

Stored<void> SqlitePractice::change_coach(std::int64_t id, const Coach& coach,
                                          const Acting& acting) {
    return changing(acting, Needs::an_owner, [&]() -> Stored<void> {
        if (auto fit = fit_handle(coach.handle, coach.name); !fit) {
            return fit;
        }
        bool found = false;
        bool owner_left = coach.role == CoachRole::owner && !coach.left;
        for (const auto& [other_id, other] : coaches_.coaches()) {
            found = found || other_id == id;
            owner_left =
                owner_left || (other_id != id && other.role == CoachRole::owner && !other.left);
            if (other_id != id && other.handle == coach.handle) {
                return store_error(StoreErrorKind::exists, "found a coach of this handle already");
            }
        }
        if (!found) {
            return store_error(StoreErrorKind::not_found, "found no such coach in this practice");
        }
        if (!owner_left) {
            return store_error(StoreErrorKind::refused,
                               "found that no owner would be left, expected at least one");
        }
        coaches_.change(id, coach, acting.at);
        audit_.add(acting, "coach_changed", std::nullopt, id);
        return {};
    });
}

Stored<std::vector<ClientLine>> SqlitePractice::clients() {
    return reading([&]() -> Stored<std::vector<ClientLine>> {
        std::vector<ClientLine> lines;
        const auto last_readings = trace_.last_readings();
        for (auto& called : clients_.clients()) {
            const auto last = last_readings.find(called.id);
            lines.push_back(
                {called.id, std::move(called.handle), std::move(called.name),
                 last == last_readings.end() ? std::nullopt : std::optional(last->second)});
        }
        return lines;
    });
}

Stored<ClientLine> SqlitePractice::client_line(std::int64_t client) {
    return reading([&]() -> Stored<ClientLine> {
        auto called = clients_.called(client);
        if (!called) {
            return no_such_client();
        }
        return ClientLine{client, std::move(called->handle), std::move(called->name),
                          trace_.last_reading(client)};
    });
}

Stored<std::vector<std::int64_t>> SqlitePractice::client_numbers() {
    return reading([&]() -> Stored<std::vector<std::int64_t>> { return clients_.numbers(); });
}

Stored<std::int64_t> SqlitePractice::client_called(std::string_view handle_or_name) {
    return reading([&]() -> Stored<std::int64_t> {
        if (const auto client = clients_.with_handle(handle_or_name)) {
            return *client;
        }
        std::vector<std::int64_t> named;
        const std::string wanted = small(handle_or_name);
        for (const auto& called : clients_.clients()) {
            if (small(called.name) == wanted) {
                named.push_back(called.id);
            }
        }
        if (named.size() == 1) {
            return named.front();
        }
        return store_error(StoreErrorKind::not_found,
                           named.empty()
                               ? "found no client so called, expected a handle or the whole name"
                               : "found several clients of this name, expected the handle of one");
    });
}

Stored<std::int64_t> SqlitePractice::add_client(const std::string& handle, const std::string& name,
                                                const ClientFacts& facts, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        if (const auto fit = fit_handle(handle, name); !fit) {
            return tl::make_unexpected(fit.error());
        }
        if (clients_.with_handle(handle)) {
            return store_error(StoreErrorKind::exists, "found a client of this handle already");
        }
        const std::int64_t client = clients_.add(handle, name, facts, acting.at);
        audit_.add(acting, "client_added", client);
        return client;
    });
}

Stored<ClientRecord> SqlitePractice::client(std::int64_t client) {
    return reading([&]() -> Stored<ClientRecord> {
        auto row = clients_.client(client);
        if (!row) {
            return no_such_client();
        }
        return as_written_here(std::move(*row));
    });
}

Stored<void> SqlitePractice::change_client(const ClientRecord& record, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        auto row = clients_.client(record.id);
        if (!row) {
            return no_such_client();
        }
        if (row->revision != record.revision) {
            return store_error(StoreErrorKind::changed_meanwhile,
                               "found that the client was changed meanwhile: nothing was changed, "
                               "please look again");
        }
        if (auto fit = fit_handle(record.handle, record.name); !fit) {
            return fit;
        }
        if (record.handle != row->handle && clients_.with_handle(record.handle)) {
            return store_error(StoreErrorKind::exists, "found a client of this handle already");
        }
        row->handle = record.handle;
        row->name = record.name;
        row->facts = record.facts;
        ++row->revision;
        clients_.change(*row);
        audit_.add(acting, "client_changed", record.id, row->revision);
        return {};
    });
}

}  // namespace tracewright
