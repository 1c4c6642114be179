// What other programs do to the practice meanwhile, seen and told.
#include "serve/service.hpp"

#include <exception>
#include <set>

namespace tracewright {

namespace {

// Looks change nothing that a page shows. A page that read again at a look would look again by it,
// and never come to rest.
bool a_look(const std::string& deed) {
    static const std::set<std::string, std::less<>> looks{"signed_in",
                                                          "signed_out",
                                                          "client_exported",
                                                          "backup_made",
                                                          "review_made",
                                                          "review_seen",
                                                          "handout_made",
                                                          "letter_made",
                                                          "talk_sheet_made",
                                                          "start_page_made",
                                                          "diary_sheet_made",
                                                          "paper_made",
                                                          "explaining_pages_made",
                                                          "question_asked",
                                                          "handout_made_with_numbers",
                                                          "recovery_key_opened",
                                                          "recovery_key_refused"};
    return deed.ends_with("_seen") || deed.ends_with("_looked_at") || looks.contains(deed);
}

bool of_all(const std::string& deed) {
    // A client's handle may be another one now, and an erased client's lines are gone.
    return deed == "client_changed" || deed == "client_erased" || deed == "client_added";
}

}  // namespace

void Service::watch(const std::stop_token& stop) {
    std::int64_t last_line = 0;
    if (const auto lines = watched_->audit_since(0); lines && !lines->empty()) {
        last_line = lines->back().id;
    }
    std::int64_t seen = watched_->change_count();
    Tick next_beat = clocks_.tick() + options_.beat_every;
    std::unique_lock lock(watch_mutex_);
    while (!stop.stop_requested()) {
        watch_bell_.wait_for(lock, stop, options_.watch_every, [this] { return look_now_; });
        look_now_ = false;
        lock.unlock();
        if (const std::int64_t now = watched_->change_count(); now != seen) {
            seen = told_changes(last_line) ? now : seen;
        }
        if (clocks_.tick() >= next_beat) {
            next_beat = clocks_.tick() + options_.beat_every;
            hub_.end_unless(
                [this](std::uint64_t session) { return sessions_.lasts(session, clocks_.tick()); });
            hub_.beat();
        }
        lock.lock();
    }
}

// What can't be told ends no service: it is tried again with the next look.
bool Service::told_changes(std::int64_t& last_line) {
    try {
        return tell_changes(last_line);
    } catch (const std::exception&) {
        return false;
    }
}

// False where the practice was busy: to be done again.
bool Service::tell_changes(std::int64_t& last_line) {
    const auto lines = watched_->audit_since(last_line);
    if (!lines) {
        return false;
    }
    for (const AuditLine& line : *lines) {
        if (a_look(line.deed)) {
            last_line = line.id;
            continue;
        }
        std::string handle;  // none where all are concerned, or the client was erased since
        if (line.client) {
            auto client = watched_->client_line(*line.client);
            if (!client && client.error().kind != StoreErrorKind::not_found) {
                return false;
            }
            handle = client ? std::move(client->handle) : std::string();
        }
        last_line = line.id;
        if (line.deed == "import_stored") {
            sessions_.forget_looks_at(handle);
        }
        handle.empty() || of_all(line.deed) ? changes_.all_changed() : changes_.changed(handle);
        if (line.deed.starts_with("coach_")) {
            read_coaches(*watched_);
            sessions_.close_unless([this](std::int64_t id) { return coach_of(id).has_value(); });
        }
        hub_.tell(
            "changed",
            Json{{"client", handle.empty() ? Json() : Json(handle)}, {"what", line.deed}}.dump());
    }
    return true;
}

}  // namespace tracewright
