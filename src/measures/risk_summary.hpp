#pragma once

namespace tracewright {

/// Glycaemia risk index from the four disjoint bands outside the range, in percent of sensed time.
/// Source: Klonoff et al. 2022, 10.1177/19322968221085273 (weights from memory). Ranked by
/// clinicians for people on insulin: secondary place only.
struct GlycaemiaRiskIndex {
    double index = 0;  ///< 0 to 100
    double low_part = 0;
    double high_part = 0;
};
GlycaemiaRiskIndex glycaemia_risk_index(double very_low, double low, double high, double very_high);

/// A to E by fifths of 20, after rounding to a whole number (ours).
char glycaemia_risk_zone(double index);

}  // namespace tracewright
