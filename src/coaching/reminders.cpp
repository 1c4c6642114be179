#include "coaching/reminders.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

const Wear* wear_that_is_on(const CaseloadClient& client, Instant as_of) {
    const Wear* last = nullptr;
    for (const Wear& wear : client.wears) {
        if (!wear.empty() && wear_is_on(wear, as_of) &&
            (last == nullptr || wear.start > last->start)) {
            last = &wear;
        }
    }
    return last;
}

void silence(const CaseloadClient& client, const ZoneHistory& clock, const ReminderRules& rules,
             Instant as_of, std::vector<Reminder>& all) {
    const Wear* wear = wear_that_is_on(client, as_of);
    if (wear == nullptr) {
        return;
    }
    const Instant last = wear->readings.back().at;
    if (as_of - last >= std::chrono::hours{rules.silent_hours}) {
        all.push_back({"no_data", last,
                       fmt::format("No readings since {}: nothing can be said since then.",
                                   day_and_time(clock.wall_time(last), clock.writing())),
                       "I have seen no readings from you for a while. Is the sensor still on, and "
                       "near its reader? If you feel unwell, please don't wait for me: call your "
                       "clinic.",
                       as_of});
    }
    const Instant end = planned_end_of(*wear);
    const auto days = clock.date_at(end) - clock.date_at(as_of);
    if (days <= std::chrono::days{2}) {
        all.push_back(
            {"wear_ending", end,
             fmt::format("The wear ends {}.", day_and_time(clock.wall_time(end), clock.writing())),
             fmt::format("Your sensor ends {}. Please send me the last readings and the "
                         "diary, and note why it came off if it does so sooner.",
                         day_and_time(clock.wall_time(end), clock.writing())),
             as_of});
    }
}

Instant after_quiet(const ReminderRules& rules, const ZoneHistory& clock, Instant as_of) {
    if (rules.quiet_from == rules.quiet_to) {
        return as_of;
    }
    const CivilDate today = clock.date_at(as_of);
    const auto into = clock.wall_time(as_of) - WallTime{today.time_since_epoch()};
    const bool over_midnight = rules.quiet_from > rules.quiet_to;
    const bool quiet = over_midnight ? into >= rules.quiet_from || into < rules.quiet_to
                                     : into >= rules.quiet_from && into < rules.quiet_to;
    if (!quiet) {
        return as_of;
    }
    const bool tomorrow = over_midnight && into >= rules.quiet_from;
    const CivilDay day = clock.day_of(today + std::chrono::days{tomorrow ? 1 : 0});
    return clock.clock_window(day, rules.quiet_to, std::chrono::hours{24}).from;
}

}  // namespace

ClientReminders reminders_for(const CaseloadClient& client, const ReminderRules& rules,
                              Instant as_of) {
    const ZoneHistory clock = client_clock(client.facts);
    ClientReminders told;
    for (const StandingEscalation& one : client.escalations) {
        if (one.answer.empty() && one.escalation.rung <= Rung::same_day) {
            told.first.push_back(escalation_sentence(one.escalation, clock, one.first_seen, as_of));
        }
    }
    std::vector<Reminder> all;
    for (DueCheck& check : due_checks(client, clock, as_of)) {
        if (!check.text.empty()) {
            all.push_back({name_of(check.kind), check.by, std::move(check.why),
                           std::move(check.text), as_of});
        }
    }
    silence(client, clock, rules, as_of, all);
    std::erase_if(all, [&](const Reminder& one) {
        return std::ranges::find(rules.off, one.kind) != rules.off.end();
    });
    std::ranges::stable_sort(all, {}, [](const Reminder& one) {
        return std::ranges::find(reminder_kinds, one.kind) - reminder_kinds.begin();
    });
    const Instant from = after_quiet(rules, clock, as_of);
    for (Reminder& one : all) {
        one.not_before = from;
    }
    const auto most = static_cast<std::size_t>(std::max(0, rules.most_a_day));
    told.waiting = all.size() > most ? static_cast<int>(all.size() - most) : 0;
    all.resize(std::min(all.size(), most));
    told.reminders = std::move(all);
    return told;
}

}  // namespace tracewright
