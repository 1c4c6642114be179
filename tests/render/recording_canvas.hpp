#pragma once

#include "render/figure.hpp"
#include "render/text_measure.hpp"

#include <string>
#include <vector>

namespace tracewright::testing {

/// Remembers what was drawn.
class RecordingCanvas final : public Canvas {
  public:
    struct Text {
        std::string words;
        double left = 0;
        double right = 0;
        double base = 0;
        double size = 0;
        bool meets(const Text& other) const {
            return left < other.right && other.left < right && base - 0.7 * size < other.base &&
                   other.base - 0.7 * other.size < base;
        }
    };
    struct Area {
        std::vector<Point> points;
        Fill fill = Fill::none;
    };
    struct Line {
        std::vector<Point> points;
        Stroke stroke;
    };

    explicit RecordingCanvas(const Figure& figure) { figure.draw(*this); }

    void polyline(std::span<const Point> points, const Stroke& stroke) override {
        lines.push_back({{points.begin(), points.end()}, stroke});
    }
    void polygon(std::span<const Point> points, Fill fill) override {
        areas.push_back({{points.begin(), points.end()}, fill});
    }
    void circle(Point centre, double, Fill, const Stroke&) override { circles.push_back(centre); }
    void text(Point at, std::string_view text, const TextStyle& style) override {
        const double width = measure_.width(text, style);
        const double left = style.anchor == Anchor::start    ? at.x
                            : style.anchor == Anchor::middle ? at.x - width / 2
                                                             : at.x - width;
        texts.push_back({std::string(text), left, left + width, at.y, style.size});
    }
    double text_width(std::string_view text, const TextStyle& style) override {
        return measure_.width(text, style);
    }

    std::vector<std::string> words() const {
        std::vector<std::string> all;
        for (const Text& text : texts) {
            all.push_back(text.words);
        }
        return all;
    }

    std::vector<Text> texts;
    std::vector<Area> areas;
    std::vector<Line> lines;
    std::vector<Point> circles;

  private:
    TextMeasure measure_;
};

}  // namespace tracewright::testing
