#include "cli/consent_said.hpp"
#include "cli/eaten_lines.hpp"
#include "cli/escalation_records.hpp"
#include "cli/practice_commands.hpp"
#include "coaching/client_clock.hpp"
#include "findings/finger_prick_words.hpp"
#include "findings/wording.hpp"
#include "intake/client_message.hpp"
#include "serve/brought_in_file.hpp"
#include "store/foods_of_client.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <ostream>
#include <sstream>

namespace tracewright {

namespace {

struct BadMessage {
    std::string sentence;
    Exit exit = Exit::wrong_usage;
};

// The text of the command line or of a file.
tl::expected<std::string, BadMessage> message_text(const PracticeWords& words) {
    if (words.from_file.empty() == words.text.empty()) {
        return tl::make_unexpected(
            BadMessage{"found no message or two, expected its text, or --from FILE"});
    }
    if (words.from_file.empty()) {
        return words.text;
    }
    std::ifstream file(words.from_file, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    if (!file) {
        return tl::make_unexpected(BadMessage{
            words.from_file + ": found no file to read, expected a message", Exit::bad_input});
    }
    return text.str();
}

std::string details(const DiaryEntry& entry) {
    std::string line;
    if (entry.slot) {
        line += ", " + *entry.slot;
    }
    if (entry.until) {
        line += fmt::format(
            ", {} min", std::chrono::round<std::chrono::minutes>(*entry.until - entry.at).count());
    } else if (entry.number) {
        line += fmt::format(", {:g} {}", *entry.number, entry.number_unit);
    }
    if (entry.glucose) {
        line += ", " + finger_prick_level(entry, entry.glucose->unit);
    }
    if (entry.carbohydrate_g) {
        line += fmt::format(", {:g} g carbohydrate as written", entry.carbohydrate_g->value);
    }
    return line;
}

void print(const ProposedEntry& one, const ZoneHistory& zones, std::ostream& out) {
    const DiaryEntry& entry = one.entry;
    out << fmt::format("{}{}  {}: {}{}\n", day_and_time(zones.wall_time(entry.at), zones.writing()),
                       entry.time_uncertain ? " ?" : "", name_of(entry.kind),
                       entry.text.empty() ? "(not described)" : entry.text, details(entry));
    for (const Doubt& doubt : one.doubts) {
        out << "  ? " << name_of(doubt.about) << ": " << doubt.sentence << "\n";
    }
    if (one.eaten && !one.eaten->foods.empty()) {
        print_eaten(*one.eaten, "  ", out);
    }
}

Exit store_entries(OpenClient& open, const std::vector<ProposedEntry>& message, CivilDate day,
                   const ClientFacts& facts, const Streams& streams) {
    say_consent_over(facts, open.practice.acting.at, streams);
    const std::string source = "jotted for " + day_text(day);
    const auto outcome = open.store().bring_in(open.client, brought_in_message(message, source),
                                               WhoseFile::not_asked, open.practice.acting);
    if (!outcome) {
        return said(outcome.error(), streams);
    }
    if (outcome->import == 0) {
        streams.out << "Nothing new: these entries are in the diary already.\n";
        return Exit::done;
    }
    streams.out << fmt::format("{} stored, {} there already (import {}; undo takes it back)\n",
                               outcome->plan.rows_stored, outcome->plan.rows_duplicate,
                               outcome->import);
    return say_escalations(open.store(), open.client, facts, open.practice.acting, streams);
}

}  // namespace

Exit jot(const PracticeOptions& options, const PracticeWords& words, const Streams& streams) {
    const auto text = message_text(words);
    if (!text) {
        streams.err << "tracewright: " << text.error().sentence << "\n";
        return text.error().exit;
    }
    if (text->size() > longest_message) {
        streams.err << fmt::format(
            "tracewright: found a message of {} bytes, expected at most {}: paste day by day\n",
            text->size(), longest_message);
        return Exit::wrong_usage;
    }
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    const auto record = open->store().client(open->client);
    const auto own = foods_of_client(open->store(), open->client);
    if (!record || !own) {
        return said(record ? own.error() : record.error(), streams);
    }
    MessageOptions how;
    how.zones = client_clock(record->facts);
    how.unit = record->facts.unit;
    how.as_of = open->practice.acting.at;
    how.foods.client = &*own;
    how.day = how.zones.date_at(*how.as_of);
    if (!words.day.empty()) {
        const auto day = day_of_text(words.day);
        if (!day) {
            streams.err << "tracewright: found no day in --day, expected one such as 2026-03-02\n";
            return Exit::wrong_usage;
        }
        how.day = *day;
    }
    const std::vector<ProposedEntry> message = client_message(*text, how);
    if (message.empty()) {
        streams.err << "tracewright: found nothing in the message, expected some words\n";
        return Exit::cannot_answer;
    }
    for (const ProposedEntry& one : message) {
        print(one, how.zones, streams.out);
    }
    if (!words.keep) {
        const auto unsure = std::count_if(message.begin(), message.end(),
                                          [](const ProposedEntry& one) { return !one.sure(); });
        streams.out << fmt::format(
            "{} entries, {} with something not sure ('?'). Nothing is stored: --keep stores "
            "them.\n",
            message.size(), unsure);
        return Exit::done;
    }
    return store_entries(*open, message, how.day, record->facts, streams);
}

}  // namespace tracewright
