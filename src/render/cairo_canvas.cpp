#include "render/cairo_canvas.hpp"

#include "render/figure.hpp"
#include "render/text_measure.hpp"
#include "render/theme.hpp"

#include <cmath>
#include <numbers>

namespace tracewright {

namespace {

void set_colour(cairo_t* context, const Colour& c) {
    cairo_set_source_rgba(context, c.red / 255.0, c.green / 255.0, c.blue / 255.0, c.opacity);
}

// Lines at 45 degrees across the clip.
void hatch(cairo_t* context, const Pattern& p) {
    double x1 = 0;
    double y1 = 0;
    double x2 = 0;
    double y2 = 0;
    cairo_clip_extents(context, &x1, &y1, &x2, &y2);
    const double step = p.spacing * std::numbers::sqrt2;
    // Counted from the page's corner, so that neighbouring areas share their lines.
    for (double at = std::floor((x1 + y1) / step) * step; at <= x2 + y2; at += step) {
        cairo_move_to(context, at - y1, y1);
        cairo_line_to(context, at - y2, y2);
    }
    cairo_set_line_width(context, p.size);
    set_colour(context, p.mark);
    cairo_stroke(context);
}

void dots(cairo_t* context, const Pattern& p) {
    double x1 = 0;
    double y1 = 0;
    double x2 = 0;
    double y2 = 0;
    cairo_clip_extents(context, &x1, &y1, &x2, &y2);
    for (double y = std::floor(y1 / p.spacing) * p.spacing + p.spacing / 2; y <= y2 + p.size;
         y += p.spacing) {
        for (double x = std::floor(x1 / p.spacing) * p.spacing + p.spacing / 2; x <= x2 + p.size;
             x += p.spacing) {
            cairo_new_sub_path(context);
            cairo_arc(context, x, y, p.size, 0, 2 * std::numbers::pi);
        }
    }
    set_colour(context, p.mark);
    cairo_fill(context);
}

cairo_status_t append(void* closure, const unsigned char* data, unsigned length) {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

}  // namespace

TextLayout text_layout(cairo_t* context) {
    TextLayout layout(pango_cairo_create_layout(context));
    // Whole-pixel hinting and rounding would move text between screen and print, and space letters
    // unevenly.
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    PangoContext* fonts = pango_layout_get_context(layout.get());
    pango_cairo_context_set_font_options(fonts, options);
    pango_context_set_round_glyph_positions(fonts, FALSE);
    cairo_font_options_destroy(options);
    return layout;
}

void set_text(PangoLayout* layout, std::string_view text, double size, bool bold) {
    PangoFontDescription* font = pango_font_description_new();
    pango_font_description_set_family(font, font_family);
    pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_SEMIBOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
}

CairoCanvas::CairoCanvas(cairo_t* context) : context_(context), layout_(text_layout(context)) {}

void CairoCanvas::ink(Ink which) {
    set_colour(context_, colour_of(which));
}

void CairoCanvas::polyline(std::span<const Point> points, const Stroke& stroke) {
    cairo_new_path(context_);
    for (const Point& p : points) {
        cairo_line_to(context_, p.x, p.y);
    }
    const double dash[] = {4, 3};
    cairo_set_dash(context_, dash, stroke.dashed ? 2 : 0, 0);
    cairo_set_line_width(context_, stroke.width);
    cairo_set_line_join(context_, CAIRO_LINE_JOIN_ROUND);
    ink(stroke.ink);
    cairo_stroke(context_);
    cairo_set_dash(context_, dash, 0, 0);
}

void CairoCanvas::fill_path(Fill fill) {
    const Pattern p = pattern_of(fill);
    set_colour(context_, p.ground);
    if (p.kind == Pattern::Kind::plain) {
        cairo_fill(context_);
        return;
    }
    cairo_save(context_);
    cairo_fill_preserve(context_);
    cairo_clip(context_);
    if (p.kind == Pattern::Kind::hatch) {
        hatch(context_, p);
    } else {
        dots(context_, p);
    }
    cairo_restore(context_);
}

void CairoCanvas::polygon(std::span<const Point> points, Fill fill) {
    if (fill == Fill::none) {
        return;
    }
    cairo_new_path(context_);
    for (const Point& p : points) {
        cairo_line_to(context_, p.x, p.y);
    }
    cairo_close_path(context_);
    fill_path(fill);
}

void CairoCanvas::circle(Point centre, double radius, Fill fill, const Stroke& stroke) {
    cairo_new_path(context_);
    cairo_arc(context_, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
    if (fill != Fill::none) {
        fill_path(fill);
        cairo_new_path(context_);
        cairo_arc(context_, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
    }
    cairo_set_line_width(context_, stroke.width);
    ink(stroke.ink);
    cairo_stroke(context_);
}

void CairoCanvas::text(Point at, std::string_view text, const TextStyle& style) {
    set_text(layout_.get(), text, style.size, style.bold);
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout_.get(), &width, &height);
    const double w = static_cast<double>(width) / PANGO_SCALE;
    const double x = style.anchor == Anchor::start    ? at.x
                     : style.anchor == Anchor::middle ? at.x - w / 2
                                                      : at.x - w;
    const double baseline =
        static_cast<double>(pango_layout_get_baseline(layout_.get())) / PANGO_SCALE;
    ink(style.ink);
    cairo_move_to(context_, x, at.y - baseline);
    pango_cairo_show_layout(context_, layout_.get());
}

double CairoCanvas::text_width(std::string_view text, const TextStyle& style) {
    set_text(layout_.get(), text, style.size, style.bold);
    int width = 0;
    int height = 0;
    pango_layout_get_size(layout_.get(), &width, &height);
    return static_cast<double>(width) / PANGO_SCALE;
}

struct TextMeasure::Inside {
    CairoSurface surface{cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr)};
    CairoContext context{cairo_create(surface.get())};
    CairoCanvas canvas{context.get()};
};

TextMeasure::TextMeasure() : inside_(std::make_unique<Inside>()) {}
TextMeasure::~TextMeasure() = default;

double TextMeasure::width(std::string_view text, const TextStyle& style) {
    return inside_->canvas.text_width(text, style);
}

std::string TextMeasure::shortened(std::string_view text, double width, const TextStyle& style) {
    if (inside_->canvas.text_width(text, style) <= width) {
        return std::string(text);
    }
    const auto cut_at = [&](std::size_t most) {
        while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0U) == 0x80U) {
            --most;
        }
        while (most > 0 && text[most - 1] == ' ') {
            --most;
        }
        return std::string(text.substr(0, most)) + "\xE2\x80\xA6";
    };
    std::size_t fits = 0;
    std::size_t too_long = text.size();
    while (too_long - fits > 1) {
        const std::size_t middle = (fits + too_long) / 2;
        (inside_->canvas.text_width(cut_at(middle), style) <= width ? fits : too_long) = middle;
    }
    return cut_at(fits);
}

std::string png_of(const Figure& figure, double scale) {
    const CairoSurface surface(cairo_image_surface_create(
        CAIRO_FORMAT_RGB24, static_cast<int>(std::ceil(figure.width * scale)),
        static_cast<int>(std::ceil(figure.height * scale))));
    const CairoContext context(cairo_create(surface.get()));
    cairo_set_source_rgb(context.get(), 1, 1, 1);
    cairo_paint(context.get());
    cairo_scale(context.get(), scale, scale);
    CairoCanvas canvas(context.get());
    figure.draw(canvas);
    std::string png;
    cairo_surface_write_to_png_stream(surface.get(), append, &png);
    return png;
}

}  // namespace tracewright
