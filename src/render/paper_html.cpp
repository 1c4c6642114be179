#include "render/paper_pages.hpp"

#include <fmt/format.h>

#include <stdexcept>

namespace tracewright {

namespace {

// Sizes in rem on the screen, where the reader sets them; in print at the reader's smallest.
constexpr const char* style = R"(
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;background:#f4f3ef;color:#1f242a;font:1.1rem/1.45 Inter,"Noto Sans",sans-serif}
.patterns{position:absolute}
main{max-width:44rem;margin:0 auto;padding:1.6rem clamp(1rem,5vw,3rem);background:#fff}
h1{font-size:1.7rem;line-height:1.2;margin:0 0 .6rem}
h2{font-size:1.25rem;line-height:1.25;margin:1.1rem 0 .3rem}
p{margin:.3rem 0}
.strong,.contact{font-weight:600}
ul{margin:.3rem 0 .3rem 1.2rem;padding:0}
figure{margin:.7rem 0;overflow-x:auto}
figure svg{width:100%;min-width:26rem;height:auto;display:block}
.fits svg{min-width:0}
figure:focus-visible,.wide:focus-visible{outline:3px solid #164d5c;outline-offset:2px}
.box{border:2px solid #1f242a;padding:.5rem .8rem;margin:.7rem 0}
.line{border-bottom:1px solid #606872;height:2rem}
.blank{display:inline-block;border-bottom:1px solid #606872;min-width:14rem}
.scale{display:flex;gap:.3rem;list-style:none;margin:.4rem 0 .2rem;padding:0;flex-wrap:wrap}
.scale li{border:1px solid #606872;border-radius:50%;width:2.1rem;height:2.1rem;display:grid;place-items:center}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;margin:.5rem 0}
th,td{text-align:left;vertical-align:top;padding:.25rem .5rem;border:1px solid #606872}
footer{margin-top:1rem;color:#585f69}
@media print{body{background:#fff}main{padding:0;max-width:none}
h1{font-size:1.5em}h2{font-size:1.2em;break-after:avoid}figure,.box,table{break-inside:avoid}figure svg{min-width:0}}
)";

constexpr double phone = 320;

std::string esc(std::string_view text) {
    return escaped_markup(text);
}

class Markup {
  public:
    explicit Markup(std::span<const Figure> figures) : figures_(figures) {}

    void operator()(const PaperHeading& heading) {
        html_ += "<h2>" + esc(heading.text) + "</h2>\n";
    }
    void operator()(const PaperSentence& sentence) {
        html_ += (sentence.strong ? "<p class=\"strong\">" : "<p>") + esc(sentence.text) + "</p>\n";
    }
    void operator()(const PaperList& list) {
        html_ += "<ul>";
        for (const std::string& item : list.items) {
            html_ += "<li>" + esc(item) + "</li>";
        }
        html_ += "</ul>\n";
    }
    void operator()(const PaperFigure& figure) {
        if (figure.place >= figures_.size()) {
            throw std::out_of_range("a figure of the paper was not given");
        }
        const Figure& drawn = figures_[figure.place];
        // What was drawn for a phone is not made broader than one.
        html_ += (drawn.width <= phone ? "<figure class=\"fits\">" : "<figure tabindex=\"0\">") +
                 svg_of(drawn, false) + "</figure>\n";
    }
    void operator()(const PaperBox& box) {
        html_ += "<div class=\"box\">";
        if (!box.title.empty()) {
            html_ += "<h2>" + esc(box.title) + "</h2>";
        }
        for (const std::string& sentence : box.sentences) {
            html_ += "<p>" + esc(sentence) + "</p>";
        }
        html_ += "</div>\n";
    }
    void operator()(const RoomToWrite& room) {
        html_ += "<div>" + (room.label.empty() ? "" : "<p>" + esc(room.label) + "</p>");
        for (int i = 0; i < room.lines; ++i) {
            html_ += "<div class=\"line\"></div>";
        }
        html_ += "</div>\n";
    }
    void operator()(const ZeroToTen& scale) {
        html_ += "<div><p>" + esc(scale.question) + "</p><ol class=\"scale\" start=\"0\">";
        for (int i = 0; i <= 10; ++i) {
            html_ += fmt::format("<li>{}</li>", i);
        }
        html_ += "</ol><p>0: " + esc(scale.at_0) + ". 10: " + esc(scale.at_10) + ".</p></div>\n";
    }
    void operator()(const PaperTable& table) {
        html_ += "<div class=\"wide\" tabindex=\"0\"><table><thead><tr>";
        for (const std::string& column : table.columns) {
            html_ += "<th scope=\"col\">" + esc(column) + "</th>";
        }
        html_ += "</tr></thead><tbody>\n";
        for (const auto& row : table.rows) {
            html_ += fmt::format("<tr style=\"height:{:.0f}pt\">", table.row_height);
            for (std::size_t i = 0; i < row.size(); ++i) {
                html_ += (i == 0 ? "<th scope=\"row\">" : "<td>") + esc(row[i]) +
                         (i == 0 ? "</th>" : "</td>");
            }
            html_ += "</tr>\n";
        }
        html_ += "</tbody></table></div>\n";
    }
    void operator()(const PaperContact& contact) {
        html_ += "<p class=\"contact\">" + esc(contact.who) + ": " +
                 (contact.telephone.empty() ? "<span class=\"blank\">&#160;</span>"
                                            : esc(contact.telephone)) +
                 "</p>\n";
    }

    std::string take() { return std::move(html_); }

  private:
    std::span<const Figure> figures_;
    std::string html_;
};

}  // namespace

std::string paper_html(const Paper& paper, std::span<const Figure> figures) {
    Markup markup(figures);
    for (const PaperBlock& block : paper.blocks) {
        std::visit(markup, block);
    }
    const std::string title = esc(paper.title);
    std::string html =
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n<title>" +
        title + "</title>\n<style>" + style +
        fmt::format("@media print{{body{{font-size:{:.0f}pt}}}}", smallest_text(paper.reader)) +
        "</style>\n</head>\n<body>\n";
    if (!figures.empty()) {
        html += svg_patterns();
    }
    html += "<main>\n<h1>" + title + "</h1>\n" + markup.take();
    if (!paper.foot.empty()) {
        html += "<footer><p>" + esc(paper.foot) + "</p></footer>\n";
    }
    return html + "</main>\n</body>\n</html>\n";
}

}  // namespace tracewright
