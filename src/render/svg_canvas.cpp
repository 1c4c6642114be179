#include "render/figure.hpp"
#include "render/text_measure.hpp"
#include "render/theme.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

constexpr Fill all_fills[] = {
    Fill::very_low,     Fill::low,          Fill::in_range, Fill::high, Fill::very_high,
    Fill::outer_ribbon, Fill::inner_ribbon, Fill::suspect,  Fill::lane, Fill::paper};

std::string number(double value) {
    std::string text = fmt::format("{:.2f}", value);
    while (text.ends_with('0')) {
        text.pop_back();
    }
    if (text.ends_with('.')) {
        text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

std::string pattern_id(Fill fill) {
    return "tw-fill-" + std::to_string(static_cast<int>(fill));
}

std::string pattern_definition(Fill fill) {
    const Pattern p = pattern_of(fill);
    if (p.kind == Pattern::Kind::plain) {
        return {};
    }
    std::string mark;
    std::string turn;
    if (p.kind == Pattern::Kind::hatch) {
        turn = " patternTransform=\"rotate(45)\"";
        mark = fmt::format("<rect width=\"{}\" height=\"{}\" fill=\"{}\"/>", number(p.size),
                           number(p.spacing), p.mark.hex());
    } else {
        mark = fmt::format("<circle cx=\"{0}\" cy=\"{0}\" r=\"{1}\" fill=\"{2}\"/>",
                           number(p.spacing / 2), number(p.size), p.mark.hex());
    }
    return fmt::format(
        "<pattern id=\"{}\" width=\"{}\" height=\"{}\" patternUnits=\"userSpaceOnUse\"{}>"
        "<rect width=\"{}\" height=\"{}\" fill=\"{}\"/>{}</pattern>",
        pattern_id(fill), number(p.spacing), number(p.spacing), turn, number(p.spacing),
        number(p.spacing), p.ground.hex(), mark);
}

std::string definitions() {
    std::string text = "<defs>";
    for (const Fill fill : all_fills) {
        text += pattern_definition(fill);
    }
    return text + "</defs>";
}

class SvgCanvas final : public Canvas {
  public:
    void polyline(std::span<const Point> points, const Stroke& stroke) override {
        svg_ += fmt::format(
            "<polyline points=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"{}/>",
            list(points), colour_of(stroke.ink).hex(), number(stroke.width),
            stroke.dashed ? " stroke-dasharray=\"4 3\"" : "");
    }

    void polygon(std::span<const Point> points, Fill fill) override {
        svg_ += fmt::format("<polygon points=\"{}\" fill=\"{}\"/>", list(points), paint(fill));
    }

    void circle(Point centre, double radius, Fill fill, const Stroke& stroke) override {
        svg_ += fmt::format(
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{}\"/>",
            number(centre.x), number(centre.y), number(radius), paint(fill),
            colour_of(stroke.ink).hex(), number(stroke.width));
    }

    void text(Point at, std::string_view text, const TextStyle& style) override {
        const char* anchor = style.anchor == Anchor::start    ? ""
                             : style.anchor == Anchor::middle ? " text-anchor=\"middle\""
                                                              : " text-anchor=\"end\"";
        svg_ += fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\"{}{} fill=\"{}\">{}</text>",
                            number(at.x), number(at.y), number(style.size),
                            style.bold ? " font-weight=\"600\"" : "", anchor,
                            colour_of(style.ink).hex(), escaped_markup(text));
    }

    double text_width(std::string_view text, const TextStyle& style) override {
        return measure_.width(text, style);
    }

    const std::string& svg() const { return svg_; }

  private:
    static std::string list(std::span<const Point> points) {
        std::string text;
        for (const Point& p : points) {
            text += (text.empty() ? "" : " ") + number(p.x) + "," + number(p.y);
        }
        return text;
    }

    static std::string paint(Fill fill) {
        if (fill == Fill::none) {
            return "none";
        }
        const Pattern p = pattern_of(fill);
        return p.kind == Pattern::Kind::plain ? p.ground.hex() : "url(#" + pattern_id(fill) + ")";
    }

    std::string svg_;
    TextMeasure measure_;
};

}  // namespace

std::string escaped_markup(std::string_view text) {
    std::string result;
    for (const char c : text) {
        switch (c) {
            case '&':
                result += "&amp;";
                break;
            case '<':
                result += "&lt;";
                break;
            case '>':
                result += "&gt;";
                break;
            case '"':
                result += "&quot;";
                break;
            default:
                // Control characters may not stand in markup at all.
                result += static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t' ? ' ' : c;
        }
    }
    return result;
}

std::string svg_patterns() {
    return "<svg class=\"patterns\" width=\"0\" height=\"0\" aria-hidden=\"true\" "
           "focusable=\"false\">" +
           definitions() + "</svg>";
}

std::string svg_of(const Figure& figure, bool own_patterns) {
    SvgCanvas canvas;
    figure.draw(canvas);
    return fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {} {}\" role=\"img\" "
        "font-family=\"{}, 'Noto Sans', sans-serif\"><title>{}</title><desc>{}</desc>{}{}</svg>",
        number(figure.width), number(figure.height), font_family, escaped_markup(figure.title),
        escaped_markup(figure.alternative), own_patterns ? definitions() : "", canvas.svg());
}

}  // namespace tracewright
