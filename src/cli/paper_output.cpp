#include "cli/paper_output.hpp"

#include "render/paper_pages.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <filesystem>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

class Printer {
  public:
    explicit Printer(std::ostream& out) : out_(out) {}

    void operator()(const PaperHeading& heading) { out_ << "\n" << heading.text << "\n"; }
    void operator()(const PaperSentence& sentence) { out_ << "  " << sentence.text << "\n"; }
    void operator()(const PaperList& list) {
        for (const std::string& item : list.items) {
            out_ << "  - " << item << "\n";
        }
    }
    void operator()(const PaperFigure&) { out_ << "  (the picture)\n"; }
    void operator()(const PaperBox& box) {
        out_ << "\n[" << box.title << "]\n";
        for (const std::string& sentence : box.sentences) {
            out_ << "  " << sentence << "\n";
        }
    }
    void operator()(const RoomToWrite& room) { out_ << "  " << room.label << " ____\n"; }
    void operator()(const ZeroToTen& scale) {
        out_ << "  " << scale.question << " 0 (" << scale.at_0 << ") to 10 (" << scale.at_10
             << ")\n";
    }
    void operator()(const PaperTable& table) {
        print_row(table.columns);
        for (const auto& row : table.rows) {
            print_row(row);
        }
    }
    void operator()(const PaperContact& contact) {
        out_ << "  " << contact.who << ": "
             << (contact.telephone.empty() ? "____" : contact.telephone) << "\n";
    }

  private:
    void print_row(const std::vector<std::string>& cells) {
        out_ << "  ";
        for (std::size_t i = 0; i < cells.size(); ++i) {
            out_ << (i == 0 ? "" : " | ") << cells[i];
        }
        out_ << "\n";
    }

    std::ostream& out_;
};

bool written(const fs::path& path, const std::string& bytes, const Streams& streams) {
    const bool done = write_whole_file(path.string(), std::string_view(bytes)).has_value();
    if (!done) {
        streams.err << "tracewright: found no way to write " << path.filename().string()
                    << " there, expected a folder with room\n";
    }
    return done;
}

}  // namespace

void print_paper(const Paper& paper, std::ostream& out) {
    out << paper.title << "\n";
    Printer printer(out);
    for (const PaperBlock& block : paper.blocks) {
        std::visit(printer, block);
    }
}

Exit write_paper(const Paper& paper, std::span<const Figure> figures, const std::string& folder,
                 const std::string& name, const Streams& streams) {
    if (folder.empty()) {
        return Exit::done;
    }
    const auto pdf = paper_pdf(paper, figures);
    if (!pdf) {
        streams.err << "tracewright: " << pdf.error().sentence() << "\n";
        return Exit::cannot_answer;
    }
    std::error_code error;
    fs::create_directories(folder, error);
    const bool both =
        written(fs::path(folder) / (name + ".html"), paper_html(paper, figures), streams) &&
        written(fs::path(folder) / (name + ".pdf"), *pdf, streams);
    return both ? Exit::done : Exit::bad_input;
}

}  // namespace tracewright
