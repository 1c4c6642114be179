#include "render/canvas.hpp"

#include <array>

namespace tracewright {

void Canvas::line(Point from, Point to, const Stroke& stroke) {
    const std::array points{from, to};
    polyline(points, stroke);
}

void Canvas::rectangle(double x, double y, double width, double height, Fill fill) {
    const std::array points{Point{x, y}, Point{x + width, y}, Point{x + width, y + height},
                            Point{x, y + height}};
    polygon(points, fill);
}

void Canvas::frame(double x, double y, double width, double height, const Stroke& stroke) {
    const std::array points{Point{x, y}, Point{x + width, y}, Point{x + width, y + height},
                            Point{x, y + height}, Point{x, y}};
    polyline(points, stroke);
}

}  // namespace tracewright
