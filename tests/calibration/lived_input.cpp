#include "calibration/lived_input.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace tracewright {

ReviewInput input_of(const ClientLife& life) {
    ReviewInput input;
    input.zones = life.zones;
    for (const LivedWear& lived : life.wears) {
        Wear wear;
        wear.start = lived.worn.from;
        wear.interval = lived.plan.kind.interval;
        for (const SensorReading& reading : lived.readings) {
            wear.readings.emplace_back(
                reading.at, Glucose{rounded_hundredths(reading.mg_per_dl), GlucoseUnit::mg_per_dl},
                wear.interval);
        }
        std::stable_sort(wear.readings.begin(), wear.readings.end(),
                         [](const Reading& a, const Reading& b) { return a.at < b.at; });
        const auto last =
            std::unique(wear.readings.begin(), wear.readings.end(),
                        [](const Reading& a, const Reading& b) { return a.at == b.at; });
        wear.readings.erase(last, wear.readings.end());
        input.wears.push_back(std::move(wear));
        for (const DiaryLine& line : lived.diary) {
            DiaryEntry entry;
            entry.at = life.zones.resolve(line.at).first;
            entry.written = line.at;
            if (!line.eaten.empty()) {
                entry.kind = DiaryKind::meal;
                entry.text = line.eaten;
                input.diary.push_back(entry);
            }
            if (!line.slept.empty()) {
                std::string hours = line.slept;
                std::replace(hours.begin(), hours.end(), ',', '.');
                entry.kind = DiaryKind::sleep;
                entry.text.clear();
                entry.number = std::atof(hours.c_str());
                entry.number_unit = "h";
                entry.until = entry.at;
                entry.at -= std::chrono::seconds{std::lround(*entry.number * 3600)};
                entry.time_uncertain = true;
                input.diary.push_back(entry);
            }
        }
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    input.as_of = life.zones.resolve(story_today).first;
    return input;
}

}  // namespace tracewright
