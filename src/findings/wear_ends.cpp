#include "findings/wear_ends.hpp"

namespace tracewright {

void set_ends_told(std::span<Wear> wears, std::span<const DiaryEntry> diary) {
    for (const DiaryEntry& entry : diary) {
        const bool fell = entry.text.find("fell off") != std::string::npos;
        const bool failed = entry.text.find("failed") != std::string::npos;
        if ((entry.kind != DiaryKind::sensor && entry.kind != DiaryKind::note) ||
            !(fell || failed)) {
            continue;
        }
        for (Wear& wear : wears) {
            const bool near = !wear.empty() &&
                              entry.at >= wear.readings.back().at - std::chrono::hours{1} &&
                              entry.at <= wear.readings.back().at + std::chrono::hours{24};
            if (near && wear.end == WearEnd::not_told) {
                wear.end = fell ? WearEnd::fell_off : WearEnd::sensor_failed;
            }
        }
    }
}

}  // namespace tracewright
