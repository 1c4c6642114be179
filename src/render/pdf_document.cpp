#include "render/pdf_document.hpp"

#include "render/pdf_language.hpp"
#include "render/theme.hpp"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr double page_width = 595.28;
constexpr double page_height = 841.89;
constexpr double margin = 50;
constexpr double page_top = 44;
constexpr double text_width = page_width - 2 * margin;
constexpr double page_bottom = page_height - 62;
constexpr double line_spacing = 1.25;
constexpr double bullet_size = 8.5;

cairo_status_t append(void* closure, const unsigned char* data, unsigned length) {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

// One tag opened and closed.
class Tag {
  public:
    Tag(cairo_t* context, const char* name) : context_(context), name_(name) {
        cairo_tag_begin(context_, name_, nullptr);
    }
    ~Tag() { cairo_tag_end(context_, name_); }
    Tag(const Tag&) = delete;
    Tag& operator=(const Tag&) = delete;

  private:
    cairo_t* context_;
    const char* name_;
};

}  // namespace

struct PdfDocument::Inside {
    CairoSurface surface;
    CairoContext context;
    TextLayout layout;
};

PdfDocument::PdfDocument(std::string title, const std::string& created, std::string footer)
    : title_(std::move(title)), footer_(std::move(footer)) {
    CairoSurface surface(
        cairo_pdf_surface_create_for_stream(append, &bytes_, page_width, page_height));
    cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, title_.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, created.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Tracewright");
    CairoContext context(cairo_create(surface.get()));
    TextLayout layout = text_layout(context.get());
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_line_spacing(layout.get(), static_cast<float>(line_spacing));
    inside_ =
        std::make_unique<Inside>(Inside{std::move(surface), std::move(context), std::move(layout)});
    begin_page();
}

PdfDocument::~PdfDocument() = default;

void PdfDocument::begin_page() {
    ++page_;
    y_ = page_top;
}

void PdfDocument::end_page() {
    cairo_t* context = inside_->context.get();
    CairoCanvas canvas(context);
    canvas.line({margin, page_height - 48}, {page_width - margin, page_height - 48},
                {0.4, Ink::faint, false});
    y_ = page_height - 44;
    draw_text(footer_, margin, text_width - 50, 7, false, Ink::quiet);
    canvas.text({page_width - margin, page_height - 36}, "page " + std::to_string(page_),
                {7, false, Anchor::end, Ink::quiet});
    cairo_show_page(context);
}

void PdfDocument::new_page() {
    end_page();
    begin_page();
}

void PdfDocument::need(double points) {
    if (!has_room(points) && y_ > page_top) {
        new_page();
    }
}

bool PdfDocument::has_room(double points) const {
    return y_ + points <= page_bottom;
}

void PdfDocument::space(double points) {
    y_ += points;
}

double PdfDocument::text_height(std::string_view text, double size, bool bold, double width) {
    PangoLayout* layout = inside_->layout.get();
    set_text(layout, text, size, bold);
    pango_layout_set_width(layout, static_cast<int>(width * PANGO_SCALE));
    int w = 0;
    int h = 0;
    pango_layout_get_size(layout, &w, &h);
    return static_cast<double>(h) / PANGO_SCALE;
}

void PdfDocument::draw_text(std::string_view text, double x, double width, double size, bool bold,
                            Ink ink) {
    cairo_t* context = inside_->context.get();
    text_height(text, size, bold, width);
    const Colour c = colour_of(ink);
    cairo_set_source_rgb(context, c.red / 255.0, c.green / 255.0, c.blue / 255.0);
    cairo_move_to(context, x, y_);
    pango_cairo_show_layout(context, inside_->layout.get());
}

void PdfDocument::block(const char* tag, std::string_view text, double indent, double size,
                        bool bold, Ink ink) {
    const double width = text_width - indent;
    const double height = text_height(text, size, bold, width);
    need(std::min(height, page_bottom - page_top));
    const Tag tagged(inside_->context.get(), tag);
    draw_text(text, margin + indent, width, size, bold, ink);
    y_ += height;
}

void PdfDocument::heading(int level, std::string_view text) {
    constexpr double sizes[] = {17, 12.5, 10};
    const double size = scale_ * sizes[std::clamp(level, 1, 3) - 1];
    space(scale_ * (level == 1 ? 0 : level == 2 ? 9 : 4));
    need(size * 4);  // not alone at the foot of a page
    block(level == 1   ? "H1"
          : level == 2 ? "H2"
                       : "H3",
          text, 0, size, true, level == 3 ? Ink::accent : Ink::text);
    space(level == 1 ? 3 : 1);
}

void PdfDocument::paragraph(std::string_view text, double size, bool bold, Ink ink) {
    block("P", text, 0, scale_ * size, bold, ink);
    space(scale_ * 2.5);
}

void PdfDocument::bullets(const std::vector<std::string>& texts) {
    cairo_t* context = inside_->context.get();
    const double size = scale_ * bullet_size;
    std::size_t next = 0;
    while (next < texts.size()) {
        need(text_height(texts[next], size, false, text_width - 12));
        const Tag list(context, "L");
        for (bool first = true; next < texts.size(); ++next, first = false) {
            if (!first && !has_room(text_height(texts[next], size, false, text_width - 12))) {
                break;  // the list goes on on the next page
            }
            const Tag item(context, "LI");
            CairoCanvas canvas(context);
            canvas.circle({margin + 4, y_ + 0.62 * size * line_spacing}, 0.8, Fill::none,
                          {1, Ink::quiet, false});
            block("LBody", texts[next], 12, size, false, Ink::text);
            space(1);
        }
        if (next < texts.size()) {
            y_ = page_bottom;
        }
    }
    space(scale_ * 1.5);
}

void PdfDocument::figure(const Figure& figure, bool caption) {
    const double caption_height =
        caption ? text_height(figure.alternative, 8.5, false, text_width) + 4 : 0;
    need(figure.height + caption_height + 6);
    cairo_t* context = inside_->context.get();
    {
        const Tag tagged(context, "Figure");
        cairo_save(context);
        cairo_translate(context, margin, y_);
        CairoCanvas canvas(context);
        figure.draw(canvas);
        cairo_restore(context);
    }
    figure_texts_.push_back(figure.alternative);
    y_ += figure.height + 2;
    if (caption) {
        block("Caption", figure.alternative, 0, 8.5, false, Ink::quiet);
    }
    space(6);
}

void PdfDocument::table_row(const char* cell_tag, const std::vector<std::string>& cells,
                            const std::vector<double>& shares, bool bold) {
    const double gap = 6;
    double height = 0;
    for (std::size_t c = 0; c < cells.size(); ++c) {
        height = std::max(height, text_height(cells[c], 8, bold, shares[c] * text_width - gap));
    }
    cairo_t* context = inside_->context.get();
    {
        const Tag row(context, "TR");
        double x = margin;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const Tag cell(context, c == 0 ? "TH" : cell_tag);
            draw_text(cells[c], x, shares[c] * text_width - gap, 8, bold, Ink::text);
            x += shares[c] * text_width;
        }
    }
    y_ += height + 2;
    CairoCanvas canvas(context);
    canvas.line({margin, y_}, {page_width - margin, y_}, {0.3, Ink::faint, false});
    y_ += 2;
}

void PdfDocument::table(const std::vector<std::string>& columns, const std::vector<double>& shares,
                        const std::vector<std::vector<std::string>>& rows) {
    cairo_t* context = inside_->context.get();
    std::size_t next = 0;
    while (next < rows.size()) {
        need(40);
        const Tag tagged(context, "Table");
        table_row("TH", columns, shares, true);
        for (bool first = true; next < rows.size(); ++next, first = false) {
            double height = 0;
            for (std::size_t c = 0; c < rows[next].size(); ++c) {
                height = std::max(height,
                                  text_height(rows[next][c], 8, false, shares[c] * text_width - 6));
            }
            if (!first && y_ + height + 4 > page_bottom) {
                break;  // the table goes on on the next page, under its titles again
            }
            table_row("TD", rows[next], shares, false);
        }
        if (next < rows.size()) {
            y_ = page_bottom;
        }
    }
    space(4);
}

std::string PdfDocument::bytes() {
    end_page();
    inside_->layout.reset();
    inside_->context.reset();
    cairo_surface_finish(inside_->surface.get());
    if (cairo_surface_status(inside_->surface.get()) != CAIRO_STATUS_SUCCESS) {
        throw std::runtime_error("the PDF could not be finished");
    }
    return with_language(std::move(bytes_), "en", figure_texts_);
}

}  // namespace tracewright
