#include "measures/level_runs.hpp"

#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr seconds shortest_silence = std::chrono::minutes{20};

}  // namespace

LevelClass class_of(const Reading& reading) {
    constexpr std::array by_band{LevelClass::very_low, LevelClass::low, LevelClass::in_range,
                                 LevelClass::high, LevelClass::very_high};
    const Band band = band_of(reading);
    const std::int32_t seventy = reading.unit() == GlucoseUnit::mg_per_dl ? 7000 : 390;
    return band == Band::in_range && reading.hundredths() == seventy
               ? LevelClass::at_seventy
               : by_band[static_cast<std::size_t>(band)];
}

bool silent_between(const Reading& before, const Reading& reading) {
    return reading.at - before.at >= std::max(3 * before.interval(), shortest_silence);
}

bool more_extreme(const Reading& a, const Reading& b, bool lower) {
    const Limit limit = lower ? Limit::below : Limit::above;
    const bool a_beyond = a.limit() == limit;
    const bool b_beyond = b.limit() == limit;
    if (a_beyond != b_beyond) {
        return a_beyond;
    }
    if (a.unit() == b.unit()) {
        return lower ? a.hundredths() < b.hundredths() : a.hundredths() > b.hundredths();
    }
    const double level_a = a.value().in(GlucoseUnit::mg_per_dl);
    const double level_b = b.value().in(GlucoseUnit::mg_per_dl);
    return lower ? level_a < level_b : level_a > level_b;
}

std::vector<LevelRun> level_runs(const TraceView& view) {
    std::vector<LevelRun> runs;
    const Reading* before = nullptr;
    LevelRun run;
    const auto close = [&] {
        if (run.readings > 0) {
            runs.push_back(run);
        }
    };
    for_each_standing(view, [&](const Reading& reading, seconds stood) {
        const LevelClass level = class_of(reading);
        const bool silence = before == nullptr || silent_between(*before, reading);
        if (silence || level != run.level) {
            close();
            run = {level, silence, 0, reading.at, {}, seconds{0}, reading};
        } else if (level != LevelClass::in_range && level != LevelClass::at_seventy &&
                   more_extreme(reading, run.extreme, level < LevelClass::in_range)) {
            run.extreme = reading;
        }
        ++run.readings;
        run.to = reading.at + stood;
        run.time += stood;
        before = &reading;
    });
    close();
    return runs;
}

}  // namespace tracewright
