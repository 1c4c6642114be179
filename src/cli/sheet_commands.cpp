#include "cli/sheet_commands.hpp"

#include "cli/client_of_sheet.hpp"
#include "cli/paper_output.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/gates.hpp"
#include "render/drawn_paper.hpp"
#include "render/paper_json.hpp"
#include "render/paper_pages.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

struct Sheets {
    std::vector<DrawnPaper> made;
    std::vector<PaperNotMade> not_made;
};

Json json_of_sheets(const Sheets& sheets) {
    Json made = Json::array();
    for (const DrawnPaper& sheet : sheets.made) {
        Json one = {{"paper", sheet.name}};
        one.update(json_of(sheet.paper));
        one["for_coach"] = sheet.for_coach;
        made.push_back(std::move(one));
    }
    Json not_made = Json::array();
    for (const PaperNotMade& one : sheets.not_made) {
        not_made.push_back({{"paper", one.name}, {"because", one.because}});
    }
    return {{"version", sheets_json_version}, {"papers", made}, {"not_made", not_made}};
}

void print_sheets(const Sheets& sheets, std::ostream& out) {
    for (const DrawnPaper& sheet : sheets.made) {
        print_paper(sheet.paper, out);
        if (!sheet.for_coach.empty()) {
            out << "\nFor the coach alone\n";
        }
        for (const std::string& line : sheet.for_coach) {
            out << "  - " << line << "\n";
        }
        out << "\n";
    }
    for (const PaperNotMade& one : sheets.not_made) {
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
    for (const DrawnPaper& sheet : sheets.made) {
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
    return give(sheets, whose, options.out, client->exit, streams);
}

void list_pages(std::ostream& out) {
    for (const ExplainsFacts& page : all_explaining_pages()) {
        out << fmt::format("{}\n  {}; chosen: {}\n", page.code, page.title, page.rule);
    }
}

}  // namespace

Exit start_page_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams) {
    return sheets_without_readings(
        whose, options, "start_page_made", streams,
        [](Sheets& sheets, const WearBeginning& wear, const CareInput& care) {
            sheets.made.push_back(drawn_start_page(wear, care));
        });
}

Exit diary_sheet_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams) {
    return sheets_without_readings(
        whose, options, "diary_sheet_made", streams,
        [](Sheets& sheets, const WearBeginning& wear, const CareInput& care) {
            sheets.made = drawn_diary_sheets(wear, care);
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
            auto drawn = drawn_explaining_page(page.explains, {client->input, client->facts});
            if (drawn) {
                sheets.made.push_back(std::move(*drawn));
            } else {
                sheets.not_made.push_back(std::move(drawn.error()));
            }
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
    const auto drawn = drawn_trial_paper(trial, reading, input, care);
    if (!drawn) {
        streams.err << "tracewright: the trial's paper is not printed:\n";
        for (const std::string& sentence : gates_for_coach(drawn.error(), Licence::none)) {
            streams.err << "  - " << sentence << "\n";
        }
        return Exit::cannot_answer;
    }
    std::string bytes;
    if (pdf) {
        auto printed = paper_pdf(drawn->paper, drawn->figures);
        if (!printed) {
            streams.err << "tracewright: " << printed.error().sentence() << "\n";
            return Exit::cannot_answer;
        }
        bytes = std::move(*printed);
    } else {
        bytes = paper_html(drawn->paper, drawn->figures);
    }
    const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
    if (const auto done = write_whole_file(file, {data, bytes.size()}); !done) {
        streams.err << "tracewright: " << done.error().sentence << "\n";
        return Exit::bad_input;
    }
    return Exit::done;
}

}  // namespace tracewright
