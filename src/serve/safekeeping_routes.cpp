// What keeps a practice from being lost: backups, the list of erased clients, the recovery key.
#include "access/recovery_key.hpp"
#include "serve/audit_json.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "store/practice_backup.hpp"
#include "time/day_text.hpp"

namespace tracewright {

namespace {

std::string backup_name(Instant now) {
    return "practice-" +
           day_text(CivilDate{std::chrono::floor<std::chrono::days>(now.time_since_epoch())}) +
           ".backup";
}

Reply download(std::string bytes, const char* type, const std::string& name) {
    Reply reply = text_reply(std::move(bytes), type);
    reply.headers.emplace_back("Content-Disposition", "attachment; filename=\"" + name + "\"");
    return reply;
}

Stored<std::vector<ClientMark>> erased(const SqlitePractice& store) {
    return ErasureList(erasure_list_path(store.path())).marks();
}

Reply backup_told(Asked& asked) {
    const auto last = asked.store.last_deed("backup_made");
    const auto marks = erased(asked.store);
    if (!last || !marks) {
        return problem_of(last ? marks.error() : last.error());
    }
    const auto json = json_of_last(asked.store, *last);
    return json ? json_reply({{"last", *json}, {"erased", marks->size()}})
                : problem_of(json.error());
}

Reply backup_reply(Asked& asked) {
    const auto backup = sealed_backup(asked.store);
    if (!backup) {
        return problem_of(backup.error());
    }
    // Before the answer: what leaves the practice is in the audit, or it did not leave.
    if (const auto noted = asked.store.note_backup(asked.acting); !noted) {
        return problem_of(noted.error());
    }
    return download(std::string(backup->bytes.begin(), backup->bytes.end()),
                    "application/octet-stream", backup_name(asked.acting.at));
}

Reply erased_reply(Asked& asked) {
    const auto marks = erased(asked.store);
    return marks ? download(erasure_list_text(*marks), "text/plain; charset=utf-8",
                            erasure_list_path(backup_name(asked.acting.at)))
                 : problem_of(marks.error());
}

Reply key_told(Asked& asked) {
    const auto opened = asked.store.last_deed("recovery_key_opened");
    const auto refused = asked.store.last_deed("recovery_key_refused");
    const auto changed = asked.store.last_deed("recovery_key_changed");
    for (const auto* deed : {&opened, &refused, &changed}) {
        if (!*deed) {
            return problem_of(deed->error());
        }
    }
    const bool opens = *opened && (!*refused || (*opened)->id > (*refused)->id);
    auto tried = opens ? *opened : *refused;
    if (tried && *changed && (*changed)->id > tried->id) {
        tried.reset();  // of the key before
    }
    auto last = json_of_last(asked.store, tried);
    if (!last) {
        return problem_of(last.error());
    }
    if (!last->is_null()) {
        (*last)["opens"] = opens;
    }
    return json_reply({{"last", *last}});
}

// The key itself stands in no reply, no line of the audit and no message.
Reply try_key_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"key"});
    if (!fields) {
        return fields.error();
    }
    const auto key = recovery_key_read(fields->at("key"));
    if (!key) {  // written down or typed wrong: nothing was tried with it
        return problem(422, "unfit_key", "That can't be read as a recovery key", key.error());
    }
    if (const auto wait = asked.key_tries.wait(asked.coach.handle, asked.tick)) {
        return too_many_tries(*wait);
    }
    const bool opens = asked.store.locked_key().opened_by_recovery(*key).has_value();
    opens ? asked.key_tries.succeeded(asked.coach.handle)
          : asked.key_tries.failed(asked.coach.handle, asked.tick);
    const auto noted =
        asked.store.note_deed(opens ? "recovery_key_opened" : "recovery_key_refused", asked.acting);
    return noted ? json_reply({{"opens", opens}}) : problem_of(noted.error());
}

// Sent as changes, as each is noted; yet nothing that is shown of a client changes.
constexpr Route table[] = {
    {Method::get, "/api/backup", Asks::who_may_look, backup_told},
    {Method::post, "/api/backup", Asks::who_may_change, backup_reply, Holds::never, nullptr, 4096,
     true},
    {Method::get, "/api/backup/erased", Asks::who_may_change, erased_reply},
    {Method::get, "/api/recovery-key", Asks::who_may_look, key_told},
    {Method::post, "/api/recovery-key/try", Asks::owner, try_key_reply, Holds::never, nullptr, 1024,
     true},
};

}  // namespace

std::span<const Route> safekeeping_routes() {
    return table;
}

}  // namespace tracewright
