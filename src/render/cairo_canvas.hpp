#pragma once

#include "render/canvas.hpp"

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>

namespace tracewright {

struct DestroyCairo {
    void operator()(cairo_t* c) const { cairo_destroy(c); }
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
};
struct UnrefObject {
    void operator()(void* o) const { g_object_unref(o); }
};
using CairoContext = std::unique_ptr<cairo_t, DestroyCairo>;
using CairoSurface = std::unique_ptr<cairo_surface_t, DestroyCairo>;
using TextLayout = std::unique_ptr<PangoLayout, UnrefObject>;

/// A layout of the house's font on `context`; one serves many texts.
TextLayout text_layout(cairo_t* context);
void set_text(PangoLayout* layout, std::string_view text, double size, bool bold);

/// Draws through cairo, whatever is behind it.
class CairoCanvas final : public Canvas {
  public:
    explicit CairoCanvas(cairo_t* context);

    void polyline(std::span<const Point> points, const Stroke& stroke) override;
    void polygon(std::span<const Point> points, Fill fill) override;
    void circle(Point centre, double radius, Fill fill, const Stroke& stroke) override;
    void text(Point at, std::string_view text, const TextStyle& style) override;
    double text_width(std::string_view text, const TextStyle& style) override;

  private:
    void fill_path(Fill fill);
    void ink(Ink ink);

    cairo_t* context_;  // not owned
    TextLayout layout_;
};

}  // namespace tracewright
