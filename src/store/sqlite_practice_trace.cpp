#include "store/sqlite_practice.hpp"
#include "trace/held_levels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace tracewright {

std::vector<StoredWear> SqlitePractice::wears_within(std::int64_t client, const std::string& place,
                                                     std::optional<Interval> window) {
    std::vector<StoredWear> wears;
    const auto fixings = fixings_.fixings(client, place);
    const auto chosen = chosen_wears(client);
    int number = 0;
    for (const WearRow& row : trace_.wears(client)) {
        ++number;
        StoredWear stored;
        stored.id = row.id;
        stored.wear.readings = trace_.readings(client, row.id, window);
        if (window && stored.wear.empty()) {
            continue;
        }
        auto source = seal_.opened(row.sealed_source, place + " wear source");
        if (!source) {
            throw std::runtime_error(source.error());
        }
        stored.wear.label = fmt::format("wear {}", number);
        stored.wear.source = std::move(*source);
        stored.wear.start = row.start;
        stored.wear.start_told = row.start_told;
        stored.wear.end = row.end;
        stored.wear.planned_end = row.planned_end;
        stored.wear.interval = row.interval;
        stored.wear.chosen = chosen.contains(row.id);
        if (const auto told = fixings.find(row.id); told != fixings.end()) {
            stored.fixing = told->second;
        }
        wears.push_back(std::move(stored));
    }
    give_held_to(wears, client, window);
    return wears;
}

void SqlitePractice::give_held_to(std::vector<StoredWear>& wears, std::int64_t client,
                                  std::optional<Interval> window) {
    std::vector<HeldLevel> held;
    for (const BroughtIn::Held& one : imports_.held(client)) {
        if (!window || window->contains(one.at)) {
            held.push_back({one.at, one.value});
        }
    }
    std::vector<Wear*> each;
    for (StoredWear& stored : wears) {
        each.push_back(&stored.wear);
    }
    give_held(std::move(each), held);
}

Stored<std::vector<StoredWear>> SqlitePractice::wears(std::int64_t client,
                                                      std::optional<Interval> window) {
    return reading([&]() -> Stored<std::vector<StoredWear>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return wears_within(client, *at, window);
    });
}

Stored<void> SqlitePractice::change_wear(std::int64_t client, std::int64_t wear, WearEnd end,
                                         std::optional<Instant> planned_end, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        for (WearRow row : trace_.wears(client)) {
            if (row.id == wear) {
                row.end = end;
                row.planned_end = planned_end;
                row.changed_by_hand_at = acting.at;
                trace_.change_wear(row);
                audit_.add(acting, "wear_changed", client, wear);
                return {};
            }
        }
        return store_error(StoreErrorKind::not_found, "found no such wear of this client");
    });
}

Stored<void> SqlitePractice::tell_fixing(std::int64_t client, std::int64_t wear,
                                         const WearFixing& fixing, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        for (WearRow row : trace_.wears(client)) {
            if (row.id == wear) {
                row.changed_by_hand_at = acting.at;
                trace_.change_wear(row);
                fixings_.put(wear, *at, fixing, acting);
                audit_.add(acting, "wear_changed", client, wear);
                return {};
            }
        }
        return store_error(StoreErrorKind::not_found, "found no such wear of this client");
    });
}

Stored<Diary> SqlitePractice::diary(std::int64_t client, std::optional<Interval> window) {
    return reading([&]() -> Stored<Diary> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return diary_.entries(client, *at, window);
    });
}

Stored<std::vector<ToldStretch>> SqlitePractice::told_stretches(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<ToldStretch>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        std::vector<ToldStretch> told;
        std::ranges::transform(stretches_.told(client, *at), std::back_inserter(told),
                               &StretchRecord::told);
        return told;
    });
}

Stored<ImportPlan> SqlitePractice::preview(std::int64_t client, BroughtIn file, WhoseFile whose) {
    return reading([&]() -> Stored<ImportPlan> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return imports_.plan(client, std::move(file), whose);
    });
}

Stored<ImportOutcome> SqlitePractice::bring_in(std::int64_t client, BroughtIn file, WhoseFile whose,
                                               const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<ImportOutcome> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        const std::string source = file.source;
        ImportOutcome outcome;
        outcome.plan = imports_.plan(client, std::move(file), whose);
        if (outcome.plan.question) {
            audit_.add(acting, "import_held", client);
        } else if (outcome.plan.stores_nothing()) {
            audit_.add(acting, "import_known_already", client);
        } else {
            outcome.import = imports_.store(client, *at, source, outcome.plan, acting);
            audit_.add(acting, "import_stored", client, outcome.import);
        }
        return outcome;
    });
}

Stored<std::optional<Instant>> SqlitePractice::readings_brought_in_at(std::int64_t client) {
    return reading([&]() -> Stored<std::optional<Instant>> {
        return imports_.readings_brought_in_at(client);
    });
}

Stored<std::vector<ImportRecord>> SqlitePractice::imports(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<ImportRecord>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return imports_.imports(client, *at);
    });
}

Stored<ImportRecord> SqlitePractice::undo(std::int64_t client, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<ImportRecord> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        auto imports = imports_.imports(client, *at);
        if (imports.empty()) {
            return store_error(StoreErrorKind::not_found,
                               "found no import of this client, expected one to undo");
        }
        ImportRecord newest = std::move(imports.back());
        if (const auto resting = imports_.what_rests_on(client, newest); !resting.empty()) {
            return store_error(
                StoreErrorKind::refused,
                fmt::format("import {} can't be undone, as later things rest on it: {}", newest.id,
                            fmt::join(resting, "; ")));
        }
        imports_.undo(client, newest.id);
        audit_.add(acting, "import_undone", client, newest.id);
        return newest;
    });
}

}  // namespace tracewright
