#include "render/pdf_document.hpp"

#include "render/pdf_language.hpp"
#include "render/pdf_page.hpp"
#include "render/theme.hpp"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr double foot_height = 62;          // of the page, with a footer ...
constexpr double foot_height_without = 40;  // ... and without
constexpr double line_spacing = 1.25;
constexpr double cell_gap = 6;

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

double row_height_of(const std::vector<TextLayout>& cells) {
    double height = 0;
    for (const TextLayout& cell : cells) {
        height = std::max(height, height_of(cell.get()));
    }
    return height;
}

}  // namespace

PdfDocument::PdfDocument(std::string title, const std::string& created, std::string footer,
                         Output output)
    : title_(std::move(title)), footer_(std::move(footer)) {
    trial_ = output == Output::trial;
    CairoSurface surface(
        trial_ ? cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr)
               : cairo_pdf_surface_create_for_stream(append, &bytes_, page_width, page_height));
    if (!trial_) {
        cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, title_.c_str());
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE,
                                       created.c_str());
        cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Tracewright");
    }
    CairoContext context(cairo_create(surface.get()));
    TextLayout layout = text_layout(context.get());
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_line_spacing(layout.get(), static_cast<float>(line_spacing));
    inside_ =
        std::make_unique<Inside>(Inside{std::move(surface), std::move(context), std::move(layout)});
    begin_page();
}

PdfDocument::~PdfDocument() = default;

void PdfDocument::set_line_spacing(double spacing) {
    pango_layout_set_line_spacing(inside_->layout.get(), static_cast<float>(spacing));
    tried_.clear();
}

void PdfDocument::try_again() {
    figure_texts_.clear();
    page_ = 0;
    begin_page();
}

void PdfDocument::begin_page() {
    ++page_;
    y_ = page_top;
}

double PdfDocument::page_bottom() const {
    return page_height - (footer_.empty() ? foot_height_without : foot_height);
}

void PdfDocument::end_page() {
    cairo_t* context = inside_->context.get();
    if (footer_.empty()) {
        cairo_show_page(context);
        return;
    }
    CairoCanvas canvas(context);
    canvas.line({margin, page_height - 48}, {page_width - margin, page_height - 48},
                {0.4, Ink::faint, false});
    y_ = page_height - 44;
    show(laid_out(footer_, 7, false, text_width - 50).get(), margin, Ink::quiet);
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
    return y_ + points <= page_bottom();
}

void PdfDocument::space(double points) {
    y_ += points;
}

TextLayout PdfDocument::set_anew(std::string_view text, double size, bool bold,
                                 double width) const {
    TextLayout layout(pango_layout_copy(inside_->layout.get()));
    set_text(layout.get(), text, size, bold);
    pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
    return layout;
}

TextLayout PdfDocument::laid_out(std::string_view text, double size, bool bold, double width) {
    if (!trial_) {
        return set_anew(text, size, bold, width);
    }
    TextLayout& tried = tried_[{size, bold, width, std::string(text)}];
    if (!tried) {
        tried = set_anew(text, size, bold, width);
    }
    return TextLayout(static_cast<PangoLayout*>(g_object_ref(tried.get())));
}

void PdfDocument::show(PangoLayout* layout, double x, Ink ink) {
    if (trial_) {
        return;  // where it stands is told by its height alone
    }
    cairo_t* context = inside_->context.get();
    const Colour c = colour_of(ink);
    cairo_set_source_rgb(context, c.red / 255.0, c.green / 255.0, c.blue / 255.0);
    cairo_move_to(context, x, y_);
    pango_cairo_show_layout(context, layout);
}

void PdfDocument::block(const char* tag, PangoLayout* layout, double indent, Ink ink) {
    const double height = height_of(layout);
    need(std::min(height, page_bottom() - page_top));
    const Tag tagged(inside_->context.get(), tag);
    show(layout, margin + indent, ink);
    y_ += height;
}

void PdfDocument::block(const char* tag, std::string_view text, double size, bool bold, Ink ink) {
    block(tag, laid_out(text, size, bold, text_width).get(), 0, ink);
}

void PdfDocument::heading(int level, std::string_view text) {
    constexpr double sizes[] = {17, 12.5, 10};
    const double size = scale_ * sizes[std::clamp(level, 1, 3) - 1];
    space(gaps_ * scale_ * (level == 1 ? 0 : level == 2 ? 9 : 4));
    need(size * 4);  // not alone at the foot of a page
    block(level == 1   ? "H1"
          : level == 2 ? "H2"
                       : "H3",
          text, size, true, level == 3 ? Ink::accent : Ink::text);
    space(gaps_ * (level == 1 ? 3 : 1));
}

void PdfDocument::paragraph(std::string_view text, double size, bool bold, Ink ink) {
    block("P", text, scale_ * size, bold, ink);
    space(gaps_ * scale_ * 2.5);
}

void PdfDocument::bullets(const std::vector<std::string>& texts, double usual_size) {
    cairo_t* context = inside_->context.get();
    const double size = scale_ * usual_size;
    constexpr double indent = 12;
    std::size_t next = 0;
    while (next < texts.size()) {
        TextLayout layout = laid_out(texts[next], size, false, text_width - indent);
        need(height_of(layout.get()));
        const Tag list(context, "L");
        // What finds no room goes on in a list of its own on the next page.
        for (bool first = true; first || has_room(height_of(layout.get())); first = false) {
            const Tag item(context, "LI");
            CairoCanvas canvas(context);
            canvas.circle({margin + 4, y_ + 0.62 * size * line_spacing}, 0.8, Fill::none,
                          {1, Ink::quiet, false});
            block("LBody", layout.get(), indent, Ink::text);
            space(gaps_);
            if (++next == texts.size()) {
                break;
            }
            layout = laid_out(texts[next], size, false, text_width - indent);
        }
        if (next < texts.size()) {
            y_ = page_bottom();
        }
    }
    space(gaps_ * scale_ * 1.5);
}

void PdfDocument::figure(const Figure& figure, bool caption) {
    const TextLayout words = laid_out(figure.alternative, 8.5, false, text_width);
    need(figure.height + (caption ? height_of(words.get()) + 4 : 0) + 6);
    cairo_t* context = inside_->context.get();
    if (!trial_) {
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
        block("Caption", words.get(), 0, Ink::quiet);
    }
    space(6);
}

std::vector<TextLayout> PdfDocument::laid_out_row(const std::vector<std::string>& cells,
                                                  const std::vector<double>& shares, double size,
                                                  bool bold) {
    std::vector<TextLayout> row;
    row.reserve(cells.size());
    for (std::size_t c = 0; c < cells.size(); ++c) {
        row.push_back(laid_out(cells[c], size, bold, shares[c] * text_width - cell_gap));
    }
    return row;
}

void PdfDocument::table_row(const char* cell_tag, const std::vector<TextLayout>& cells,
                            const std::vector<double>& shares, const TableLook& look) {
    cairo_t* context = inside_->context.get();
    const double top = y_;
    const double inset = look.to_write_in ? cell_gap / 2 : 0;
    {
        const Tag row(context, "TR");
        double x = margin;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const Tag cell(context, c == 0 ? "TH" : cell_tag);
            show(cells[c].get(), x + inset, Ink::text);
            x += shares[c] * text_width;
        }
    }
    y_ += std::max(row_height_of(cells) + 2, look.row_height);
    CairoCanvas canvas(context);
    if (look.to_write_in) {
        double x = margin;
        for (const double share : shares) {
            canvas.frame(x, top, share * text_width, y_ - top, {0.5, Ink::line, false});
            x += share * text_width;
        }
        return;
    }
    canvas.line({margin, y_}, {page_width - margin, y_}, {0.3, Ink::faint, false});
    y_ += 2;
}

void PdfDocument::table(const std::vector<std::string>& columns, const std::vector<double>& shares,
                        const std::vector<std::vector<std::string>>& rows) {
    table(columns, shares, rows, {});
}

void PdfDocument::table(const std::vector<std::string>& columns, const std::vector<double>& shares,
                        const std::vector<std::vector<std::string>>& rows, const TableLook& look) {
    const double size = look.to_write_in ? scale_ * look.size : look.size;
    const std::vector<TextLayout> titles = laid_out_row(columns, shares, size, true);
    const TableLook titles_look{look.size, 0, look.to_write_in};
    const auto height = [&](const std::vector<TextLayout>& row) {
        return std::max(row_height_of(row) + 4, look.row_height);
    };
    std::size_t next = 0;
    while (next < rows.size()) {
        std::vector<TextLayout> row = laid_out_row(rows[next], shares, size, false);
        need(row_height_of(titles) + height(row) + 4);
        const Tag tagged(inside_->context.get(), "Table");
        table_row("TH", titles, shares, titles_look);
        // What finds no room goes on on the next page, under its titles again.
        for (bool first = true; first || has_room(height(row)); first = false) {
            table_row("TD", row, shares, look);
            if (++next == rows.size()) {
                break;
            }
            row = laid_out_row(rows[next], shares, size, false);
        }
        if (next < rows.size()) {
            y_ = page_bottom();
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
