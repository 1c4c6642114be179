#include "responses/incremental_area.hpp"

#include <algorithm>
#include <numeric>

namespace tracewright {

namespace {

double above(double a, double b, double minutes) {
    if (a >= 0 && b >= 0) {
        return (a + b) * minutes / 2;
    }
    if (a > 0) {
        return a * a / (a - b) * minutes / 2;
    }
    if (b > 0) {
        return b * b / (b - a) * minutes / 2;
    }
    return 0;
}

}  // namespace

std::vector<double> incremental_area_by_segment(std::span<const CurvePoint> curve,
                                                double baseline) {
    std::vector<double> parts;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        parts.push_back(above(curve[i - 1].level - baseline, curve[i].level - baseline,
                              curve[i].minutes - curve[i - 1].minutes));
    }
    return parts;
}

double incremental_area(std::span<const CurvePoint> curve, double baseline) {
    const std::vector<double> parts = incremental_area_by_segment(curve, baseline);
    return std::accumulate(parts.begin(), parts.end(), 0.0);
}

double net_incremental_area(std::span<const CurvePoint> curve, double baseline) {
    double sum = 0;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        sum += (curve[i - 1].level + curve[i].level - 2 * baseline) *
               (curve[i].minutes - curve[i - 1].minutes) / 2;
    }
    return sum;
}

double area_until_first_return(std::span<const CurvePoint> curve, double baseline) {
    const std::vector<double> parts = incremental_area_by_segment(curve, baseline);
    double sum = 0;
    bool risen = false;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        sum += parts[i];
        risen = risen || curve[i + 1].level > baseline;
        if (risen && curve[i + 1].level <= baseline) {
            break;
        }
    }
    return sum;
}

double area_above_minimum(std::span<const CurvePoint> curve) {
    if (curve.empty()) {
        return 0;
    }
    const auto lowest = std::min_element(
        curve.begin(), curve.end(),
        [](const CurvePoint& a, const CurvePoint& b) { return a.level < b.level; });
    return net_incremental_area(curve, lowest->level);
}

double total_area(std::span<const CurvePoint> curve) {
    return net_incremental_area(curve, 0);
}

}  // namespace tracewright
