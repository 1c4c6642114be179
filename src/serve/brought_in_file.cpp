#include "serve/brought_in_file.hpp"

#include <algorithm>
#include <filesystem>

namespace tracewright {

BroughtIn brought_in_file(Intake& intake) {
    BroughtIn file;
    file.source = std::filesystem::path(intake.file).filename().string();
    file.readings = std::move(intake.readings);
    file.other_sensors = std::move(intake.other_sensors);
    file.diary = std::move(intake.diary);
    for (DiaryEntry& entry : file.diary) {
        entry.source = file.source;
    }
    for (const HeldReading& held : intake.held) {
        file.held.push_back({held.at, held.value, held.line});
    }
    file.rows_stored = intake.ledger.with(Fate::stored);
    file.rows_duplicate = intake.ledger.with(Fate::duplicate);
    file.rows_conflict = intake.ledger.with(Fate::conflict);
    file.rows_rejected = intake.ledger.with(Fate::rejected);
    return file;
}

BroughtIn brought_in_message(std::span<const ProposedEntry> message, const std::string& source) {
    BroughtIn file;
    file.source = source;
    for (const ProposedEntry& one : message) {
        DiaryEntry entry = one.entry;
        entry.source = source;
        file.diary.push_back(std::move(entry));
    }
    std::ranges::stable_sort(file.diary, {}, &DiaryEntry::at);
    file.rows_stored = file.diary.size();
    return file;
}

}  // namespace tracewright
