#pragma once

#include <span>
#include <string>
#include <string_view>

namespace tracewright {

struct Point {
    double x = 0;
    double y = 0;
};

/// The inks of the house. Text inks keep a contrast of 4.5 to 1 on paper (a test computes it).
enum class Ink { text, quiet, line, faint, low, high, very_high, accent, paper };

/// How an area is filled. Pattern carries the meaning, colour helps: all five bands differ in grey.
enum class Fill {
    none,
    very_low,
    low,
    in_range,
    high,
    very_high,
    outer_ribbon,
    inner_ribbon,
    suspect,
    lane,
    paper
};

struct Stroke {
    double width = 1;
    Ink ink = Ink::line;
    bool dashed = false;
};

enum class Anchor { start, middle, end };

struct TextStyle {
    double size = 10;
    bool bold = false;
    Anchor anchor = Anchor::start;
    Ink ink = Ink::text;
};

/// What figures draw on: one drawing code for screen (SVG), print (PDF) and picture (PNG). Units
/// are points; y runs downwards; a text's point is the left (middle, right) end of its base line.
class Canvas {
  public:
    virtual ~Canvas() = default;
    virtual void polyline(std::span<const Point> points, const Stroke& stroke) = 0;
    virtual void polygon(std::span<const Point> points, Fill fill) = 0;
    virtual void circle(Point centre, double radius, Fill fill, const Stroke& stroke) = 0;
    virtual void text(Point at, std::string_view text, const TextStyle& style) = 0;
    /// Width that `text` takes.
    virtual double text_width(std::string_view text, const TextStyle& style) = 0;

    void line(Point from, Point to, const Stroke& stroke);
    void rectangle(double x, double y, double width, double height, Fill fill);
    void frame(double x, double y, double width, double height, const Stroke& stroke);
};

}  // namespace tracewright
