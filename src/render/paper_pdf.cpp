#include "render/paper_pages.hpp"
#include "render/pdf_document.hpp"

#include <array>
#include <optional>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr double base_size = 10;  // of a paragraph at scale 1

// How a paper is set: its text, of the usual gaps a share, from line to line of the font's height a
// share.
struct Setting {
    double text = 12;  // points
    double gaps = 1;
    double lines = 1.25;
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
        pdf_.space(5);
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
    pdf.set_line_spacing(setting.lines);
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

// From roomy to tight. Larger text goes before wider gaps, but a page that breathes before the
// very largest.
std::array<Setting, 4> settings(double smallest) {
    return {{{smallest + 2, 1.6, 1.25},
             {smallest + 1, 1, 1.25},
             {smallest, 0.5, 1.12},
             {smallest, 0.1, 0.96}}};
}

// The file, if it is one page.
std::optional<std::string> one_sheet(const Paper& paper, std::span<const Figure> figures,
                                     const Setting& setting) {
    PdfDocument pdf = document(paper, PdfDocument::Output::file);
    lay_out(pdf, paper, figures, setting);
    return pdf.pages() == 1 ? std::optional(pdf.bytes()) : std::nullopt;
}

// By the roomiest setting that is one page, tried from the second on, which most papers take.
std::optional<std::string> roomiest_sheet(const Paper& paper, std::span<const Figure> figures) {
    const auto all = settings(smallest_text(paper.reader));
    const bool usual_fits = pages_of(paper, figures, all[1]) == 1;
    std::optional<std::string> sheet = one_sheet(paper, figures, all[usual_fits ? 0 : 2]);
    return sheet ? sheet : one_sheet(paper, figures, all[usual_fits ? 1 : 3]);
}

}  // namespace

double smallest_text(PaperReader reader) {
    return reader == PaperReader::client ? 12 : 10;
}

std::string PaperTooLong::sentence() const {
    return "found text for " + std::to_string(pages) +
           " pages, expected one: say it in fewer words; nothing was printed or cut off";
}

tl::expected<std::string, PaperTooLong> paper_pdf(const Paper& paper,
                                                  std::span<const Figure> figures) {
    if (paper.one_page) {
        if (auto sheet = roomiest_sheet(paper, figures)) {
            return std::move(*sheet);
        }
        if (!paper.may_go_on) {
            const Setting tightest = settings(smallest_text(paper.reader)).back();
            return tl::make_unexpected(PaperTooLong{pages_of(paper, figures, tightest)});
        }
    }
    PdfDocument pdf = document(paper, PdfDocument::Output::file);
    lay_out(pdf, paper, figures, {smallest_text(paper.reader) + 0.5, 1, 1.25});
    return pdf.bytes();
}

}  // namespace tracewright
