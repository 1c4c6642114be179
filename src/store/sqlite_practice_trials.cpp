#include "store/sqlite_practice.hpp"

#include "diary/says_something.hpp"
#include "store/trial_document.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

StoreError no_such_trial() {
    return {StoreErrorKind::not_found,
            "found no trial of this number that goes on, expected one of this client"};
}

}  // namespace

Stored<std::vector<TrialRecord>> SqlitePractice::trials(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<TrialRecord>> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        return trials_.trials(client, *at);
    });
}

Stored<std::int64_t> SqlitePractice::keep_trial(std::int64_t client, const std::string& document,
                                                const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        if (const auto trial = trial_read(document); !trial) {
            return store_error(StoreErrorKind::refused, trial.error());
        }
        const std::int64_t trial = trials_.keep(client, *at, document, acting);
        audit_.add(acting, "trial_kept", client, trial);
        return trial;
    });
}

Stored<void> SqlitePractice::tell_trial_day(std::int64_t client, std::int64_t trial, CivilDate day,
                                            const std::string& done, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        constexpr std::array words = {"a", "b", "neither"};
        if (std::ranges::find(words, done) == words.end()) {
            return store_error(StoreErrorKind::refused,
                               "found another word of what was done, expected a, b or neither");
        }
        const auto all = trials_.trials(client, *at);
        const auto found = std::ranges::find(all, trial, &TrialRecord::id);
        if (found == all.end()) {
            return tl::make_unexpected(no_such_trial());
        }
        const auto drawn = trial_read(found->document);
        const bool a_day_of_it =
            drawn && std::ranges::any_of(drawn->blocks, [&](const TrialBlock& block) {
                return block.days[0] == day || block.days[1] == day;
            });
        if (!a_day_of_it) {
            return store_error(StoreErrorKind::refused,
                               "found a day that is none of this trial's, expected one of them");
        }
        if (!trials_.tell_day(client, *at, trial, day, done, acting)) {
            return tl::make_unexpected(no_such_trial());
        }
        audit_.add(acting, "trial_day_told", client, trial);
        return {};
    });
}

Stored<void> SqlitePractice::stop_trial(std::int64_t client, std::int64_t trial,
                                        const std::string& why, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        if (!says_something(why)) {
            return store_error(StoreErrorKind::refused,
                               "found no reason, expected why the trial was stopped");
        }
        if (!trials_.stop(client, *at, trial, why, acting)) {
            return tl::make_unexpected(no_such_trial());
        }
        audit_.add(acting, "trial_stopped", client, trial);
        return {};
    });
}

}  // namespace tracewright
