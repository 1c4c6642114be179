#include "coaching/caseload.hpp"

#include "cli/json_text.hpp"
#include "cli/practice_commands.hpp"
#include "render/caseload_json.hpp"
#include "store/caseload_clients.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

void print_line(std::size_t number, const CaseloadLine& line, std::ostream& out) {
    out << fmt::format("{}. {} {}: {}\n", number, line.handle, line.name, line.first().why);
    for (std::size_t i = 1; i < line.needs.size(); ++i) {
        out << "   Also: " << line.needs[i].why << "\n";
    }
    const auto days = [](const std::vector<bool>& marks) {
        return std::count(marks.begin(), marks.end(), true);
    };
    out << fmt::format("   Next: {}\n   Of the last 7 days: seen {}, written {}.\n",
                       line.first().next, days(line.week.seen), days(line.week.written));
}

void print_caseload(const std::vector<CaseloadLine>& lines, std::ostream& out) {
    const auto quiet = std::ranges::find_if(
        lines, [](const CaseloadLine& line) { return line.first().kind == NeedKind::nothing_due; });
    std::size_t number = 0;
    for (auto line = lines.begin(); line != quiet; ++line) {
        print_line(++number, *line, out);
    }
    const auto left = lines.end() - quiet;
    out << fmt::format("{} of {} clients need something. {} with nothing due{}\n", number,
                       lines.size(), left, left > 0 ? ":" : ".");
    for (auto line = quiet; line != lines.end(); ++line) {
        out << fmt::format("   {} {}: {}\n", line->handle, line->name, line->first().why);
    }
    out << "Not an alarm. Don't rely on this list to be woken or warned.\n";
}

}  // namespace

Exit show_caseload(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams) {
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto gathered = caseload_clients(*practice->store, practice->acting.at);
    if (!gathered) {
        return said(gathered.error(), streams);
    }
    // One look at the list, not one for each client: what was looked into stands with the client.
    if (const auto noted = practice->store->note_look(0, "caseload_seen", practice->acting);
        !noted) {
        return said(noted.error(), streams);
    }
    const auto lines = caseload(*gathered, practice->acting.at);
    if (words.json) {
        streams.out << dumped(json_of_caseload(lines, practice->acting.at));
    } else {
        print_caseload(lines, streams.out);
    }
    return Exit::done;
}

}  // namespace tracewright
