#include "cli/client_of_change.hpp"

#include "cli/client_of_practice.hpp"
#include "cli/files_of_client.hpp"
#include "intake/clock_text.hpp"
#include "intake/plain_text.hpp"
#include "store/client_document.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

// Without goals of ours where they don't hold (safety rule 11).
ClientOfChange in_pregnancy(ClientOfChange client) {
    const Goals goals = goals_that_hold(client.facts);
    if (goals.kind == GoalKind::pregnancy) {
        client.input.goals = goals;
    }
    return client;
}

}  // namespace

tl::expected<ClientFacts, std::string> facts_in_file(const std::string& path) {
    if (path.empty()) {
        return ClientFacts{};
    }
    const auto bytes = read_whole_file(path);
    if (!bytes) {
        return tl::make_unexpected(bytes.error().sentence);
    }
    auto facts =
        client_facts_changed({}, {reinterpret_cast<const char*>(bytes->data()), bytes->size()});
    return facts ? facts : tl::make_unexpected(path + ": " + facts.error());
}

tl::expected<ClientOfChange, Exit> client_of_change(const WhoseChange& whose, const char* looked,
                                                    const Streams& streams) {
    if (!whose.practice.practice.empty()) {
        auto client = client_of_practice(whose.practice, whose.files, looked, !whose.json, streams);
        if (!client) {
            return tl::make_unexpected(client.error());
        }
        const Licence licence = client->open.practice.coach.licence;
        return ClientOfChange{std::move(client->input), std::move(client->facts), Exit::done,
                              std::move(client->open), licence};
    }
    auto facts = facts_in_file(whose.facts);
    if (!facts) {
        streams.err << "tracewright: " << facts.error() << "\n";
        return tl::make_unexpected(Exit::bad_input);
    }
    auto gathered = files_of_client(whose.files, whose.diaries, streams, streams.err);
    if (!gathered) {
        return tl::make_unexpected(gathered.error());
    }
    return in_pregnancy({std::move(gathered->input), std::move(*facts), gathered->exit});
}

tl::expected<CivilDate, std::string> date_on_command_line(const std::string& text) {
    const auto time = written_time(plain(text));
    if (!time || !time->has_date || time->has_clock || !time->date(DateOrder::year_first)) {
        return tl::make_unexpected("found '" + text + "', expected a date such as 2026-03-02");
    }
    return *time->date(DateOrder::year_first);
}

std::string iso_date(CivilDate date) {
    const std::chrono::year_month_day ymd{date};
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(ymd.year()),
                       static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()));
}

void print_finding(const Finding& finding, std::ostream& out) {
    out << finding.question << "\n  " << finding.sentence << "\n";
    if (!finding.next.sentence.empty()) {
        out << "  Next: " << finding.next.sentence << "\n";
    }
    for (const Caveat& caveat : finding.caveats) {
        out << "  - " << caveat.sentence << "\n";
    }
}

}  // namespace tracewright
