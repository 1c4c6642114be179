#pragma once

#include "responses/eating_occasion.hpp"
#include "responses/incremental_area.hpp"
#include "trace/trace_view.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What one eating occasion did to glucose, levels in mg/dL. Rules: glycaemia 5.1, ours where no
/// source has one (docs/methods/meals.md).
struct MealResponse {
    std::string not_readable;  ///< why there is nothing below; empty if there is

    double baseline = 0;         ///< median of the 15 minutes before the first bite
    double peak = 0;             ///< highest reading of the window
    double rise = 0;             ///< peak less baseline; below 0 where nothing rose
    double minutes_to_peak = 0;  ///< the earliest of equal ones
    std::optional<double> at_1h;
    std::optional<double> at_2h;
    std::optional<double> area_2h;  ///< incremental, mg/dL x min
    std::optional<double> area_3h;
    std::optional<double> back_to_start_minutes;  ///< from the peak on; empty if not seen to come

    double window_minutes = 180;  ///< less where cut short
    bool cut_short = false;     ///< by the next meal of over 10 g carbohydrate, or of unknown size
    bool not_at_rest = false;   ///< changing by over 1 mg/dL a minute at the first bite
    bool beyond_limit = false;  ///< a reading of the window was LOW or HIGH
};

/// `next`: the occasion after, if any. Readings are those of one counted trace.
MealResponse meal_response(const EatingOccasion& occasion, const EatingOccasion* next,
                           const TraceView& trace);

/// One response for each occasion.
std::vector<MealResponse> meal_responses(std::span<const EatingOccasion> occasions,
                                         const TraceView& trace);

/// The numbers of a curve that begins at the first bite (minute 0 first): for published examples.
MealResponse response_of_curve(std::span<const CurvePoint> curve, double baseline);

}  // namespace tracewright
