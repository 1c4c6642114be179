#include "cli/file_options.hpp"

#include "intake/clock_text.hpp"
#include "intake/plain_text.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <filesystem>
#include <map>
#include <ostream>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

const std::map<std::string, std::string> units = {
    {"mg/dL", "mg/dL"}, {"mg/dl", "mg/dL"}, {"mmol/L", "mmol/L"}, {"mmol/l", "mmol/L"}};

GlucoseUnit unit_of(const std::string& text) {
    return text == "mg/dL" ? GlucoseUnit::mg_per_dl : GlucoseUnit::mmol_per_l;
}

char delimiter_of(const std::string& text) {
    return text == "tab" || text == "TAB" ? '\t' : text.front();
}

std::string one_character_or_tab(const std::string& text) {
    return text.size() == 1 || text == "tab" || text == "TAB"
               ? ""
               : "found '" + text + "', expected one character or tab";
}

std::string found_time(const std::string& text) {
    return "found '" + text + "', expected a time such as 2026-03-02T08:15 or 2026-03-02";
}

// "2026-05-10T12:00=Europe/Berlin": from that time (on the clock before) the zone holds.
tl::expected<void, std::string> travel(ZoneHistory& zones, const std::string& text) {
    const auto equals = text.find('=');
    if (equals == std::string::npos) {
        return tl::make_unexpected("found '" + text + "', expected TIME=ZONE for --travel");
    }
    const auto at = time_on_command_line(text.substr(0, equals), zones);
    if (!at) {
        return tl::make_unexpected(at.error());
    }
    const auto zone = Zone::named(text.substr(equals + 1));
    if (!zone) {
        return tl::make_unexpected(zone.error());
    }
    try {
        zones.change(*at, *zone);
    } catch (const std::invalid_argument&) {
        return tl::make_unexpected(
            "found --travel out of order, expected one time after the other");
    }
    return {};
}

}  // namespace

void add_intake_options(CLI::App& command, FileOptions& o) {
    command.add_option("FILE", o.files, "Files or folders: delimited text, .xlsx or .xls")
        ->required();
    command.add_option("--zone", o.zone,
                       "The client's time zone by IANA name, such as Europe/Berlin");
    command
        .add_option("--travel", o.travel,
                    "TIME=ZONE: from then on the clock runs by ZONE (may be repeated)")
        ->allow_extra_args(false);
    command.add_option("--unit", o.unit, "The files' unit of glucose: mg/dL or mmol/L")
        ->check(CLI::IsMember(units));
    command
        .add_option("--date-order", o.date_order,
                    "The files' order of dates: day, month or year first")
        ->check(CLI::IsMember({"day", "month", "year"}));
    command.add_option("--decimal", o.decimal, "The files' decimal mark: point or comma")
        ->check(CLI::IsMember({"point", "comma"}));
    command.add_option("--delimiter", o.delimiter, "What parts the columns: one character, or tab")
        ->check(one_character_or_tab, "");
    command.add_option("--encoding", o.encoding,
                       "How the text is encoded, such as UTF-8 or Windows-1252");
    command.add_option("--sheet", o.sheet,
                       "The one sheet of a workbook to read, by name or number");
    command.add_option("--header-line", o.header_line, "The line that bears the columns' titles");
    command.add_option("--time-column", o.time_column, "The column of times, by title or number");
    command.add_option("--glucose-column", o.glucose_column,
                       "The column of glucose, by title or number");
    command
        .add_option("--measured-by", o.measured_by,
                    "Whose the levels are, where they lie far apart: a sensor's or a meter's")
        ->check(CLI::IsMember({"sensor", "meter"}));
    command.add_option("--person", o.person, "Whose rows to take from a file of several people");
    command.add_option("--as-of", o.as_of, "What time it is: times after it are in the future");
}

void add_trace_options(CLI::App& command, FileOptions& o) {
    command
        .add_option("--show-unit", o.show_unit,
                    "The unit to show: mg/dL or mmol/L (else the file's)")
        ->check(CLI::IsMember(units));
    command.add_option(
        "--from", o.from,
        "First moment or day of the window, told with --to (else the first reading)");
    command.add_option(
        "--to", o.to, "Last moment or day of the window, told with --from (else the last reading)");
    command
        .add_option("--warm-up", o.warm_up_minutes, "Minutes at a wear's start to mark as warm-up")
        ->check(CLI::Range(0, 1440))
        ->capture_default_str();
    command
        .add_option("--new-wear-after", o.new_wear_after_hours,
                    "Hours of silence after which another wear is taken to begin")
        ->check(CLI::Range(0.5, 720.0))
        ->capture_default_str();
    command
        .add_option("--prefer-wear", o.prefer_wear,
                    "Of two sensors at once count this wear (1, 2, ...)")
        ->check(CLI::Range(1, 1000));
    command.add_option("--seed", o.seed, "Seed of what is drawn by lot")->capture_default_str();
}

tl::expected<ZoneHistory, std::string> zones_of(const FileOptions& options) {
    Zone home = Zone::floating();
    if (!options.zone.empty()) {
        const auto zone = Zone::named(options.zone);
        if (!zone) {
            return tl::make_unexpected(zone.error());
        }
        home = *zone;
    }
    ZoneHistory zones(home);
    for (const std::string& text : options.travel) {
        if (const auto added = travel(zones, text); !added) {
            return tl::make_unexpected(added.error());
        }
    }
    return zones;
}

tl::expected<Instant, std::string> time_on_command_line(const std::string& text,
                                                        const ZoneHistory& zones) {
    const auto time = written_time(plain(text));
    if (!time || (!time->instant && !(time->has_date && time->date(DateOrder::year_first)))) {
        return tl::make_unexpected(found_time(text));
    }
    if (time->instant) {
        return *time->instant;
    }
    const WallTime wall = *time->date(DateOrder::year_first) + time->clock;
    return time->offset ? Instant{wall.time_since_epoch()} - *time->offset
                        : zones.resolve(wall).first;
}

tl::expected<std::optional<Interval>, std::string> window_of(const FileOptions& options,
                                                             const ZoneHistory& zones) {
    if (options.from.empty() && options.to.empty()) {
        return std::optional<Interval>{};
    }
    if (options.from.empty() || options.to.empty()) {
        return tl::make_unexpected(
            std::string("found one of --from and --to, expected both or neither"));
    }
    const auto from = time_on_command_line(options.from, zones);
    if (!from) {
        return tl::make_unexpected(from.error());
    }
    auto to = time_on_command_line(options.to, zones);
    if (!to) {
        return tl::make_unexpected(to.error());
    }
    const auto written = written_time(plain(options.to));
    if (written && !written->has_clock) {  // a bare date ends with its day
        to = zones.day_of(*written->date(DateOrder::year_first)).to;
    }
    if (*from >= *to) {
        return tl::make_unexpected(std::string("found a window that ends before it begins"));
    }
    return std::optional{Interval{*from, *to}};
}

tl::expected<IntakeOptions, std::string> intake_options(const FileOptions& o, Instant now) {
    IntakeOptions result;
    const auto zones = zones_of(o);
    if (!zones) {
        return tl::make_unexpected(zones.error());
    }
    result.zones = *zones;
    result.as_of = now;
    if (!o.as_of.empty()) {
        const auto at = time_on_command_line(o.as_of, *zones);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        result.as_of = *at;
    }
    const auto set = [](auto& target, const std::string& text) {
        if (!text.empty()) {
            target = text;
        }
    };
    set(result.source.encoding, o.encoding);
    set(result.source.sheet, o.sheet);
    set(result.time_column, o.time_column);
    set(result.glucose_column, o.glucose_column);
    set(result.person, o.person);
    result.header_line = o.header_line;
    if (!o.delimiter.empty()) {
        result.source.delimiter = delimiter_of(o.delimiter);
    }
    if (!o.unit.empty()) {
        result.unit = unit_of(units.at(o.unit));
    }
    if (!o.decimal.empty()) {
        result.decimal_mark = o.decimal == "comma" ? ',' : '.';
    }
    if (!o.measured_by.empty()) {
        result.measured_by = o.measured_by == "meter" ? MeasuredBy::meter : MeasuredBy::sensor;
    }
    if (!o.date_order.empty()) {
        result.date_order = o.date_order == "day"     ? DateOrder::day_first
                            : o.date_order == "month" ? DateOrder::month_first
                                                      : DateOrder::year_first;
    }
    return result;
}

std::vector<std::string> files_named(const std::vector<std::string>& arguments, std::ostream& err) {
    std::vector<std::string> files;
    for (const std::string& argument : arguments) {
        std::error_code error;
        if (!fs::is_directory(argument, error)) {
            files.push_back(argument);
            continue;
        }
        std::vector<std::string> inside;
        for (const auto& entry : fs::directory_iterator(argument, error)) {
            if (entry.path().filename().string().starts_with('.')) {
                continue;
            }
            if (entry.is_regular_file(error)) {
                inside.push_back(entry.path().string());
            } else if (entry.is_directory(error)) {
                err << entry.path().string()
                    << ": a folder within a folder, not read: name it to read it\n";
            }
        }
        std::sort(inside.begin(), inside.end());
        files.insert(files.end(), inside.begin(), inside.end());
    }
    return files;
}

std::string no_file_in(const std::vector<std::string>& arguments) {
    std::string folders;
    for (const std::string& argument : arguments) {
        folders += (folders.empty() ? "" : ", ") + argument;
    }
    return folders + ": found no file, expected some to read";
}

Goals goals_of(const FileOptions& options) {
    return consensus_goals(options.goals == "older"       ? GoalKind::older_or_high_risk
                           : options.goals == "pregnancy" ? GoalKind::pregnancy
                                                          : GoalKind::adults);
}

GlucoseUnit unit_shown(const FileOptions& options, GlucoseUnit reported) {
    return options.show_unit.empty() ? reported : unit_of(units.at(options.show_unit));
}

}  // namespace tracewright
