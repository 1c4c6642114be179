#pragma once

#include <span>
#include <vector>

namespace tracewright {

/// A point of a curve: minutes from the first bite, and a level in any unit.
struct CurvePoint {
    double minutes;
    double level;
};

// Areas of a curve of straight lines, in level x minutes. Ascending minutes; fewer than two points
// give 0. Source: FAO/WHO 1998, Food and Nutrition Paper 66; Brouns et al. 2005,
// 10.1079/NRR2005100; ISO 26642:2010; the variants are named by Wolever 2004, Br J Nutr.

/// Above `baseline`, what lies below it ignored; where a line crosses, the triangle up to the
/// crossing.
double incremental_area(std::span<const CurvePoint> curve, double baseline);
/// The same, line by line.
std::vector<double> incremental_area_by_segment(std::span<const CurvePoint> curve, double baseline);

// Named variants, for comparison with other people's figures only.

/// What lies below taken off.
double net_incremental_area(std::span<const CurvePoint> curve, double baseline);
/// Up to where the curve first comes back to the baseline.
double area_until_first_return(std::span<const CurvePoint> curve, double baseline);
/// Above the curve's own lowest level.
double area_above_minimum(std::span<const CurvePoint> curve);
/// Above zero.
double total_area(std::span<const CurvePoint> curve);

}  // namespace tracewright
