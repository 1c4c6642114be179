#include "cli/files_of_client.hpp"

#include "cli/notes_of_file.hpp"
#include "findings/wear_ends.hpp"
#include "intake/workbook_sheets.hpp"
#include "serve/brought_in_file.hpp"
#include "store/diary_document.hpp"
#include "store/meeting.hpp"
#include "trace/held_levels.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <iterator>
#include <ostream>
#include <set>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

struct Gathered {
    FilesOfClient files;
    std::optional<GlucoseUnit> unit;
};

// The wears that a file tells again, in whole or in part. Two sensors may tell the same moments
// too, but not the same levels.
std::vector<KnownWear> repeated_by(const Intake& intake, const std::vector<Wear>& wears) {
    std::vector<KnownWear> repeated;
    const auto tells_again = [](std::span<const Reading> readings, const Wear& wear) {
        const Meeting meeting = meeting_of(readings, wear);
        return meeting.repeated.size() > meeting.contradicted.size() &&
               meeting.repeated.size() >= meeting.between;
    };
    for (std::size_t i = 0; i < wears.size(); ++i) {
        const bool again = tells_again(intake.readings, wears[i]) ||
                           std::ranges::any_of(intake.other_sensors, [&](const auto& sensor) {
                               return tells_again(sensor, wears[i]);
                           });
        if (again) {
            repeated.push_back({static_cast<std::int64_t>(i), wears[i]});
        }
    }
    return repeated;
}

struct Rows {
    std::uint64_t stored = 0;
    std::uint64_t duplicate = 0;
    std::uint64_t conflict = 0;
    std::uint64_t rejected = 0;
};

void tell_rows(const std::string& file, const Rows& rows, std::ostream& told) {
    told << file << ": rows read " << rows.stored + rows.duplicate + rows.conflict + rows.rejected
         << ", stored " << rows.stored << ", duplicate " << rows.duplicate << ", conflict "
         << rows.conflict << ", rejected " << rows.rejected << "\n";
}

void add_readings(Wear& wear, const std::vector<Reading>& fresh) {
    const auto middle = static_cast<std::ptrdiff_t>(wear.readings.size());
    wear.readings.insert(wear.readings.end(), fresh.begin(), fresh.end());
    std::inplace_merge(wear.readings.begin(), wear.readings.begin() + middle, wear.readings.end(),
                       [](const Reading& a, const Reading& b) { return a.at < b.at; });
    wear.interval = interval_found(wear.readings);
    set_intervals(wear.readings);
    wear.start = wear.start_told ? wear.start : wear.readings.front().at;
}

// A further file adds what is new in it, as an import into a practice does.
Rows join(BroughtIn file, std::span<const KnownWear> repeated, std::chrono::seconds new_wear,
          ReviewInput& input) {
    std::set<std::string> known;
    for (const DiaryEntry& entry : input.diary) {
        known.insert(sameness_of(entry));
    }
    ImportPlan plan = import_plan(
        std::move(file), repeated,
        [&](const DiaryEntry& entry) { return !known.insert(sameness_of(entry)).second; },
        WhoseFile::this_client, new_wear);
    for (ImportPlan::PlannedWear& planned : plan.wears) {
        if (planned.joins) {
            add_readings(input.wears[static_cast<std::size_t>(*planned.joins)],
                         planned.wear.readings);
        } else {
            input.wears.push_back(std::move(planned.wear));
        }
    }
    std::vector<HeldLevel> held;
    for (const BroughtIn::Held& one : plan.held) {
        held.push_back({one.at, one.value});
    }
    give_held(input.wears, held);
    std::ranges::move(plan.entries, std::back_inserter(input.diary));
    return {plan.rows_stored, plan.rows_duplicate, plan.rows_conflict, plan.rows_rejected};
}

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
    say_of_whole_file(intake.ledger, told);
    if (intake.count_of_readings() > 0 && !gathered.unit) {
        gathered.unit = intake.unit;
    }
    const auto& by_code = intake.ledger.by_code();
    if (const auto found = by_code.find("value_not_a_number"); found != by_code.end()) {
        gathered.files.input.levels_not_read += found->second;
    }
    const auto new_wear = std::chrono::seconds{std::lround(options.new_wear_after_hours * 3600)};
    ReviewInput& input = gathered.files.input;
    if (!input.wears.empty() || !input.diary.empty()) {
        const std::vector<KnownWear> repeated = repeated_by(intake, input.wears);
        tell_rows(file, join(brought_in_file(intake), repeated, new_wear, input), told);
        return;
    }
    tell_rows(file,
              {intake.ledger.with(Fate::stored), intake.ledger.with(Fate::duplicate),
               intake.ledger.with(Fate::conflict), intake.ledger.with(Fate::rejected)},
              told);
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
    IntakeOptions asking = *intake_with;
    asking.levels_apart = LevelsApart::ask;
    Gathered gathered;
    for (const std::vector<std::string>& named : {options.files, diaries}) {
        for (const std::string& file : files_named(named, streams.err)) {
            for (Intake& intake : bring_in_sheets(file, asking)) {
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
