#include "cli/change_commands.hpp"
#include "cli/json_text.hpp"
#include "cli/kept_trials.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/lab_report.hpp"
#include "coaching/labs_not_read.hpp"
#include "coaching/offered_comparison.hpp"
#include "coaching/wears_apart.hpp"
#include "findings/wording.hpp"
#include "render/before_after_json.hpp"
#include "render/labs_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace tracewright {

namespace {

Exit refuse(const Streams& streams, const std::string& sentence, Exit exit = Exit::wrong_usage) {
    streams.err << "tracewright: " << sentence << "\n";
    return exit;
}

// Wears by number as indices. Error: a sentence.
tl::expected<std::vector<std::size_t>, std::string> wears_of_numbers(
    const std::vector<int>& numbers, std::size_t fallback, std::size_t count) {
    if (numbers.empty()) {
        return std::vector<std::size_t>{fallback};
    }
    std::vector<std::size_t> indices;
    for (const int number : numbers) {
        if (number < 1 || static_cast<std::size_t>(number) > count) {
            return tl::make_unexpected(
                fmt::format("found wear {}, expected one of {} wears", number, count));
        }
        indices.push_back(static_cast<std::size_t>(number - 1));
    }
    return indices;
}

}  // namespace

Exit before_after_of(const WhoseChange& whose, const BeforeAfterOptions& options,
                     const Streams& streams) {
    const auto client = client_of_change(whose, "before_after_looked_at", streams);
    if (!client) {
        return client.error();
    }
    const std::size_t count = client->input.wears.size();
    if (count < 2) {
        return refuse(streams, "found one wear, expected two or more to compare",
                      Exit::cannot_answer);
    }
    const BeforeAndAfter last_two =
        last_two_apart(client->input.wears).value_or(BeforeAndAfter{count - 2, count - 1});
    const auto before = wears_of_numbers(options.before, last_two.before, count);
    const auto after = wears_of_numbers(options.after, last_two.after, count);
    if (!before || !after) {
        return refuse(streams, before ? after.error() : before.error());
    }
    if (std::ranges::find_first_of(*before, *after) != before->end()) {
        return refuse(streams, "found a wear on both sides, expected each on one");
    }
    BeforeAfterSettings settings;
    settings.other_kind = options.other_kind;
    settings.worth_hours = options.worth.value_or(settings.worth_hours);
    if (options.sensor_error) {
        settings.sensor_sd = settings.sensor_sd_other_kind = *options.sensor_error / 100;
    }
    if (!(settings.worth_hours > 0) || !(settings.sensor_sd >= 0)) {
        return refuse(streams, "found --worth or --sensor-error out of range, expected above 0");
    }
    const MedicineTimeline medicines = client_medicines(client->facts, client->input.zones);
    const CareInput care{client->facts, client->input.wears, client->input.diary,
                         medicines,     client->input.zones, client->input.as_of};
    const BeforeAfter found =
        offered_comparison(client->input, *before, *after, care, client->licence, settings);
    if (whose.json) {
        streams.out << dumped(json_of_comparison(found, client->input));
    } else {
        print_finding(found.finding, streams.out);
    }
    return client->exit;
}

Exit labs(const WhoseChange& whose, const LabsOptions& options, const Streams& streams) {
    const auto client = client_of_change(whose, "labs_looked_at", streams);
    if (!client) {
        return client.error();
    }
    LabQuestion question{client->input, client->facts};
    for (const auto& [text, date] : {std::pair{&options.diet_started, &question.diet_started},
                                     std::pair{&options.surgery_on, &question.surgery_on}}) {
        if (text->empty()) {
            continue;
        }
        const auto told = date_on_command_line(*text);
        if (!told) {
            return refuse(streams, told.error());
        }
        *date = *told;
    }
    const auto trials = kept_trials_with(*client, streams);
    if (!trials) {
        return trials.error();
    }
    question.trials = *trials;
    const LabReport report = lab_report(question);
    if (whose.json) {
        streams.out << dumped(json_of_labs(report, client->input));
        return client->exit;
    }
    for (const LineRow& row : report.line) {
        streams.out << fmt::format("{}  {:<8}  {}\n", iso_date(row.on), row.kind, row.words);
    }
    if (!report.not_read.empty()) {
        streams.out
            << "\nKept, but not read as A1c (3 to 20 %, 9 to 195 mmol/mol), fasting glucose "
               "or weight:\n";
    }
    for (const LabResult& lab : report.not_read) {
        streams.out << fmt::format("{}  {}\n", lab.on == CivilDate{} ? "no day" : iso_date(lab.on),
                                   lab_words(lab));
    }
    for (const Finding& finding : report.findings) {
        streams.out << "\n";
        print_finding(finding, streams.out);
    }
    return client->exit;
}

}  // namespace tracewright
