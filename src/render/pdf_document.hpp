#pragma once

#include "render/cairo_canvas.hpp"
#include "render/figure.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Pages of A4 filled from top to bottom, tagged for reading aloud. Text wraps; what does not fit
/// goes to the next page; nothing is cut off.
class PdfDocument {
  public:
    /// `created`: ISO 8601, printed into the file so that the same content gives the same bytes.
    /// A trial is laid out like the file but written nowhere: for counting its pages.
    enum class Output { file, trial };
    PdfDocument(std::string title, const std::string& created, std::string footer,
                Output output = Output::file);
    ~PdfDocument();
    PdfDocument(const PdfDocument&) = delete;
    PdfDocument& operator=(const PdfDocument&) = delete;

    void heading(int level, std::string_view text);
    void paragraph(std::string_view text, double size = 10, bool bold = false, Ink ink = Ink::text);
    void bullets(const std::vector<std::string>& texts);
    void figure(const Figure& figure, bool caption = true);
    /// Columns by their shares of the width. The header row is repeated on each page.
    void table(const std::vector<std::string>& columns, const std::vector<double>& shares,
               const std::vector<std::vector<std::string>>& rows);
    void space(double points);
    void new_page();
    /// Goes to the next page unless this much is free.
    void need(double points);

    /// Sizes of text and gaps from here on, as a share of the usual ones; figures and tables stay.
    void set_scale(double scale) { scale_ = scale; }

    int pages() const { return page_; }
    /// The finished file; empty for a trial. Called once.
    std::string bytes();

  private:
    struct Inside;

    TextLayout laid_out(std::string_view text, double size, bool bold, double width);
    void show(PangoLayout* layout, double x, Ink ink);
    void block(const char* tag, PangoLayout* layout, double indent, Ink ink);
    void block(const char* tag, std::string_view text, double size, bool bold, Ink ink);
    std::vector<TextLayout> laid_out_row(const std::vector<std::string>& cells,
                                         const std::vector<double>& shares, bool bold);
    void table_row(const char* cell_tag, const std::vector<TextLayout>& cells,
                   const std::vector<double>& shares);
    bool has_room(double points) const;
    void end_page();
    void begin_page();

    std::string title_;
    std::string footer_;
    std::string bytes_;
    std::unique_ptr<Inside> inside_;
    std::vector<std::string> figure_texts_;
    double scale_ = 1;
    double y_ = 0;
    int page_ = 0;
};

}  // namespace tracewright
