#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "render/explaining_figures.hpp"
#include "render/text_measure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr double width = 495;
constexpr double left = 58;
constexpr double right = width - 6;
constexpr double key_row = 18;
constexpr double plot_height = 190;
constexpr double clock_height = 20;
constexpr double span_row = 18;
constexpr double wedge_height = 30;
constexpr double text = 12;  // points: a client's page has none smaller
constexpr TextStyle words{text, false, Anchor::start, Ink::text};

const char* key_words(IllustratedCurve::Look look) {
    return look == IllustratedCurve::Look::others ? "other times" : "";
}

Stroke stroke_of(IllustratedCurve::Look look) {
    switch (look) {
        case IllustratedCurve::Look::first:
            return {2.2, Ink::accent, false};
        case IllustratedCurve::Look::second:
            return {2, Ink::text, true};
        case IllustratedCurve::Look::others:
            return {0.8, Ink::quiet, false};
        case IllustratedCurve::Look::dots:
            break;
    }
    return {1.2, Ink::accent, false};
}

class Drawing {
  public:
    explicit Drawing(const Illustration& illustration) : shown_(illustration) {
        place_keys();
        place_spans();
        set_levels();
    }

    double height() const {
        return bottom() + clock_height + static_cast<double>(span_rows_) * span_row +
               (shown_.wedge.empty() ? 0 : wedge_height) + 4;
    }

    void draw(Canvas& canvas) const {
        draw_keys(canvas);
        draw_levels(canvas);
        draw_clock(canvas);
        // What is behind comes first.
        for (auto curve = shown_.curves.rbegin(); curve != shown_.curves.rend(); ++curve) {
            draw_curve(canvas, *curve);
        }
        draw_spans(canvas);
        draw_wedge(canvas);
    }

  private:
    struct Key {
        IllustratedCurve::Look look;
        std::string label;
        double x = 0;
        double y = 0;
    };
    struct Placed {
        IllustratedSpan span;
        std::size_t row = 0;
        double label_x = 0;
    };

    const Illustration& shown_;
    std::vector<Key> keys_;
    std::vector<Placed> spans_;
    std::size_t key_rows_ = 0;
    std::size_t span_rows_ = 0;
    double low_ = 0;
    double high_ = 1;

    double top() const { return static_cast<double>(key_rows_) * key_row + 10; }
    double bottom() const { return top() + plot_height; }
    double x(double at) const {
        return left + (at - shown_.from) / (shown_.to - shown_.from) * (right - left);
    }
    double y(double level) const {
        return bottom() - (level - low_) / (high_ - low_) * plot_height;
    }
    double edge(int mg_per_dl) const {
        const std::string words_of = edge_words(mg_per_dl, shown_.unit);
        return std::stod(words_of.substr(0, words_of.find(' ')));
    }

    void place_keys() {
        TextMeasure measure;
        double at = left;
        bool others = false;
        for (const IllustratedCurve& curve : shown_.curves) {
            std::string label = curve.label;
            if (curve.look == IllustratedCurve::Look::others) {
                if (others) {
                    continue;
                }
                others = true;
                label = key_words(curve.look);
            }
            const double needed = 34 + measure.width(label, words) + 16;
            if (at + needed > right && at > left) {
                at = left;
                ++key_rows_;
            }
            keys_.push_back({curve.look, label, at, static_cast<double>(key_rows_) * key_row + 12});
            at += needed;
        }
        ++key_rows_;
    }

    void place_spans() {
        TextMeasure measure;
        std::vector<double> ends;
        std::vector<IllustratedSpan> ordered = shown_.spans;
        std::ranges::stable_sort(ordered, {}, &IllustratedSpan::from);
        for (const IllustratedSpan& span : ordered) {
            const double from = x(std::clamp(span.from, shown_.from, shown_.to));
            const double to = x(std::clamp(std::max(span.to, span.from), shown_.from, shown_.to));
            const double needed = measure.width(span.label, words);
            // Within its bar, else to its right, else to its left.
            const double label = to - from > needed + 8     ? from + 4
                                 : to + 5 + needed <= right ? to + 5
                                                            : from - 5 - needed;
            const double begins = std::min(from, label) - 4;
            const auto free = std::ranges::find_if(ends, [&](double end) { return end <= begins; });
            const auto row = static_cast<std::size_t>(free - ends.begin());
            const double end = std::max(to, label + needed) + 4;
            if (free == ends.end()) {
                ends.push_back(end);
            } else {
                *free = end;
            }
            spans_.push_back({span, row, label});
        }
        span_rows_ = ends.size();
    }

    // From below the range to above all that is shown; in pregnancy by its own range.
    void set_levels() {
        const bool mg = shown_.unit == GlucoseUnit::mg_per_dl;
        low_ = mg ? 40 : 2.2;
        high_ = edge(shown_.range.high) + (mg ? 20 : 1.1);
        for (const IllustratedCurve& curve : shown_.curves) {
            for (const auto& run : curve.runs) {
                for (const IllustratedPoint& point : run) {
                    high_ = std::max(high_, point.level + (mg ? 10 : 0.6));
                    low_ = std::min(low_, point.level - (mg ? 10 : 0.6));
                }
            }
        }
        for (const IllustratedLevel& level : shown_.levels) {
            high_ = std::max(high_, level.level + (mg ? 10 : 0.6));
        }
    }

    void draw_keys(Canvas& canvas) const {
        for (const Key& key : keys_) {
            if (key.look == IllustratedCurve::Look::dots) {
                canvas.circle({key.x + 14, key.y - 4}, 2.4, Fill::paper, stroke_of(key.look));
            } else {
                const Point line[] = {{key.x, key.y - 4}, {key.x + 28, key.y - 4}};
                canvas.polyline(line, stroke_of(key.look));
            }
            canvas.text({key.x + 34, key.y}, key.label, words);
        }
    }

    void draw_levels(Canvas& canvas) const {
        canvas.line({left, top()}, {left, bottom()}, {0.6, Ink::line, false});
        if (!shown_.numbers) {
            canvas.text({left - 6, top() + text}, "higher", {text, false, Anchor::end, Ink::quiet});
            canvas.text({left - 6, bottom()}, "lower", {text, false, Anchor::end, Ink::quiet});
            return;
        }
        for (const int mg_per_dl : {shown_.range.low, shown_.range.high}) {
            const double at = edge(mg_per_dl);
            canvas.line({left, y(at)}, {right, y(at)}, {0.7, Ink::line, true});
            canvas.text({left - 6, y(at) + 4}, glucose_number(at, shown_.unit),
                        {text, true, Anchor::end, Ink::quiet});
        }
        canvas.text({left - 6, bottom() + 4}, name_of(shown_.unit),
                    {text, false, Anchor::end, Ink::quiet});
        for (const IllustratedLevel& level : shown_.levels) {
            canvas.line({left, y(level.level)}, {right, y(level.level)},
                        {1.4, Ink::text, level.dashed});
            canvas.text({right, y(level.level) - 4}, level.label,
                        {text, false, Anchor::end, Ink::text});
        }
    }

    // Labels that would run into one another are left out, the line stays.
    void draw_clock(Canvas& canvas) const {
        canvas.line({left, bottom()}, {right, bottom()}, {0.8, Ink::line, false});
        double taken = -1;
        for (const IllustratedTick& tick : shown_.ticks) {
            const double at = x(tick.x);
            canvas.line({at, top()}, {at, bottom() + 4}, {0.4, Ink::faint, false});
            const double needed = canvas.text_width(tick.label, words);
            const double begins = std::clamp(at - needed / 2, left - 4, right - needed);
            if (begins > taken) {
                canvas.text({begins, bottom() + 16}, tick.label, words);
                taken = begins + needed + 8;
            }
        }
    }

    void draw_curve(Canvas& canvas, const IllustratedCurve& curve) const {
        for (const auto& run : curve.runs) {
            std::vector<Point> points;
            for (const IllustratedPoint& point : run) {
                points.push_back({x(point.x), y(point.level)});
            }
            if (curve.look == IllustratedCurve::Look::dots || points.size() == 1) {
                for (const Point& point : points) {
                    canvas.circle(point, 2.4, Fill::paper, stroke_of(curve.look));
                }
            } else {
                canvas.polyline(points, stroke_of(curve.look));
            }
        }
    }

    void draw_spans(Canvas& canvas) const {
        for (const Placed& placed : spans_) {
            const double row =
                bottom() + clock_height + static_cast<double>(placed.row) * span_row + 2;
            const double from = x(std::clamp(placed.span.from, shown_.from, shown_.to));
            const double to =
                x(std::clamp(std::max(placed.span.to, placed.span.from), shown_.from, shown_.to));
            if (to - from > 2) {
                canvas.rectangle(from, row, to - from, span_row - 3, Fill::lane);
                canvas.frame(from, row, to - from, span_row - 3, {0.6, Ink::line, false});
            }
            canvas.line({from, row}, {from, row + span_row - 3}, {2, Ink::accent, false});
            canvas.text({placed.label_x, row + 11.5}, placed.span.label, words);
        }
    }

    // The look back grows to the right: the last days weigh most.
    void draw_wedge(Canvas& canvas) const {
        if (shown_.wedge.empty()) {
            return;
        }
        const double foot =
            bottom() + clock_height + static_cast<double>(span_rows_) * span_row + wedge_height - 4;
        const Point wedge[] = {
            {x(shown_.from), foot}, {x(0), foot - wedge_height + 6}, {x(0), foot}};
        canvas.polygon(wedge, Fill::inner_ribbon);
        canvas.text({left + 6, foot - 12}, shown_.wedge, words);
    }
};

std::vector<std::vector<std::string>> table_of(const Illustration& shown) {
    std::vector<std::vector<std::string>> rows;
    for (const IllustratedSpan& span : shown.spans) {
        rows.push_back({span.label, fmt::format("{:.2f}", span.from), ""});
    }
    for (const IllustratedCurve& curve : shown.curves) {
        for (const auto& run : curve.runs) {
            for (const IllustratedPoint& point : run) {
                rows.push_back({curve.label, fmt::format("{:.2f}", point.x),
                                shown.numbers ? glucose_number(point.level, shown.unit) : ""});
            }
        }
    }
    return rows;
}

}  // namespace

Figure illustration_figure(const Illustration& illustration) {
    Figure figure;
    figure.width = width;
    figure.height = Drawing(illustration).height();
    figure.title = illustration.title;
    figure.alternative = illustration.alternative;
    figure.columns = {"what", "where on the axis",
                      illustration.numbers ? name_of(illustration.unit) : "level"};
    figure.rows = table_of(illustration);
    figure.draw = [illustration](Canvas& canvas) { Drawing(illustration).draw(canvas); };
    return figure;
}

}  // namespace tracewright
