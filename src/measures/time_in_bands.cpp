#include "measures/time_in_bands.hpp"

#include <numeric>

namespace tracewright {

const char* name_of(Band band) {
    switch (band) {
        case Band::very_low:
            return "very_low";
        case Band::low:
            return "low";
        case Band::in_range:
            return "in_range";
        case Band::high:
            return "high";
        case Band::very_high:
            return "very_high";
    }
    return "";
}

std::chrono::seconds TimeInBands::sensed() const {
    return std::accumulate(seconds_in.begin(), seconds_in.end(), std::chrono::seconds{0});
}

std::optional<double> TimeInBands::share(Band band) const {
    const auto all = sensed().count();
    return all == 0
               ? std::nullopt
               : std::optional{static_cast<double>(in(band).count()) / static_cast<double>(all)};
}

std::optional<double> TimeInBands::tight_share() const {
    const auto all = sensed().count();
    return all == 0 ? std::nullopt
                    : std::optional{static_cast<double>(tight.count()) / static_cast<double>(all)};
}

TimeInBands time_in_bands(const TraceView& view) {
    TimeInBands time;
    for_each_standing(view, [&](const Reading& reading, std::chrono::seconds stood) {
        time.seconds_in[static_cast<std::size_t>(band_of(reading))] += stood;
        time.tight += in_tight_range(reading) ? stood : std::chrono::seconds{0};
    });
    return time;
}

}  // namespace tracewright
