// What a paper has to write on, or frames: members of PdfDocument beside its running text.
#include "render/pdf_document.hpp"
#include "render/pdf_page.hpp"

#include <algorithm>
#include <string>

namespace tracewright {

namespace {

constexpr double box_padding = 8;
constexpr double line_to_write = 22;  // high enough for a hand
constexpr Stroke pen_line{0.7, Ink::line, false};

}  // namespace

void PdfDocument::box(std::string_view title, const std::vector<std::string>& sentences,
                      double size) {
    const double inner = text_width - 2 * box_padding;
    std::vector<TextLayout> parts;
    if (!title.empty()) {
        parts.push_back(laid_out(title, scale_ * size, true, inner));
    }
    for (const std::string& sentence : sentences) {
        parts.push_back(laid_out(sentence, scale_ * size, false, inner));
    }
    double height = 2 * box_padding;
    for (const TextLayout& part : parts) {
        height += height_of(part.get()) + 4 * gaps_;
    }
    space(4 * gaps_);
    need(height);
    CairoCanvas canvas(inside_->context.get());
    canvas.frame(margin, y_, text_width, height, {1.2, Ink::text, false});
    y_ += box_padding;
    for (const TextLayout& part : parts) {
        block("P", part.get(), box_padding, Ink::text);
        space(4 * gaps_);
    }
    y_ += box_padding;
    space(6 * gaps_);
}

void PdfDocument::room_to_write(std::string_view label, int lines, double size) {
    const TextLayout words = laid_out(label, scale_ * size, false, text_width);
    const double words_high = label.empty() ? 0 : height_of(words.get());
    need(words_high + std::min(lines, 3) * line_to_write);
    if (!label.empty()) {
        block("P", words.get(), 0, Ink::text);
    }
    CairoCanvas canvas(inside_->context.get());
    for (int i = 0; i < lines; ++i) {
        need(line_to_write);
        y_ += line_to_write;
        canvas.line({margin, y_}, {page_width - margin, y_}, pen_line);
    }
    space(6 * gaps_);
}

void PdfDocument::zero_to_ten(std::string_view question, std::string_view at_0,
                              std::string_view at_10, double size) {
    constexpr double radius = 12;
    constexpr double step = 40;
    const double text = scale_ * size;
    const TextLayout words = laid_out(question, text, false, text_width);
    need(height_of(words.get()) + 2 * radius + text + 14);
    block("P", words.get(), 0, Ink::text);
    CairoCanvas canvas(inside_->context.get());
    y_ += radius + 4;
    for (int i = 0; i <= 10; ++i) {
        const Point centre{margin + radius + 2 + i * step, y_};
        canvas.circle(centre, radius, Fill::none, pen_line);
        canvas.text({centre.x, centre.y + 0.36 * text}, std::to_string(i),
                    {text, false, Anchor::middle, Ink::text});
    }
    y_ += radius + text + 1;
    canvas.text({margin, y_}, at_0, {text, false, Anchor::start, Ink::text});
    canvas.text({margin + 2 * radius + 4 + 10 * step, y_}, at_10,
                {text, false, Anchor::end, Ink::text});
    y_ += 6;
    space(8 * gaps_);
}

void PdfDocument::contact(std::string_view who, std::string_view telephone, double size) {
    const std::string words = telephone.empty() ? std::string(who) + ":"
                                                : std::string(who) + ": " + std::string(telephone);
    const TextLayout layout = laid_out(words, scale_ * size, true, text_width);
    if (telephone.empty()) {
        const double foot = y_ + height_of(layout.get()) + 4;
        need(height_of(layout.get()) + 8);
        y_ += 4;
        CairoCanvas canvas(inside_->context.get());
        const double from =
            margin + canvas.text_width(words, {scale_ * size, true, Anchor::start, Ink::text}) + 8;
        canvas.line({std::min(from, margin + 0.6 * text_width), foot}, {page_width - margin, foot},
                    pen_line);
    }
    block("P", layout.get(), 0, Ink::text);
    space(3 * gaps_);
}

}  // namespace tracewright
