#include "cli/remind_command.hpp"

#include "cli/json_text.hpp"
#include "coaching/client_clock.hpp"
#include "coaching/reminders.hpp"
#include "findings/wording.hpp"
#include "store/client_of_list.hpp"
#include "store/reminder_document.hpp"
#include "time/clock_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

struct RemindedClient {
    std::string handle;
    std::string name;
    ZoneHistory clock;
    ClientReminders told;
};

// The rules with what was typed; read back, so that a slip is said as any reader says it.
tl::expected<ReminderRules, std::string> changed(const ReminderRules& rules,
                                                 const RemindOptions& options) {
    Json document = Json::parse(reminder_document(rules));
    if (!options.quiet_from.empty()) {
        document["quiet_from"] = options.quiet_from;
    }
    if (!options.quiet_to.empty()) {
        document["quiet_to"] = options.quiet_to;
    }
    if (options.silent_hours) {
        document["silent_hours"] = *options.silent_hours;
    }
    if (options.most_a_day) {
        document["most_a_day"] = *options.most_a_day;
    }
    auto off = rules.off;
    for (const std::string& kind : options.off) {
        if (std::ranges::find(off, kind) == off.end()) {
            off.push_back(kind);
        }
    }
    std::erase_if(off, [&](const std::string& kind) {
        return std::ranges::find(options.on, kind) != options.on.end();
    });
    document["off"] = off;
    return reminder_rules_read(document.dump());
}

void print_rules(const ReminderRules& rules, WayOfWriting way, std::ostream& out) {
    out << fmt::format(
        "Quiet from {} to {} by the client's clock. No data: after {} hours. At most {} a day to "
        "one client. Off: {}.\n",
        clock_words(rules.quiet_from, way), clock_words(rules.quiet_to, way), rules.silent_hours,
        rules.most_a_day,
        rules.off.empty() ? "none" : fmt::format("{}", fmt::join(rules.off, ", ")));
    out << "What is unsafe is never quiet and can't be switched off.\n";
}

void print_client(const RemindedClient& client, Instant as_of, std::ostream& out) {
    out << fmt::format("\n{} {}\n", client.handle, client.name);
    for (const std::string& first : client.told.first) {
        out << "  First, today: " << first << "\n";
    }
    for (const Reminder& one : client.told.reminders) {
        out << "  " << one.why << "\n";
        if (one.not_before > as_of) {
            out << "    Quiet hours: not before "
                << day_and_time(client.clock.wall_time(one.not_before), client.clock.writing())
                << ".\n";
        }
        out << "    To copy: " << one.text << "\n";
    }
    if (client.told.waiting > 0) {
        out << fmt::format("  {} more wait: enough for one day.\n", client.told.waiting);
    }
}

Json json_of(const std::vector<RemindedClient>& clients, const ReminderRules& rules,
             Instant as_of) {
    const ZoneHistory utc(Zone::fixed(std::chrono::seconds{0}));
    Json json = {{"version", reminders_json_version},
                 {"as_of", iso_time(as_of, utc)},
                 {"rules", Json::parse(reminder_document(rules))}};
    json["clients"] = Json::array();
    for (const RemindedClient& client : clients) {
        Json told = {{"handle", client.handle},
                     {"name", client.name},
                     {"first", client.told.first},
                     {"waiting", client.told.waiting}};
        told["reminders"] = Json::array();
        for (const Reminder& one : client.told.reminders) {
            told["reminders"].push_back({{"kind", one.kind},
                                         {"why", one.why},
                                         {"text", one.text},
                                         {"not_before", iso_time(one.not_before, client.clock)}});
        }
        json["clients"].push_back(std::move(told));
    }
    return json;
}

Stored<std::vector<RemindedClient>> reminded(OpenPractice& practice, const ReminderRules& rules,
                                             const std::string& only) {
    std::optional<std::int64_t> one;
    if (!only.empty()) {
        const auto client = practice.store->client_called(only);
        if (!client) {
            return tl::make_unexpected(client.error());
        }
        one = *client;
    }
    const auto lines = practice.store->clients();
    if (!lines) {
        return tl::make_unexpected(lines.error());
    }
    std::vector<RemindedClient> all;
    for (const ClientLine& line : *lines) {
        if (one && line.id != *one) {
            continue;
        }
        const auto client = client_of_list(*practice.store, line, practice.acting.at);
        if (!client) {
            return tl::make_unexpected(client.error());
        }
        ClientReminders told = reminders_for(*client, rules, practice.acting.at);
        if (!told.first.empty() || !told.reminders.empty() || told.waiting > 0) {
            all.push_back({line.handle, line.name, client_clock(client->facts), std::move(told)});
        }
    }
    return all;
}

}  // namespace

Exit remind(const PracticeOptions& options, const RemindOptions& words, const Streams& streams) {
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    auto rules = practice->store->reminder_rules();
    if (!rules) {
        return said(rules.error(), streams);
    }
    if (words.changes()) {
        auto others = changed(*rules, words);
        if (!others) {
            streams.err << "tracewright: " << others.error() << "\n";
            return Exit::wrong_usage;
        }
        if (const auto set = practice->store->set_reminder_rules(*others, practice->acting); !set) {
            return said(set.error(), streams);
        }
        rules = std::move(*others);
    }
    if (words.changes() || words.rules) {
        const auto written = practice->store->writing();
        if (!written) {
            return said(written.error(), streams);
        }
        print_rules(*rules, written->way, streams.out);
        return Exit::done;
    }
    const auto all = reminded(*practice, *rules, words.client);
    if (!all) {
        return said(all.error(), streams);
    }
    if (words.json) {
        streams.out << dumped(json_of(*all, *rules, practice->acting.at));
        return Exit::done;
    }
    streams.out << (all->empty() ? "Nothing to remind of now.\n"
                                 : "Nothing is sent from here: copy what you want to send.\n");
    for (const RemindedClient& client : *all) {
        print_client(client, practice->acting.at, streams.out);
    }
    streams.out << "\nNot an alarm. Don't rely on this list to be woken or warned.\n";
    return Exit::done;
}

}  // namespace tracewright
