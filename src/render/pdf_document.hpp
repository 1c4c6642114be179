#pragma once

#include "render/cairo_canvas.hpp"
#include "render/figure.hpp"

#include <map>
#include <string>
#include <tuple>
#include <vector>

namespace tracewright {

/// Pages of A4 filled from top to bottom, tagged for reading aloud. Text wraps; what does not fit
/// goes to the next page; nothing is cut off.
class PdfDocument {
  public:
    /// `created`: ISO 8601, printed into the file so that the same content gives the same bytes.
    /// `footer` stands at the foot of each page with its number; empty: neither does.
    /// A trial is laid out like the file but written nowhere: for counting its pages.
    enum class Output { file, trial };
    PdfDocument(std::string title, const std::string& created, std::string footer,
                Output output = Output::file);
    ~PdfDocument();
    PdfDocument(const PdfDocument&) = delete;
    PdfDocument& operator=(const PdfDocument&) = delete;

    void heading(int level, std::string_view text);
    void paragraph(std::string_view text, double size = 10, bool bold = false, Ink ink = Ink::text);
    void bullets(const std::vector<std::string>& texts, double size = 8.5);
    void figure(const Figure& figure, bool caption = true);
    struct TableLook {
        double size = 8;
        double row_height = 0;     ///< at least
        bool to_write_in = false;  ///< a line round every cell
    };
    /// Columns by their shares of the width. The header row is repeated on each page.
    void table(const std::vector<std::string>& columns, const std::vector<double>& shares,
               const std::vector<std::vector<std::string>>& rows);
    void table(const std::vector<std::string>& columns, const std::vector<double>& shares,
               const std::vector<std::vector<std::string>>& rows, const TableLook& look);
    /// Sentences in a frame, kept together on one page.
    void box(std::string_view title, const std::vector<std::string>& sentences, double size);
    /// Empty lines under a label, to write on.
    void room_to_write(std::string_view label, int lines, double size);
    /// The numbers 0 to 10, one to be ringed.
    void zero_to_ten(std::string_view question, std::string_view at_0, std::string_view at_10,
                     double size);
    /// Whom to ring; without a number a blank line.
    void contact(std::string_view who, std::string_view telephone, double size);
    void space(double points);
    void new_page();
    /// Goes to the next page unless this much is free.
    void need(double points);

    /// Sizes of text and gaps from here on, as a share of the usual ones; figures and tables of the
    /// usual look stay.
    void set_scale(double scale) { scale_ = scale; }
    /// From line to line of one text, as a share of the font's own height; 1.25 without.
    void set_line_spacing(double spacing);
    /// Gaps alone, beside what set_scale says of them.
    void set_gaps(double gaps) { gaps_ = gaps; }

    int pages() const { return page_; }
    /// A trial begins anew on its first page. Texts it has set before are not set again.
    void try_again();
    /// The finished file; empty for a trial. Called once.
    std::string bytes();

  private:
    struct Inside {
        CairoSurface surface;
        CairoContext context;
        TextLayout layout;
    };

    TextLayout set_anew(std::string_view text, double size, bool bold, double width) const;
    TextLayout laid_out(std::string_view text, double size, bool bold, double width);
    void show(PangoLayout* layout, double x, Ink ink);
    void block(const char* tag, PangoLayout* layout, double indent, Ink ink);
    void block(const char* tag, std::string_view text, double size, bool bold, Ink ink);
    std::vector<TextLayout> laid_out_row(const std::vector<std::string>& cells,
                                         const std::vector<double>& shares, double size, bool bold);
    void table_row(const char* cell_tag, const std::vector<TextLayout>& cells,
                   const std::vector<double>& shares, const TableLook& look);
    double page_bottom() const;
    bool has_room(double points) const;
    void end_page();
    void begin_page();

    std::string title_;
    std::string footer_;
    std::string bytes_;
    std::unique_ptr<Inside> inside_;
    std::vector<std::string> figure_texts_;
    /// A trial's texts by what they are set in: size, boldness, width.
    std::map<std::tuple<double, bool, double, std::string>, TextLayout> tried_;
    bool trial_ = false;
    double scale_ = 1;
    double gaps_ = 1;
    double y_ = 0;
    int page_ = 0;
};

}  // namespace tracewright
