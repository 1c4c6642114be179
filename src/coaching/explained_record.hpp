#pragma once

#include "coaching/illustration.hpp"
#include "diary/medicine_timeline.hpp"
#include "findings/review_input.hpp"
#include "responses/meal_response.hpp"
#include "trace/counted_trace.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What the explaining pages choose their stretches from: one client's counted trace and meals,
/// with what is not fit to be shown.
class ExplainedRecord {
  public:
    explicit ExplainedRecord(const ReviewInput& input);

    const ReviewInput& input() const { return input_; }
    const CountedTrace& trace() const { return trace_; }
    const std::vector<EatingOccasion>& occasions() const { return occasions_; }
    const std::vector<MealResponse>& responses() const { return responses_; }

    /// Whether a stretch explains something rather than raising a question of its own: at least
    /// 90 % of it sensed, nothing suspect, not in the first 24 h of a wear, no reading below 70
    /// mg/dL (3.9 mmol/L) or beyond the sensor's limits, no illness or alcohol noted from 12 h
    /// before. Ours, no source. Lows are told elsewhere and first; a page that explains is not
    /// their place.
    bool fit_to_show(Interval stretch) const;

    /// A meal whose three hours can be read to their end and that is fit to show.
    bool meal_can_be_shown(std::size_t occasion) const;

    /// The trace over `stretch`; x is in hours from `zero`.
    IllustratedCurve curve(Interval stretch, Instant zero, std::string label,
                           IllustratedCurve::Look look) const;

    /// Meals and movement of a stretch, x in hours from `zero`.
    std::vector<IllustratedSpan> spans(Interval stretch, Instant zero) const;

    /// The full hours the clock shows, each `every` hours, x in hours from `zero`.
    std::vector<IllustratedTick> clock_ticks(Interval stretch, Instant zero, int every) const;

    double shown(double mg_per_dl) const;       ///< in the unit shown
    std::string words(double mg_per_dl) const;  ///< "112 mg/dL"
    CivilDate date(Instant at) const { return input_.zones.date_at(at); }

  private:
    const ReviewInput& input_;
    CountedTrace trace_;
    std::vector<EatingOccasion> occasions_;
    std::vector<MealResponse> responses_;
    std::vector<Interval> not_shown_;
};

/// The index of the value nearest the median of all; of equals the last. `values` not empty.
std::size_t nearest_the_median(std::span<const double> values);

}  // namespace tracewright
