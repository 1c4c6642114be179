#pragma once

#include "render/cairo_canvas.hpp"

namespace tracewright {

// The page that PdfDocument fills, in points: A4 with its margins. For its own files only.

inline constexpr double page_width = 595.28;
inline constexpr double page_height = 841.89;
inline constexpr double margin = 50;
inline constexpr double page_top = 44;
inline constexpr double text_width = page_width - 2 * margin;

inline double height_of(PangoLayout* layout) {
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout, &width, &height);
    return static_cast<double>(height) / PANGO_SCALE;
}

}  // namespace tracewright
