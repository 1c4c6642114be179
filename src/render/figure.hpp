#pragma once

#include "render/canvas.hpp"

#include <functional>
#include <string>
#include <vector>

namespace tracewright {

/// A drawing with what it says: its finding in words, and its data as a table.
struct Figure {
    double width = 0;  ///< points
    double height = 0;
    std::string title;
    std::string alternative;           ///< states the finding
    std::vector<std::string> columns;  ///< of the table
    std::vector<std::vector<std::string>> rows;
    std::function<void(Canvas&)> draw;
};

/// One `svg` element with title and description, text as text. With `own_patterns` it stands alone;
/// without, the page brings the patterns once (svg_patterns).
std::string svg_of(const Figure& figure, bool own_patterns = true);

/// The patterns of all fills as a hidden `svg` element for a page of many figures.
std::string svg_patterns();

/// A PNG picture, `scale` pixels to a point.
std::string png_of(const Figure& figure, double scale = 2);

/// Text for HTML and SVG.
std::string escaped_markup(std::string_view text);

}  // namespace tracewright
