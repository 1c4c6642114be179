#include "findings/hours_gained.hpp"

#include "measures/time_in_bands.hpp"

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

}  // namespace

double hours_gained(const TraceView& view, std::span<const GlucoseShift> shifts) {
    const auto seen = static_cast<double>(sensed(view).count());
    if (seen <= 0) {
        return 0;
    }
    double gained = 0;
    for (const GlucoseShift& shift : shifts) {
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
