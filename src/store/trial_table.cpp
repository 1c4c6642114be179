#include "store/trial_table.hpp"

#include "store/stored_column.hpp"

#include <stdexcept>

namespace tracewright {

std::vector<TrialRecord> TrialTable::trials(std::int64_t client, const std::string& place) {
    Statement all(database_,
                  "SELECT id, at, coach, sealed_trial FROM trial WHERE client = ? ORDER BY id");
    Statement days(database_,
                   "SELECT at, coach, day, sealed_done FROM trial_day WHERE trial = ? ORDER BY id");
    Statement stop(database_, "SELECT at, coach, sealed_why FROM trial_stop WHERE trial = ?");
    std::vector<TrialRecord> trials;
    for (all.with(client); all.step();) {
        TrialRecord trial{all.integer(0),
                          instant(all.integer(1)),
                          all.integer(2),
                          opened_text(seal_, all.blob(3), place + " trial"),
                          {},
                          {}};
        for (days.with(trial.id); days.step();) {
            trial.days.push_back({instant(days.integer(0)), days.integer(1),
                                  CivilDate{std::chrono::days{days.integer(2)}},
                                  opened_text(seal_, days.blob(3), place + " trial day")});
        }
        if (stop.with(trial.id).step()) {
            trial.stopped = TrialStop{instant(stop.integer(0)), stop.integer(1),
                                      opened_text(seal_, stop.blob(2), place + " trial stop")};
        }
        trials.push_back(std::move(trial));
    }
    return trials;
}

std::int64_t TrialTable::keep(std::int64_t client, const std::string& place,
                              const std::string& document, const Acting& acting) {
    Statement add(database_,
                  "INSERT INTO trial(client, at, coach, sealed_trial) VALUES (?, ?, ?, ?)");
    add.with(client, seconds(acting.at), acting.coach, seal_.sealed(document, place + " trial"))
        .run();
    return database_.last_row();
}

bool TrialTable::goes_on(std::int64_t client, std::int64_t trial) {
    Statement known(database_,
                    "SELECT 1 FROM trial WHERE client = ? AND id = ? "
                    "AND id NOT IN (SELECT trial FROM trial_stop)");
    return known.with(client, trial).step();
}

bool TrialTable::tell_day(std::int64_t client, const std::string& place, std::int64_t trial,
                          CivilDate day, const std::string& done, const Acting& acting) {
    if (!goes_on(client, trial)) {
        return false;
    }
    Statement add(database_,
                  "INSERT INTO trial_day(trial, at, coach, day, sealed_done) "
                  "VALUES (?, ?, ?, ?, ?)");
    add.with(trial, seconds(acting.at), acting.coach,
             static_cast<std::int64_t>(day.time_since_epoch().count()),
             seal_.sealed(done, place + " trial day"))
        .run();
    return true;
}

bool TrialTable::stop(std::int64_t client, const std::string& place, std::int64_t trial,
                      const std::string& why, const Acting& acting) {
    if (!goes_on(client, trial)) {
        return false;
    }
    Statement add(database_,
                  "INSERT INTO trial_stop(trial, at, coach, sealed_why) VALUES (?, ?, ?, ?)");
    add.with(trial, seconds(acting.at), acting.coach, seal_.sealed(why, place + " trial stop"))
        .run();
    return true;
}

}  // namespace tracewright
