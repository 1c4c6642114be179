#pragma once

#include "coaching/escalation.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

namespace tracewright {

// Everybody in here is invented.

inline Instant at_minute(double minutes) {
    return Instant{std::chrono::days{20'500}} +
           std::chrono::seconds{static_cast<std::int64_t>(minutes * 60)};
}

/// Data for the ladder, built up by a test.
struct Ladder {
    std::vector<Wear> wears;
    Diary diary;
    ZoneHistory clock{Zone::fixed(std::chrono::seconds{0})};
    MedicineTimeline medicines;
    std::optional<Instant> change_agreed;
    std::vector<LabResult> labs;

    /// A wear at `level` mg/dL each five minutes from minute `from` on.
    Wear& wear(double from, int count, int level = 120, int interval_minutes = 5) {
        Wear& made = wears.emplace_back();
        made.label = "wear " + std::to_string(wears.size());
        made.start = at_minute(from);
        made.interval = std::chrono::minutes{interval_minutes};
        for (int i = 0; i < count; ++i) {
            made.readings.emplace_back(at_minute(from + i * interval_minutes),
                                       Glucose{level * 100, GlucoseUnit::mg_per_dl}, made.interval);
        }
        return made;
    }
    static void set(Wear& wear, std::size_t from, std::size_t count, int level,
                    Limit limit = Limit::none) {
        for (std::size_t i = from; i < from + count; ++i) {
            wear.readings[i] =
                Reading(wear.readings[i].at, Glucose{level * 100, GlucoseUnit::mg_per_dl},
                        wear.interval, limit);
        }
    }
    void takes(const char* written) {
        auto uses = medicines.uses();
        uses.push_back({medicine_text(written), at_minute(-1e6), {}});
        medicines = MedicineTimeline(std::move(uses), at_minute(-1e6));
    }
    DiaryEntry& entry(DiaryKind kind, double minute, const std::string& text = {}) {
        DiaryEntry made;
        made.kind = kind;
        made.at = at_minute(minute);
        made.text = text;
        return diary.emplace_back(made);
    }
    DiaryEntry& prick(double minute, int mg_per_dl) {
        DiaryEntry& made = entry(DiaryKind::finger_prick, minute);
        made.glucose = Glucose{mg_per_dl * 100, GlucoseUnit::mg_per_dl};
        return made;
    }
    std::vector<Escalation> found() const {
        return escalations(
            {wears, diary, medicines, clock, GlucoseUnit::mg_per_dl, change_agreed, labs});
    }
    std::vector<Escalation> found(const std::string& kind) const {
        auto all = found();
        std::erase_if(all, [&](const Escalation& e) { return !e.event.starts_with(kind + "@"); });
        return all;
    }
};

}  // namespace tracewright
