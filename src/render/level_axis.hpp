#pragma once

#include "findings/wording.hpp"
#include "measures/shown_range.hpp"
#include "render/canvas.hpp"
#include "units/glucose.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

/// Glucose upwards in a box: from a little below the very low edge to the highest level shown, at
/// least 300 mg/dL (16.7 mmol/L) so that days can be compared by eye.
class LevelAxis {
  public:
    LevelAxis(GlucoseUnit unit, const ShownRange& range, double highest, double top, double bottom)
        : unit_(unit), range_(range), top_(top), bottom_(bottom) {
        const bool mg = unit == GlucoseUnit::mg_per_dl;
        low_ = mg ? 30 : 1.6;
        step_ = mg ? 50 : 3;
        high_ = std::max(mg ? 300.0 : 16.7, std::ceil(highest / step_) * step_);
    }

    double y(double level) const {
        const double held = std::clamp(level, low_, high_);
        return bottom_ - (held - low_) / (high_ - low_) * (bottom_ - top_);
    }
    double edge(int mg_per_dl) const {
        const bool mg = unit_ == GlucoseUnit::mg_per_dl;
        switch (mg_per_dl) {
            case 54:
                return mg ? 54 : 3.0;
            case 63:
                return mg ? 63 : 3.5;
            case 140:
                return mg ? 140 : 7.8;
            case 70:
                return mg ? 70 : 3.9;
            case 180:
                return mg ? 180 : 10.0;
            default:
                return mg ? 250 : 13.9;
        }
    }
    const ShownRange& range() const { return range_; }
    void draw(Canvas& canvas, double left, double right) const {
        edges(canvas, left, right, edge(54), edge(range_.low));
        edges(canvas, left, right, edge(250), edge(range_.high));
        canvas.text({left - 4, top_ - 4}, name_of(unit_), {7, false, Anchor::end, Ink::quiet});
    }

  private:
    // An outer edge and the goal's edge next to it, their labels kept apart.
    void edges(Canvas& canvas, double left, double right, double outer, double goal) const {
        constexpr double label_height = 7.6;
        const double apart = std::abs(y(outer) - y(goal));
        const double push = std::max(0.0, label_height - apart) / 2;
        const double away = outer < goal ? push : -push;
        canvas.line({left, y(outer)}, {right, y(outer)}, {0.4, Ink::faint, false});
        canvas.text({left - 4, y(outer) + 2.6 + away}, glucose_number(outer, unit_),
                    {7, false, Anchor::end, Ink::quiet});
        canvas.line({left, y(goal)}, {right, y(goal)}, {0.7, Ink::line, true});
        canvas.text({left - 4, y(goal) + 2.6 - away}, glucose_number(goal, unit_),
                    {7.5, true, Anchor::end, Ink::quiet});
    }

    GlucoseUnit unit_;
    ShownRange range_;
    double low_ = 0;
    double high_ = 0;
    double step_ = 1;
    double top_;
    double bottom_;
};

}  // namespace tracewright
