#include "store/sqlite_practice.hpp"

#include "diary/says_something.hpp"
#include "store/meal_photo_table.hpp"

#include <fmt/format.h>

namespace tracewright {

Stored<std::int64_t> SqlitePractice::add_note(std::int64_t client, const std::string& text,
                                              const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        if (text.empty()) {
            return store_error(StoreErrorKind::refused, "found an empty note, expected some words");
        }
        const std::int64_t note = records_.add_note(client, *at, text, acting);
        audit_.add(acting, "note_added", client, note);
        return note;
    });
}

Stored<std::vector<NoteRecord>> SqlitePractice::notes(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<NoteRecord>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return records_.notes(client, *at);
    });
}

Stored<std::int64_t> SqlitePractice::add_promise(std::int64_t client, const std::string& text,
                                                 CivilDate due, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        if (text.empty()) {
            return store_error(StoreErrorKind::refused,
                               "found an empty promise, expected what was promised");
        }
        const std::int64_t promise = records_.add_promise(client, *at, text, due, acting);
        audit_.add(acting, "promise_made", client, promise);
        return promise;
    });
}

Stored<std::vector<PromiseRecord>> SqlitePractice::promises(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<PromiseRecord>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return records_.promises(client, *at);
    });
}

Stored<void> SqlitePractice::keep_promise(std::int64_t client, std::int64_t promise,
                                          const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        if (!records_.keep_promise(client, promise, acting)) {
            return store_error(StoreErrorKind::not_found,
                               "found no open promise of this number to this client");
        }
        audit_.add(acting, "promise_kept", client, promise);
        return {};
    });
}

Stored<std::vector<FoodRecord>> SqlitePractice::foods(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<FoodRecord>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return foods_.foods(client, *at);
    });
}

Stored<std::int64_t> SqlitePractice::keep_food(std::int64_t client, const ClientFood& food,
                                               const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        const std::int64_t kept = foods_.keep(client, *at, food, acting);
        audit_.add(acting, "food_kept", client, kept);
        return kept;
    });
}

Stored<void> SqlitePractice::forget_food(std::int64_t client, std::int64_t food,
                                         const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        if (!foods_.forget(client, food)) {
            return store_error(StoreErrorKind::not_found,
                               "found no food of this number of this client");
        }
        audit_.add(acting, "food_forgotten", client, food);
        return {};
    });
}

Stored<void> SqlitePractice::put_escalations(std::int64_t client,
                                             const std::vector<EscalationRecord>& escalations,
                                             const Acting& acting) {
    // A look is enough: that an event is written down can't be left to who may change things.
    return changing(acting, Needs::a_look, [&]() -> Stored<void> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        for (const EscalationRecord& escalation : escalations) {
            records_.put_escalation(client, *at, escalation.event, escalation.document, acting);
        }
        if (!escalations.empty()) {  // who keeps a list of clients learns of it by the audit
            audit_.add(acting, "escalations_put", client);
        }
        return {};
    });
}

Stored<void> SqlitePractice::withdraw_escalations(std::int64_t client,
                                                  const std::vector<std::int64_t>& numbers,
                                                  const Acting& acting) {
    // A look is enough, as it is for putting them.
    return changing(acting, Needs::a_look, [&]() -> Stored<void> {
        for (const std::int64_t number : numbers) {
            if (records_.withdraw_escalation(client, number)) {
                audit_.add(acting, "escalation_withdrawn", client, number);
            }
        }
        return {};
    });
}

Stored<std::vector<EscalationRecord>> SqlitePractice::escalations(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<EscalationRecord>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return records_.escalations(client, *at);
    });
}

Stored<void> SqlitePractice::acknowledge(std::int64_t client, std::int64_t escalation,
                                         const std::string& by, const std::string& done,
                                         const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        if (!says_something(by) || !says_something(done)) {
            return store_error(StoreErrorKind::refused,
                               "found no name or nothing done, expected who answered and what was "
                               "done");
        }
        if (!records_.acknowledge(client, *at, escalation, by, done, acting)) {
            return store_error(StoreErrorKind::not_found,
                               "found no escalation of this number for this client");
        }
        audit_.add(acting, "escalation_acknowledged", client, escalation);
        return {};
    });
}

Stored<std::int64_t> SqlitePractice::keep_finding(std::int64_t client, Interval window,
                                                  const std::string& document,
                                                  const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        const std::int64_t finding = records_.keep_finding(client, *at, window, document, acting);
        audit_.add(acting, "finding_kept", client, finding);
        return finding;
    });
}

Stored<ClientHoldings> SqlitePractice::holdings(std::int64_t client, const Acting& acting) {
    return changing(acting, Needs::a_look, [&]() -> Stored<ClientHoldings> {
        auto row = clients_.client(client);
        const auto at = place(client);
        if (!row || !at) {
            return no_such_client();
        }
        auto written = as_written_here(std::move(*row));
        if (!written) {
            return tl::make_unexpected(written.error());
        }
        ClientHoldings holdings;
        holdings.client = std::move(*written);
        holdings.wears = wears_within(client, *at, std::nullopt);
        holdings.diary = diary_.entries(client, *at);
        holdings.held = imports_.held(client);
        holdings.imports = imports_.imports(client, *at);
        holdings.stretches = stretches_.told(client, *at);
        holdings.notes = records_.notes(client, *at);
        holdings.promises = records_.promises(client, *at);
        holdings.foods = foods_.foods(client, *at);
        holdings.trials = trials_.trials(client, *at);
        holdings.shares = shares_.shares(client, *at);
        for (ShareRecord& record : holdings.shares) {
            record.share.client = holdings.client.handle;
        }
        holdings.escalations = records_.escalations(client, *at);
        holdings.findings = records_.findings(client, *at);
        audit_.add(acting, "client_exported", client);
        return holdings;
    });
}

Stored<void> SqlitePractice::note_look(std::int64_t client, const std::string& deed,
                                       const Acting& acting) {
    return changing(acting, Needs::a_look, [&]() -> Stored<void> {
        if (client == 0) {
            audit_.add(acting, deed);
            return {};
        }
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        audit_.add(acting, deed, client);
        return {};
    });
}

Stored<std::vector<AuditLine>> SqlitePractice::audit(std::optional<std::int64_t> client) {
    return reading([&]() -> Stored<std::vector<AuditLine>> { return audit_.lines(client); });
}

Stored<std::vector<std::string>> SqlitePractice::faults() {
    return reading([&]() -> Stored<std::vector<std::string>> {
        std::vector<std::string> faults;
        Statement whole(*database_, "PRAGMA integrity_check(20)");
        while (whole.step()) {
            if (whole.text(0) != "ok") {
                faults.emplace_back(whole.text(0));
            }
        }
        Statement references(*database_, "PRAGMA foreign_key_check");
        while (references.step()) {
            faults.push_back(fmt::format("a row of {} refers to one of {} that is not there",
                                         references.text(0), references.text(2)));
        }
        auto blocks = trace_.faults();
        faults.insert(faults.end(), blocks.begin(), blocks.end());
        for (const auto& called : clients_.clients()) {
            const auto opened = caught([&]() -> Stored<void> {
                const std::string at = *clients_.place_of(called.id);
                clients_.client(called.id);
                diary_.entries(called.id, at);
                MealPhotoTable(*database_, seal_).check(called.id, at);
                imports_.imports(called.id, at);
                records_.notes(called.id, at);
                records_.promises(called.id, at);
                foods_.foods(called.id, at);
                trials_.trials(called.id, at);
                fixings_.fixings(called.id, at);
                shares_.shares(called.id, at);
                stretches_.told(called.id, at);
                records_.escalations(called.id, at);
                records_.findings(called.id, at);
                return {};
            });
            if (!opened) {
                faults.push_back(
                    fmt::format("client {}: {}", called.handle, opened.error().sentence));
            }
        }
        return faults;
    });
}

}  // namespace tracewright
