#include "findings/question_sentences.hpp"
#include "findings/wording.hpp"
#include "render/explaining_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr double width = 495;
constexpr double left = 46;
constexpr double pairs_right = 350;
constexpr double right = width - 8;
constexpr double top = 30;
constexpr double bottom = 170;
constexpr double height = bottom + 46;
constexpr TextStyle words{9, false, Anchor::start, Ink::text};
constexpr TextStyle middle{9, false, Anchor::middle, Ink::text};

struct Pair {
    std::optional<double> a;
    std::optional<double> b;
};

struct Scale {
    double low = 0;
    double high = 1;
    double y(double value) const { return bottom - (value - low) / (high - low) * (bottom - top); }
};

class Pairs {
  public:
    Pairs(const Trial& trial, const TrialReading& reading, GlucoseUnit unit)
        : hours_(facts_of(trial.outcome).unit == OutcomeUnit::hours), unit_(unit) {
        for (std::size_t i = 0; i + 1 < reading.days.size(); i += 2) {
            pairs_.push_back({shown(reading.days[i].value), shown(reading.days[i + 1].value)});
        }
        mean_ = shown(reading.as_allotted.estimate).value_or(0);
        if (reading.as_allotted.interval95) {
            interval_ = {shown((*reading.as_allotted.interval95)[0]).value_or(0),
                         shown((*reading.as_allotted.interval95)[1]).value_or(0)};
        }
        set_scales();
    }

    void draw(Canvas& canvas) const {
        draw_key(canvas);
        draw_axes(canvas);
        for (std::size_t i = 0; i < pairs_.size(); ++i) {
            draw_pair(canvas, i);
        }
        draw_difference(canvas);
    }

    std::vector<std::vector<std::string>> table() const {
        std::vector<std::vector<std::string>> rows;
        for (std::size_t i = 0; i < pairs_.size(); ++i) {
            rows.push_back({std::to_string(i + 1), told(pairs_[i].a), told(pairs_[i].b)});
        }
        return rows;
    }
    std::string unit_words() const { return hours_ ? "h" : name_of(unit_); }

  private:
    bool hours_ = false;
    GlucoseUnit unit_;
    std::vector<Pair> pairs_;
    double mean_ = 0;
    std::optional<std::array<double, 2>> interval_;
    Scale values_;
    Scale differences_;

    std::optional<double> shown(std::optional<double> value) const {
        if (!value || hours_) {
            return value;
        }
        return converted(*value, GlucoseUnit::mg_per_dl, unit_);
    }
    std::string number(double value) const {
        return hours_ ? fmt::format("{:.1f}", value) : glucose_number(value, unit_);
    }
    std::string told(const std::optional<double>& value) const {
        return value ? number(*value) : std::string("not read");
    }

    void set_scales() {
        std::vector<double> all;
        for (const Pair& pair : pairs_) {
            for (const auto& value : {pair.a, pair.b}) {
                if (value) {
                    all.push_back(*value);
                }
            }
        }
        if (!all.empty()) {
            const auto [low, high] = std::ranges::minmax(all);
            const double margin = std::max(0.1 * (high - low), 0.05 * std::abs(high) + 1e-6);
            values_ = {low - margin, high + margin};
        }
        double reach = std::abs(mean_);
        if (interval_) {
            reach = std::max({reach, std::abs((*interval_)[0]), std::abs((*interval_)[1])});
        }
        reach = reach > 0 ? 1.15 * reach : 1;
        differences_ = {-reach, reach};
    }

    double x(std::size_t i) const {
        return left + (static_cast<double>(i) + 0.5) / static_cast<double>(pairs_.size()) *
                          (pairs_right - left);
    }

    static void mark(Canvas& canvas, Point at, bool a) {
        if (a) {
            canvas.circle(at, 3.6, Fill::very_high, {1, Ink::text, false});
        } else {
            canvas.circle(at, 3.6, Fill::paper, {1.4, Ink::text, false});
        }
    }

    void draw_key(Canvas& canvas) const {
        mark(canvas, {left + 6, 10}, true);
        canvas.text({left + 14, 13}, "A", words);
        mark(canvas, {left + 40, 10}, false);
        canvas.text({left + 48, 13}, "B, each pair as allotted", words);
        canvas.text({(pairs_right + 30 + right) / 2, 13}, "A less B, mean with interval", middle);
    }

    void draw_axes(Canvas& canvas) const {
        canvas.line({left, top}, {left, bottom}, {0.6, Ink::line, false});
        canvas.line({left, bottom}, {pairs_right, bottom}, {0.6, Ink::line, false});
        for (const double share : {0.1, 0.5, 0.9}) {
            const double value = std::lerp(values_.low, values_.high, share);
            canvas.line({left, values_.y(value)}, {pairs_right, values_.y(value)},
                        {0.35, Ink::faint, false});
            canvas.text({left - 4, values_.y(value) + 3}, number(value),
                        {9, false, Anchor::end, Ink::quiet});
        }
        canvas.text({left - 4, bottom + 12}, unit_words(), {9, false, Anchor::end, Ink::quiet});
        canvas.text({(left + pairs_right) / 2, bottom + 28}, "pair", middle);
    }

    void draw_pair(Canvas& canvas, std::size_t i) const {
        const Pair& pair = pairs_[i];
        if (pairs_.size() <= 20 || i % 5 == 4) {
            canvas.text({x(i), bottom + 13}, std::to_string(i + 1), middle);
        }
        if (pair.a && pair.b) {
            canvas.line({x(i), values_.y(*pair.a)}, {x(i), values_.y(*pair.b)},
                        {1, Ink::quiet, false});
        }
        if (pair.a) {
            mark(canvas, {x(i), values_.y(*pair.a)}, true);
        }
        if (pair.b) {
            mark(canvas, {x(i), values_.y(*pair.b)}, false);
        }
    }

    void draw_difference(Canvas& canvas) const {
        const double at = (pairs_right + 30 + right) / 2;
        const double zero = differences_.y(0);
        canvas.line({pairs_right + 30, zero}, {right, zero}, {0.8, Ink::line, true});
        canvas.text({at, bottom + 13}, "dashed: no difference",
                    {9, false, Anchor::middle, Ink::quiet});
        if (interval_) {
            canvas.line({at, differences_.y((*interval_)[0])},
                        {at, differences_.y((*interval_)[1])}, {2, Ink::accent, false});
        }
        canvas.circle({at, differences_.y(mean_)}, 4, Fill::paper, {2, Ink::accent, false});
        canvas.text({at + 9, differences_.y(mean_) + 3}, (mean_ > 0 ? "+" : "") + number(mean_),
                    {9, true, Anchor::start, Ink::text});
    }
};

}  // namespace

Figure trial_pairs_figure(const Trial& trial, const TrialReading& reading, GlucoseUnit unit) {
    const Pairs pairs(trial, reading, unit);
    Figure figure;
    figure.width = width;
    figure.height = height;
    figure.title = "The pairs of the trial";
    figure.alternative = reading.finding.sentence;
    figure.columns = {"pair", "A, " + pairs.unit_words(), "B, " + pairs.unit_words()};
    figure.rows = pairs.table();
    figure.draw = [pairs](Canvas& canvas) { pairs.draw(canvas); };
    return figure;
}

}  // namespace tracewright
