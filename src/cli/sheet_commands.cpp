#include "cli/sheet_commands.hpp"

#include "cli/client_of_sheet.hpp"
#include "cli/paper_output.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/explaining_page.hpp"
#include "coaching/gates.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "coaching/trial_report.hpp"
#include "coaching/wear_sheets.hpp"
#include "render/explaining_figures.hpp"
#include "render/paper_pages.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

// A sheet ready to be told, printed and written.
struct MadeSheet {
    std::string name;  ///< of its files
    Paper paper;
    std::vector<Figure> figures;
    std::vector<std::string> for_coach;
};

struct NotMade {
    std::string name;
    std::string because;
};

struct Sheets {
    std::vector<MadeSheet> made;
    std::vector<NotMade> not_made;
};

void add_missing_numbers(MadeSheet& sheet) {
    for (const std::string& who : contacts_without_number(sheet.paper)) {
        sheet.for_coach.push_back("No telephone number is known (" + who +
                                  "): a blank line is printed. Please write it in.");
    }
}

Json json_of_sheets(const Sheets& sheets) {
    Json made = Json::array();
    for (const MadeSheet& sheet : sheets.made) {
        Json one = {{"paper", sheet.name}};
        one.update(json_of(sheet.paper));
        one["for_coach"] = sheet.for_coach;
        made.push_back(std::move(one));
    }
    Json not_made = Json::array();
    for (const NotMade& one : sheets.not_made) {
        not_made.push_back({{"paper", one.name}, {"because", one.because}});
    }
    return {{"version", sheets_json_version}, {"papers", made}, {"not_made", not_made}};
}

void print_sheets(const Sheets& sheets, std::ostream& out) {
    for (const MadeSheet& sheet : sheets.made) {
        print_paper(sheet.paper, out);
        if (!sheet.for_coach.empty()) {
            out << "\nFor the coach alone\n";
        }
        for (const std::string& line : sheet.for_coach) {
            out << "  - " << line << "\n";
        }
        out << "\n";
    }
    for (const NotMade& one : sheets.not_made) {
        out << fmt::format("Not made: {}, because {}.\n", one.name, one.because);
    }
}

Exit give(const Sheets& sheets, const WhoseChange& whose, const std::string& out, Exit so_far,
          const Streams& streams) {
    if (whose.json) {
        streams.out << dumped(json_of_sheets(sheets));
    } else {
        print_sheets(sheets, streams.out);
    }
    for (const MadeSheet& sheet : sheets.made) {
        const Exit written = write_paper(sheet.paper, sheet.figures, out, sheet.name, streams);
        if (written != Exit::done) {
            return written;
        }
        if (!out.empty() && !whose.json) {
            streams.out << fmt::format("The paper is in {0}/{1}.pdf and {0}/{1}.html\n", out,
                                       sheet.name);
        }
    }
    return sheets.made.empty() && so_far == Exit::done ? Exit::cannot_answer : so_far;
}

Exit refuse(const Streams& streams, const std::string& sentence) {
    streams.err << "tracewright: " << sentence << "\n";
    return Exit::wrong_usage;
}

tl::expected<WearBeginning, std::string> wear_of(const SheetOptions& options,
                                                 const ReviewInput& input) {
    WearBeginning wear;
    wear.of_whom = input.of_whom;
    wear.site = options.site;
    if (options.days < 1 || options.days > 31) {
        return tl::make_unexpected(fmt::format("found --days {}, expected 1 to 31", options.days));
    }
    wear.days = options.days;
    if (!options.starts.empty()) {
        const auto date = date_on_command_line(options.starts);
        if (!date) {
            return tl::make_unexpected(date.error());
        }
        wear.starts = *date;
    }
    return wear;
}

// Sheets that need no readings; `write` makes them.
template <typename Write>
Exit sheets_without_readings(const WhoseChange& whose, const SheetOptions& options,
                             const char* looked, const Streams& streams, Write write) {
    const auto client = client_of_sheet(whose, looked, streams);
    if (!client) {
        return client.error();
    }
    const auto wear = wear_of(options, client->input);
    if (!wear) {
        return refuse(streams, wear.error());
    }
    const ReviewInput& input = client->input;
    const MedicineTimeline medicines = client_medicines(client->facts, input.zones);
    const CareInput care{client->facts, input.wears, input.diary,
                         medicines,     input.zones, input.as_of};
    Sheets sheets;
    write(sheets, *wear, care);
    for (MadeSheet& sheet : sheets.made) {
        add_missing_numbers(sheet);
    }
    return give(sheets, whose, options.out, client->exit, streams);
}

void list_pages(std::ostream& out) {
    for (const ExplainsFacts& page : all_explaining_pages()) {
        out << fmt::format("{}\n  {}; chosen: {}\n", page.code, page.title, page.rule);
    }
}

void add_page(Sheets& sheets, ExplainingPage page) {
    const ExplainsFacts& facts = facts_of(page.explains);
    const std::string name = fmt::format("explain-{}", facts.code);
    if (!page.not_made_because.empty()) {
        sheets.not_made.push_back({name, std::move(page.not_made_because)});
        return;
    }
    MadeSheet sheet{name, std::move(page.paper), {illustration_figure(page.illustration)}, {}};
    sheet.for_coach.push_back(fmt::format("Shown: {}. Rule: {}.", page.chosen, facts.rule));
    sheet.for_coach.insert(sheet.for_coach.end(), page.to_know.begin(), page.to_know.end());
    add_missing_numbers(sheet);
    sheets.made.push_back(std::move(sheet));
}

}  // namespace

Exit start_page_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams) {
    return sheets_without_readings(
        whose, options, "start_page_made", streams,
        [](Sheets& sheets, const WearBeginning& wear, const CareInput& care) {
            sheets.made.push_back({"start-page", start_page(wear, care), {}, {}});
        });
}

Exit diary_sheet_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams) {
    return sheets_without_readings(
        whose, options, "diary_sheet_made", streams,
        [](Sheets& sheets, const WearBeginning& wear, const CareInput& care) {
            int week = 0;
            for (Paper& paper : diary_sheets(wear, care)) {
                sheets.made.push_back(
                    {fmt::format("diary-sheet-{}", ++week), std::move(paper), {}, {}});
            }
        });
}

Exit explain_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams) {
    if (options.list) {
        list_pages(streams.out);
        return Exit::done;
    }
    const auto one = explaining_page_called(options.page);
    if (!one && options.page != "all") {
        return refuse(streams, "found --page '" + options.page +
                                   "', expected 'all' or one of explain --list");
    }
    const auto client = client_of_change(whose, "explaining_pages_made", streams);
    if (!client) {
        return client.error();
    }
    Sheets sheets;
    for (const ExplainsFacts& page : all_explaining_pages()) {
        if (!one || *one == page.explains) {
            add_page(sheets, explaining_page(page.explains, {client->input, client->facts}));
        }
    }
    return give(sheets, whose, options.out, client->exit, streams);
}

Exit write_trial_paper(const Trial& trial, const TrialReading* reading,
                       const ClientOfChange& client, const std::string& file,
                       const Streams& streams) {
    const bool pdf = file.ends_with(".pdf");
    if (!pdf && !file.ends_with(".html")) {
        return refuse(streams, "found --page '" + file +
                                   "', expected a name that ends in .pdf or "
                                   ".html");
    }
    const ReviewInput& input = client.input;
    const MedicineTimeline medicines = client_medicines(client.facts, input.zones);
    const CareInput care{client.facts, input.wears, input.diary,
                         medicines,    input.zones, input.as_of};
    if (const auto gates = gates_before_trial_papers(trial, care); !gates.empty()) {
        streams.err << "tracewright: the trial's paper is not printed:\n";
        for (const std::string& sentence : gates_for_coach(gates, Licence::none)) {
            streams.err << "  - " << sentence << "\n";
        }
        return Exit::cannot_answer;
    }
    const bool ended = reading != nullptr && reading->ended;
    const Paper paper = ended ? trial_report(trial, *reading, input, care)
                              : trial_calendar_page(trial, care, input.of_whom);
    std::vector<Figure> figures;
    if (ended) {
        figures.push_back(trial_pairs_figure(trial, *reading, input.unit));
    }
    std::string bytes;
    if (pdf) {
        auto printed = paper_pdf(paper, figures);
        if (!printed) {
            streams.err << "tracewright: " << printed.error().sentence() << "\n";
            return Exit::cannot_answer;
        }
        bytes = std::move(*printed);
    } else {
        bytes = paper_html(paper, figures);
    }
    const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
    if (const auto done = write_whole_file(file, {data, bytes.size()}); !done) {
        streams.err << "tracewright: " << done.error().sentence << "\n";
        return Exit::bad_input;
    }
    return Exit::done;
}

}  // namespace tracewright
