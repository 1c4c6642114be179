#include "measures/level_counts.hpp"

#include "measures/level_terms.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr GlucoseUnit mg = GlucoseUnit::mg_per_dl;

}  // namespace

std::optional<LevelCounts> LevelCounts::of(std::span<const DayOfTrace> days) {
    LevelCounts counts;
    const LevelTable& mg_levels = LevelTable::of(mg);
    const LevelTable& mmol_levels = LevelTable::of(GlucoseUnit::mmol_per_l);
    counts.mg_.resize(mg_levels.size());
    counts.mmol_.resize(mmol_levels.size());
    const Reading* open = nullptr;  // whose time may go on after midnight
    seconds time{0};
    seconds first{0};
    bool alike = true;
    const auto close = [&] {
        if (open == nullptr) {
            return;
        }
        first = counts.readings_ == 0 ? time : first;
        const bool in_mg = open->unit() == mg;
        const std::size_t place = (in_mg ? mg_levels : mmol_levels).place(open->hundredths());
        alike = alike && time == first && place != LevelTable::none;
        if (alike) {
            ++(in_mg ? counts.mg_ : counts.mmol_)[place];
            ++counts.readings_;
        }
    };
    for (const DayOfTrace& day : days) {
        for_each_standing(day.view, [&](const Reading& reading, seconds stood) {
            if (open != nullptr && open->at == reading.at) {
                time += stood;
                return;
            }
            close();
            open = &reading;
            time = stood;
        });
        if (!alike) {
            return std::nullopt;
        }
    }
    close();
    return alike && counts.readings_ > 0 ? std::optional{std::move(counts)} : std::nullopt;
}

double LevelCounts::median(const std::function<double(Glucose)>& value) const {
    std::vector<std::pair<double, std::uint32_t>> present;
    for (const GlucoseUnit unit : {mg, GlucoseUnit::mmol_per_l}) {
        const LevelTable& levels = LevelTable::of(unit);
        const auto& counts = unit == mg ? mg_ : mmol_;
        for (std::size_t place = 0; place < counts.size(); ++place) {
            if (counts[place] > 0) {
                present.emplace_back(value(levels.level(place)), counts[place]);
            }
        }
    }
    if (!std::is_sorted(present.begin(), present.end())) {
        std::sort(present.begin(), present.end());
    }
    // The reading at a 0-based rank.
    const auto ranked = [&](std::uint32_t rank) {
        std::uint32_t before = 0;
        for (const auto& [level, times] : present) {
            before += times;
            if (rank < before) {
                return level;
            }
        }
        return present.back().first;
    };
    const double middle = ranked(readings_ / 2);
    return readings_ % 2 == 1 ? middle : std::midpoint(ranked(readings_ / 2 - 1), middle);
}

}  // namespace tracewright
