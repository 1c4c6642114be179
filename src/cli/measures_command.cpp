#include "cli/measures_command.hpp"

#include "cli/json_text.hpp"
#include "cli/notes_of_file.hpp"
#include "cli/side_by_side.hpp"
#include "findings/wording.hpp"
#include "intake/workbook_sheets.hpp"
#include "measures/episodes.hpp"
#include "measures/measure_set.hpp"
#include "store/csv_cell.hpp"
#include "trace/counted_trace.hpp"
#include "trace/fitness.hpp"
#include "trace/suspect.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <mutex>
#include <ostream>

namespace tracewright {

namespace {

// All that is said of one file.
struct Measured {
    std::string file;
    std::optional<FileError> error;
    Ledger ledger;
    bool no_reading = false;         // none stored, or none in the window asked for
    std::optional<Interval> window;  // empty: none asked for, and no reading to make one
    Fitness fitness;
    Measures measures;
    std::vector<Episode> episodes;
    std::vector<Mark> marks;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
    bool in_utc = false;
};

struct Plan {
    const FileOptions& files;
    const MeasuresOptions& options;
    IntakeOptions intake;
    std::optional<Interval> window;
};

Measured measured(Intake intake, const Plan& plan) {
    Measured result;
    const std::string file = intake.file;
    result.file = file;
    result.error = intake.error;
    result.ledger = std::move(intake.ledger);
    if (result.error) {
        return result;
    }
    result.in_utc = intake.in_utc;
    result.unit = unit_shown(plan.files, intake.unit);
    const ZoneHistory& zones = plan.intake.zones;
    const auto new_wear = std::chrono::seconds{std::lround(plan.files.new_wear_after_hours * 3600)};
    const std::vector<Wear> wears = wears_in(intake, file, new_wear);
    const CountedTrace trace = counted_trace(wears);
    const Interval window = plan.window.value_or(trace.window);
    const TraceView view = cut(trace.view(), window);
    result.no_reading = readings_within(view).empty();
    if (plan.window || !trace.readings.empty()) {
        result.window = window;
    }
    const MeasureOptions how{result.unit, plan.options.intervals, plan.files.seed};
    result.measures = measures_of(view, zones, how);
    if (plan.options.form == MeasuresForm::csv) {
        return result;  // a table of measures tells nothing else
    }
    result.fitness =
        fitness_of({view.readings, window.from, window.to}, zones,
                   plan.window ? "of the window asked for" : "from the first to the last reading");
    result.episodes = episodes_of(view);
    for (const Wear& wear : wears) {
        const auto marks =
            suspect_stretches(wear, {std::chrono::minutes{plan.files.warm_up_minutes}});
        result.marks.insert(result.marks.end(), marks.begin(), marks.end());
    }
    return result;
}

// Each sheet of a workbook by itself; a further one with nothing to measure, a diary, is named with
// the first.
std::vector<Measured> measured(const std::string& file, const Plan& plan) {
    std::vector<Intake> sheets = bring_in_sheets(file, plan.intake);
    for (std::size_t i = 1; i < sheets.size();) {
        if (sheets[i].error || sheets[i].count_of_readings() > 0) {
            ++i;
            continue;
        }
        const SourceFacts& facts = sheets[i].facts;
        tell_sheet_not_read(sheets.front(), {facts.sheet, facts.sheet_rows}, "glucose to measure");
        sheets.erase(sheets.begin() + static_cast<std::ptrdiff_t>(i));
    }
    std::vector<Measured> all;
    for (Intake& sheet : sheets) {
        all.push_back(measured(std::move(sheet), plan));
    }
    return all;
}

// A line that redraws itself, on a terminal only. Several threads step it.
class Progress {
  public:
    Progress(std::size_t total, const Streams& streams) : total_(total), streams_(streams) {}
    ~Progress() {
        if (streams_.terminal && total_ > 1) {
            streams_.err << "\r\x1b[K" << std::flush;
        }
    }
    void step() {
        const std::scoped_lock lock(drawing_);
        const std::size_t done = ++done_;
        if (streams_.terminal && total_ > 1 &&
            (done % std::max<std::size_t>(1, total_ / 100) == 0)) {
            streams_.err << fmt::format("\rmeasuring {} of {} files", done, total_) << std::flush;
        }
    }

  private:
    std::size_t total_;
    const Streams& streams_;
    std::mutex drawing_;
    std::size_t done_ = 0;
};

Json json_of_measured(const Measured& m, const ZoneHistory& zones) {
    Json json = {{"file", m.file}};
    if (m.error) {
        json["error"] = json_of(*m.error);
        return json;
    }
    json["rows"] = json_of_rows(m.ledger);
    json["window"] = m.window ? json_of_window(m.fitness, *m.window, zones) : Json(nullptr);
    json["measures"] = json_of(m.measures);
    json["episodes"] = json_of(std::span<const Episode>(m.episodes), zones, m.unit);
    json["marks"] = json_of(std::span<const Mark>(m.marks), zones);
    return json;
}

std::string csv_number(const std::optional<double>& value) {
    return value ? fmt::format("{}", *value) : "";
}

void print_csv(const std::vector<Measured>& all, std::ostream& out) {
    out << "file,measure,value,unit,low95,high95,days,absent_because\r\n";
    for (const Measured& m : all) {
        const std::string file = csv_cell(m.file);
        for (const Measure& measure : m.measures) {
            const auto end = [&](std::size_t i) {
                return csv_number(measure.interval95 ? std::optional{(*measure.interval95)[i]}
                                                     : std::nullopt);
            };
            out << file << "," << measure.name << "," << csv_number(measure.value) << ","
                << measure.unit << "," << end(0) << "," << end(1) << "," << measure.days << ","
                << csv_cell(measure.absent_because) << "\r\n";
        }
    }
}

void print_table(const Measured& m, const ZoneHistory& zones, std::ostream& out) {
    if (m.error) {
        return;
    }
    out << m.file << "\n";
    say_of_whole_file(m.ledger, out);
    if (!m.window) {
        out << "  no reading: nothing to measure\n";
        return;
    }
    out << fmt::format("  {} to {}, {} days, {:.1f} % sensed {}\n", iso_time(m.window->from, zones),
                       iso_time(m.window->to, zones), m.fitness.days, m.fitness.active_percent(),
                       m.fitness.denominator);
    if (zones.zone_at(m.window->from).is_floating()) {
        out << (m.in_utc ? "  no time zone told: times are in UTC (--zone)\n"
                         : "  no time zone told: times stand as written (--zone)\n");
    }
    for (const Measure& measure : m.measures) {
        out << fmt::format("  {:<16}", measure.name);
        if (!measure.value) {
            out << "  -  (" << measure.absent_because << ")\n";
            continue;
        }
        out << fmt::format("{:>10.4g} {:<9}", *measure.value, measure.unit);
        if (measure.interval95) {
            const auto& [from, to] = *measure.interval95;
            out << " " << from_to_words(fmt::format("{:.4g}", from), fmt::format("{:.4g}", to))
                << fmt::format(", {} days", measure.days);
        } else {
            out << " no interval: " << measure.no_interval_because;
        }
        out << "\n";
    }
    out << fmt::format("  episodes {}, suspect stretches {} (marked, still counted)\n",
                       m.episodes.size(), m.marks.size());
}

// Where rows were refused, how many and for what most of them.
std::string refused_words(const Ledger& ledger) {
    const std::uint64_t refused = ledger.with(Fate::rejected);
    if (refused == 0) {
        return "";
    }
    const auto most = std::ranges::max_element(ledger.by_code(), {},
                                               [](const auto& code) { return code.second; });
    return fmt::format("; {} {} refused{}: `look` tells why", refused,
                       refused == 1 ? "row was" : "rows were",
                       most == ledger.by_code().end() ? "" : " (" + most->first + ")");
}

// What the calling program is told: bad input before what can't be answered.
Exit exit_of(const std::vector<Measured>& all, const Streams& streams) {
    Exit exit = all.empty() ? Exit::cannot_answer : Exit::done;
    for (const Measured& m : all) {
        if (m.error) {
            streams.err << m.error->sentence() << "\n";
        } else if (m.no_reading) {
            streams.err << m.file << ": found no reading"
                        << (m.window ? " in the window asked for" : "")
                        << ", expected some to measure" << refused_words(m.ledger) << "\n";
        }
        const bool bad = m.error && m.error->kind != FileErrorKind::needs_answer;
        if (bad) {
            exit = Exit::bad_input;
        } else if ((m.error || m.no_reading) && exit == Exit::done) {
            exit = Exit::cannot_answer;
        }
    }
    return exit;
}

}  // namespace

Exit measures(const FileOptions& files, const MeasuresOptions& options, const Streams& streams) {
    const auto intake = intake_options(files, streams.now);
    if (!intake) {
        streams.err << "tracewright: " << intake.error() << "\n";
        return Exit::wrong_usage;
    }
    const auto window = window_of(files, intake->zones);
    if (!window) {
        streams.err << "tracewright: " << window.error() << "\n";
        return Exit::wrong_usage;
    }
    const Plan plan{files, options, *intake, *window};
    const std::vector<std::string> names = files_named(files.files, streams.err);
    std::vector<std::vector<Measured>> of_file(names.size());
    {
        Progress progress(names.size(), streams);
        side_by_side(names.size(), options.jobs, [&](std::size_t i) {
            of_file[i] = measured(names[i], plan);
            progress.step();
        });
    }
    std::vector<Measured> all;
    for (std::vector<Measured>& sheets : of_file) {
        std::ranges::move(sheets, std::back_inserter(all));
    }
    if (names.empty()) {
        streams.err << no_file_in(files.files) << "\n";
    }
    const Exit exit = exit_of(all, streams);
    if (options.form == MeasuresForm::json) {
        Json document = {{"version", measures_json_version}, {"files", Json::array()}};
        for (const Measured& m : all) {
            document["files"].push_back(json_of_measured(m, intake->zones));
        }
        streams.out << dumped(document);
    } else if (options.form == MeasuresForm::csv) {
        print_csv(all, streams.out);
    } else {
        for (const Measured& m : all) {
            print_table(m, intake->zones, streams.out);
        }
    }
    return exit;
}

}  // namespace tracewright
