#include "findings/hours_gained.hpp"

#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace tracewright {

namespace {

Reading shifted(const Reading& reading, double mg_per_dl) {
    const double by = converted(mg_per_dl, GlucoseUnit::mg_per_dl, reading.unit());
    const Glucose level{reading.hundredths() + rounded_hundredths(by), reading.unit()};
    return {reading.at, level, reading.interval()};
}

double in_range(const Reading& reading) {
    return band_of(reading) == Band::in_range ? 1 : 0;
}

// Where one shift holds alone: between any two neighbouring ends of stretches the farthest of those
// that cover it.
std::vector<GlucoseShift> without_overlap(std::span<const GlucoseShift> shifts) {
    std::vector<Instant> ends;
    for (const GlucoseShift& shift : shifts) {
        ends.push_back(shift.stretch.from);
        ends.push_back(shift.stretch.to);
    }
    std::ranges::sort(ends);
    ends.erase(std::unique(ends.begin(), ends.end()), ends.end());
    std::vector<GlucoseShift> alone;
    for (std::size_t i = 1; i < ends.size(); ++i) {
        const GlucoseShift* farthest = nullptr;
        for (const GlucoseShift& shift : shifts) {
            const bool covers = shift.stretch.from <= ends[i - 1] && ends[i] <= shift.stretch.to;
            if (covers && (farthest == nullptr ||
                           std::abs(shift.mg_per_dl) > std::abs(farthest->mg_per_dl))) {
                farthest = &shift;
            }
        }
        if (farthest != nullptr) {
            alone.push_back({{ends[i - 1], ends[i]}, farthest->mg_per_dl});
        }
    }
    return alone;
}

}  // namespace

double hours_gained(const TraceView& view, std::span<const GlucoseShift> shifts) {
    const auto seen = static_cast<double>(sensed(view).count());
    if (seen <= 0) {
        return 0;
    }
    double gained = 0;
    for (const GlucoseShift& shift : without_overlap(shifts)) {
        for_each_standing(
            cut(view, intersection(shift.stretch, view.window())),
            [&](const Reading& reading, std::chrono::seconds stood) {
                if (!reading.censored()) {
                    gained += static_cast<double>(stood.count()) *
                              (in_range(shifted(reading, shift.mg_per_dl)) - in_range(reading));
                }
            });
    }
    return 24 * gained / seen;
}

}  // namespace tracewright
