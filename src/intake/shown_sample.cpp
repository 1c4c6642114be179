#include "intake/shown_sample.hpp"

#include "intake/wall_text.hpp"

#include <fmt/format.h>

#include <chrono>
#include <string>
#include <vector>

namespace tracewright {

namespace {

// When an entry began that has a time of its own, with its date where that is another day's.
std::string own_time_words(const ReadRow& row, const RowEntry& entry) {
    if (!entry.begin) {
        return "";
    }
    const std::string text = wall_text(entry.begin->wall);
    const bool same_day = row.date == std::chrono::floor<std::chrono::days>(entry.begin->wall);
    return " " + (same_day ? text.substr(text.find(' ') + 1) : text);
}

}  // namespace

void keep_sample(Intake& intake, const ReadRow& row) {
    if (intake.sample.size() >= rows_shown || row.state != ReadRow::State::data) {
        return;
    }
    std::vector<std::string> cells{fmt::format("line {}", row.line)};
    cells.push_back(row.instant ? wall_text(WallTime{row.instant->time_since_epoch()}) + " UTC"
                                : wall_text(row.wall));
    if (row.glucose) {
        const double level = static_cast<double>(row.glucose->hundredths) / 100;
        cells.push_back(row.glucose->limit == Limit::below ? "LOW"
                        : row.glucose->limit == Limit::above
                            ? "HIGH"
                            : fmt::format("{} {}", level, name_of(row.glucose->unit)));
    }
    for (const RowEntry& entry : row.entries) {
        cells.push_back(std::string(name_of(entry.what.kind)) + own_time_words(row, entry) +
                        (entry.what.text.empty() ? "" : ": " + entry.what.text));
    }
    intake.sample.push_back(std::move(cells));
}

}  // namespace tracewright
