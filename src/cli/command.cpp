#include "cli/command.hpp"

#include "cli/command_line.hpp"
#include "cli/json_text.hpp"
#include "cli/look_command.hpp"
#include "cli/review_command.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

void print_version(std::ostream& out) {
    out << fmt::format("tracewright {}\nzone data {}\nJSON look {}, measures {}, review {}\n",
                       TRACEWRIGHT_VERSION, zone_data_version(), look_json_version,
                       measures_json_version, review_json_version);
}

Exit dispatch(CommandLine& line, const Streams& streams) {
    if (line.version) {
        print_version(streams.out);
        return Exit::done;
    }
    if (!line.describe.empty()) {
        streams.out << (line.describe == "man" ? man_page(line.app) : bash_completion(line.app));
        return Exit::done;
    }
    if (line.look->parsed()) {
        return look(line.files, line.json, streams);
    }
    if (line.measures->parsed()) {
        line.measures_options.form = line.json  ? MeasuresForm::json
                                     : line.csv ? MeasuresForm::csv
                                                : MeasuresForm::table;
        line.measures_options.intervals = !line.no_intervals;
        return measures(line.files, line.measures_options, streams);
    }
    if (line.review->parsed()) {
        return review(line.files, line.diaries, line.out, streams);
    }
    streams.err << line.app.help();
    return Exit::wrong_usage;
}

}  // namespace

Exit run_command(const std::vector<std::string>& args, const Streams& streams) {
    CommandLine line;
    try {
        // The library takes the words last first.
        line.app.parse(std::vector<std::string>(args.rbegin(), args.rend()));
    } catch (const CLI::ParseError& error) {
        const bool asked_for_help = error.get_exit_code() == 0;
        line.app.exit(error, asked_for_help ? streams.out : streams.err, streams.err);
        return asked_for_help ? Exit::done : Exit::wrong_usage;
    }
    return dispatch(line, streams);
}

}  // namespace tracewright
