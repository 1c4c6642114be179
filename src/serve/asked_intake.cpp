#include "serve/asked_intake.hpp"

#include "coaching/client_clock.hpp"

#include <charconv>
#include <filesystem>

namespace tracewright {

namespace {

constexpr std::size_t longest_name = 200;

tl::unexpected<Reply> unfit(const std::string& detail) {
    return tl::make_unexpected(
        problem(422, "unfit_answer", "The file can't be read by that", detail));
}

// The answer to one question; false where it is none.
bool take(const std::string& name, const std::string& value, IntakeOptions& options,
          AskedIntake& asked) {
    if (name == "unit") {
        options.unit = value == "mg/dL" ? GlucoseUnit::mg_per_dl : GlucoseUnit::mmol_per_l;
        return value == "mg/dL" || value == "mmol/L";
    }
    if (name == "date_order") {
        options.date_order = value == "day"     ? DateOrder::day_first
                             : value == "month" ? DateOrder::month_first
                                                : DateOrder::year_first;
        return value == "day" || value == "month" || value == "year";
    }
    if (name == "measured_by") {
        options.measured_by = value == "meter" ? MeasuredBy::meter : MeasuredBy::sensor;
        return value == "meter" || value == "sensor";
    }
    if (name == "decimal") {
        options.decimal_mark = value == "comma" ? ',' : '.';
        return value == "comma" || value == "point";
    }
    if (name == "header_line") {
        std::uint32_t line = 0;
        const char* end = value.data() + value.size();
        const auto read = std::from_chars(value.data(), end, line);
        options.header_line = line;
        return read.ec == std::errc{} && read.ptr == end && line > 0;
    }
    if (name == "whose") {
        asked.whose = WhoseFile::this_client;
        return value == "this_client";
    }
    if (name == "person") {
        options.person = value;
    } else if (name == "time_column") {
        options.time_column = value;
    } else if (name == "glucose_column") {
        options.glucose_column = value;
    } else if (name == "sheet") {
        options.source.sheet = value;
    } else if (name == "encoding") {
        options.source.encoding = value;
    } else {
        return name == "name";
    }
    return !value.empty();
}

}  // namespace

tl::expected<AskedIntake, Reply> asked_intake(const Request& request, const RequestTarget& target,
                                              const ClientFacts& facts, Instant now) {
    if (request.content_type != "application/octet-stream") {
        return tl::make_unexpected(
            problem(415, "not_a_file", "The body can't be used",
                    "found another type of body, expected application/octet-stream"));
    }
    const std::string name =
        std::filesystem::path(target.asked("name").value_or("")).filename().string();
    if (name.empty() || name.size() > longest_name) {
        return unfit("found no name of a file of up to 200 bytes, expected ?name=");
    }
    IntakeOptions options;
    AskedIntake asked;
    for (const auto& [key, value] : target.query) {
        if (!take(key, value, options, asked)) {
            return unfit("found an answer that is not known here, expected one that was offered");
        }
    }
    options.zones = client_clock(facts);
    options.without_zone = WithoutZone::ask;
    options.levels_apart = LevelsApart::ask;
    options.as_of = now;
    asked.intake = bring_in_bytes(request.body, name, options);
    if (asked.intake.error && asked.intake.error->kind != FileErrorKind::needs_answer) {
        return tl::make_unexpected(problem_of(*asked.intake.error));
    }
    return asked;
}

}  // namespace tracewright
