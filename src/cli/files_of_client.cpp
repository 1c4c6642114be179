#include "cli/files_of_client.hpp"

#include "cli/notes_of_file.hpp"
#include "findings/wear_ends.hpp"
#include "intake/workbook_sheets.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <ostream>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

struct Gathered {
    FilesOfClient files;
    std::optional<GlucoseUnit> unit;
};

void take(Gathered& gathered, Intake intake, const FileOptions& options, const Streams& streams,
          std::ostream& told) {
    const std::string& file = intake.file;
    Exit& exit = gathered.files.exit;
    if (intake.error) {
        streams.err << intake.error->sentence() << "\n";
        const bool asks = intake.error->kind == FileErrorKind::needs_answer;
        exit = asks && exit == Exit::done ? Exit::cannot_answer : asks ? exit : Exit::bad_input;
        return;
    }
    if (intake.in_utc) {
        streams.err << file
                    << ": found times in UTC and no --zone, expected the client's time zone: which "
                       "hours were night can't be told without\n";
        exit = exit == Exit::done ? Exit::cannot_answer : exit;
        return;
    }
    told << file << ": rows read " << intake.ledger.read() << ", stored "
         << intake.ledger.with(Fate::stored) << ", duplicate "
         << intake.ledger.with(Fate::duplicate) << ", conflict "
         << intake.ledger.with(Fate::conflict) << ", rejected "
         << intake.ledger.with(Fate::rejected) << "\n";
    say_of_whole_file(intake.ledger, told);
    if (intake.count_of_readings() > 0 && !gathered.unit) {
        gathered.unit = intake.unit;
    }
    const auto new_wear = std::chrono::seconds{std::lround(options.new_wear_after_hours * 3600)};
    ReviewInput& input = gathered.files.input;
    for (Wear& wear : wears_in(intake, fs::path(file).filename().string(), new_wear)) {
        input.wears.push_back(std::move(wear));
    }
    input.diary.insert(input.diary.end(), intake.diary.begin(), intake.diary.end());
}

// Wears and entries in order of time; ends of wears that the diary tells.
void put_in_order(ReviewInput& input) {
    std::stable_sort(input.wears.begin(), input.wears.end(),
                     [](const Wear& a, const Wear& b) { return a.start < b.start; });
    for (std::size_t i = 0; i < input.wears.size(); ++i) {
        input.wears[i].label = "wear " + std::to_string(i + 1);
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    set_ends_told(input.wears, input.diary);
}

}  // namespace

tl::expected<FilesOfClient, Exit> files_of_client(const FileOptions& options,
                                                  const std::vector<std::string>& diaries,
                                                  const Streams& streams, std::ostream& told) {
    const auto intake_with = intake_options(options, streams.now);
    if (!intake_with) {
        streams.err << "tracewright: " << intake_with.error() << "\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    const auto window = window_of(options, intake_with->zones);
    if (!window) {
        streams.err << "tracewright: " << window.error() << "\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    Gathered gathered;
    for (const std::vector<std::string>& named : {options.files, diaries}) {
        for (const std::string& file : files_named(named)) {
            for (Intake& intake : bring_in_sheets(file, *intake_with)) {
                take(gathered, std::move(intake), options, streams, told);
            }
        }
    }
    ReviewInput& input = gathered.files.input;
    put_in_order(input);
    if (input.wears.empty()) {
        const Exit exit = gathered.files.exit;
        if (exit != Exit::done) {
            return tl::make_unexpected(exit);  // why was said of the file
        }
        streams.err
            << "tracewright: found no glucose reading in these files, expected at least one\n";
        return tl::make_unexpected(Exit::cannot_answer);
    }
    input.zones = intake_with->zones;
    input.unit = unit_shown(options, gathered.unit.value_or(GlucoseUnit::mg_per_dl));
    input.window = *window;
    input.goals = goals_of(options);
    input.suspect.warm_up = std::chrono::minutes{options.warm_up_minutes};
    input.as_of = *intake_with->as_of;
    input.seed = options.seed;
    if (options.prefer_wear > 0) {
        if (static_cast<std::size_t>(options.prefer_wear) > input.wears.size()) {
            streams.err << "tracewright: found --prefer-wear " << options.prefer_wear
                        << ", expected one of " << input.wears.size() << " wears\n";
            return tl::make_unexpected(Exit::wrong_usage);
        }
        input.prefer_wear = static_cast<std::size_t>(options.prefer_wear - 1);
    }
    return std::move(gathered.files);
}

}  // namespace tracewright
