#include "render/paper_pages.hpp"
#include "render/pdf_document.hpp"

#include <array>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr double base_size = 10;  // of a paragraph at scale 1

// How a paper is set: its text and, of the usual ones, its gaps.
struct Setting {
    double text = 12;  // points
    double gaps = 1;
};

const Figure& figure_at(std::span<const Figure> figures, std::size_t place) {
    if (place >= figures.size()) {
        throw std::out_of_range("a figure of the paper was not given");
    }
    return figures[place];
}

class Layout {
  public:
    Layout(PdfDocument& pdf, std::span<const Figure> figures) : pdf_(pdf), figures_(figures) {}

    void operator()(const PaperHeading& heading) { pdf_.heading(2, heading.text); }
    void operator()(const PaperSentence& sentence) {
        pdf_.paragraph(sentence.text, base_size, sentence.strong);
    }
    void operator()(const PaperList& list) { pdf_.bullets(list.items, base_size); }
    void operator()(const PaperFigure& figure) {
        pdf_.figure(figure_at(figures_, figure.place), false);
    }
    void operator()(const PaperBox& box) { pdf_.box(box.title, box.sentences, base_size); }
    void operator()(const RoomToWrite& room) {
        pdf_.room_to_write(room.label, room.lines, base_size);
    }
    void operator()(const ZeroToTen& scale) {
        pdf_.zero_to_ten(scale.question, scale.at_0, scale.at_10, base_size);
    }
    void operator()(const PaperTable& table) {
        pdf_.table(table.columns, table.shares, table.rows, {base_size, table.row_height, true});
    }
    void operator()(const PaperContact& contact) {
        pdf_.contact(contact.who, contact.telephone, base_size);
    }

  private:
    PdfDocument& pdf_;
    std::span<const Figure> figures_;
};

void lay_out(PdfDocument& pdf, const Paper& paper, std::span<const Figure> figures,
             const Setting& setting) {
    pdf.set_scale(setting.text / base_size);
    pdf.set_gaps(setting.gaps);
    pdf.heading(1, paper.title);
    Layout layout(pdf, figures);
    for (const PaperBlock& block : paper.blocks) {
        std::visit(layout, block);
    }
}

PdfDocument document(const Paper& paper, PdfDocument::Output output) {
    return {paper.title, paper.made, paper.foot, output};
}

int pages_of(const Paper& paper, std::span<const Figure> figures, const Setting& setting) {
    PdfDocument trial = document(paper, PdfDocument::Output::trial);
    lay_out(trial, paper, figures, setting);
    return trial.pages();
}

// Larger text goes before wider gaps, but a page that breathes before the very largest.
std::array<Setting, 5> settings(double smallest) {
    return {{{smallest + 1.5, 1.2},
             {smallest + 1, 1},
             {smallest + 0.5, 0.8},
             {smallest, 0.7},
             {smallest, 0.35}}};
}

}  // namespace

double smallest_text(PaperReader reader) {
    return reader == PaperReader::client ? 12 : 10;
}

std::string PaperTooLong::sentence() const {
    return "found text for " + std::to_string(pages) +
           " pages, expected one: the paper is not printed, nothing is cut off";
}

tl::expected<std::string, PaperTooLong> paper_pdf(const Paper& paper,
                                                  std::span<const Figure> figures) {
    const double smallest = smallest_text(paper.reader);
    Setting chosen{smallest + 0.5, 1};
    if (paper.one_page) {
        int pages = 0;
        for (const Setting& setting : settings(smallest)) {
            pages = pages_of(paper, figures, setting);
            if (pages == 1) {
                chosen = setting;
                break;
            }
        }
        if (pages != 1) {
            return tl::make_unexpected(PaperTooLong{pages});
        }
    }
    PdfDocument pdf = document(paper, PdfDocument::Output::file);
    lay_out(pdf, paper, figures, chosen);
    return pdf.bytes();
}

}  // namespace tracewright
