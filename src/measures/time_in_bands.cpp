#include "measures/time_in_bands.hpp"

#include <numeric>

namespace tracewright {

namespace {

// The lowest hundredths of each band above the first, by unit; in range and high end inclusively.
struct Edges {
    std::int32_t low, in_range, tight_end, in_range_end, high_end;
};

constexpr Edges mg_edges{5400, 7000, 14000, 18000, 25000};
constexpr Edges mmol_edges{300, 390, 780, 1000, 1390};

const Edges& edges_of(GlucoseUnit unit) {
    return unit == GlucoseUnit::mg_per_dl ? mg_edges : mmol_edges;
}

}  // namespace

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

Band band_of(const Reading& reading) {
    if (reading.censored()) {
        return reading.limit() == Limit::below ? Band::very_low : Band::very_high;
    }
    const Edges& edge = edges_of(reading.unit());
    const std::int32_t g = reading.hundredths();
    const int above =
        (g >= edge.low) + (g >= edge.in_range) + (g > edge.in_range_end) + (g > edge.high_end);
    return static_cast<Band>(above);
}

bool in_tight_range(const Reading& reading) {
    const Edges& edge = edges_of(reading.unit());
    return !reading.censored() && reading.hundredths() >= edge.in_range &&
           reading.hundredths() <= edge.tight_end;
}

bool in_pregnancy_range(const Reading& reading) {
    const std::int32_t lowest = reading.unit() == GlucoseUnit::mg_per_dl ? 6300 : 350;
    return !reading.censored() && reading.hundredths() >= lowest &&
           reading.hundredths() <= edges_of(reading.unit()).tight_end;
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
