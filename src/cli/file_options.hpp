#pragma once

#include "findings/first_review.hpp"
#include "intake/bring_in.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace tracewright {

/// The options that every command on files shares, as typed.
struct FileOptions {
    std::vector<std::string> files;
    std::string zone;
    std::vector<std::string> travel;
    std::string unit;
    std::string show_unit;
    std::string date_order;
    std::string measured_by;
    std::string decimal;
    std::string delimiter;
    std::string encoding;
    std::string sheet;
    std::string time_column;
    std::string glucose_column;
    std::string person;
    std::string as_of;
    std::optional<std::uint32_t> header_line;

    std::string from;
    std::string to;
    std::string goals = "adults";
    int warm_up_minutes = 60;
    double new_wear_after_hours = 12;
    int prefer_wear = 0;
    std::uint64_t seed = 1;
};

/// How files are read.
void add_intake_options(CLI::App& command, FileOptions& options);
/// What is made of what was read.
void add_trace_options(CLI::App& command, FileOptions& options);

/// The options as the intake takes them. Error: a sentence on what was found and expected.
tl::expected<IntakeOptions, std::string> intake_options(const FileOptions& options, Instant now);

/// Zones from --zone and --travel.
tl::expected<ZoneHistory, std::string> zones_of(const FileOptions& options);

/// A time on the command line: with an offset, or read by `zones`.
tl::expected<Instant, std::string> time_on_command_line(const std::string& text,
                                                        const ZoneHistory& zones);

/// --from and --to as a window; empty if neither is given. The end of a bare date is its whole day.
tl::expected<std::optional<Interval>, std::string> window_of(const FileOptions& options,
                                                             const ZoneHistory& zones);

/// The files named, folders replaced by the files in them (sorted, hidden ones left out). A folder
/// within one is not gone into: that is told on `err`.
std::vector<std::string> files_named(const std::vector<std::string>& arguments, std::ostream& err);

/// "FOLDER: found no file, expected some to read": where `files_named` gave none.
std::string no_file_in(const std::vector<std::string>& arguments);

Goals goals_of(const FileOptions& options);
GlucoseUnit unit_shown(const FileOptions& options, GlucoseUnit reported);

}  // namespace tracewright
