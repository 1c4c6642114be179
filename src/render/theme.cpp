#include "render/theme.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace tracewright {

namespace {

double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

constexpr Colour paper{255, 255, 255};

}  // namespace

double Colour::luminance() const {
    return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

std::string Colour::hex() const {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", red, green, blue);
    return text;
}

double contrast(const Colour& a, const Colour& b) {
    const auto [low, high] = std::minmax({a.luminance(), b.luminance()});
    return (high + 0.05) / (low + 0.05);
}

Colour colour_of(Ink ink) {
    switch (ink) {
        case Ink::text:
            return {31, 36, 42};
        case Ink::quiet:
            return {88, 95, 105};
        case Ink::line:
            return {96, 104, 114};
        case Ink::faint:
            return {205, 208, 212};
        case Ink::low:
            return {37, 66, 110};
        case Ink::high:
            return {128, 84, 6};
        case Ink::very_high:
            return {84, 54, 26};
        case Ink::accent:
            return {22, 77, 92};
        case Ink::paper:
            return paper;
    }
    return {};
}

Pattern pattern_of(Fill fill) {
    using Kind = Pattern::Kind;
    switch (fill) {
        case Fill::very_low:
            return {{118, 146, 186}, Kind::hatch, {20, 38, 72}, 3.2, 1.3};
        case Fill::low:
            return {{205, 217, 233}, Kind::hatch, {58, 91, 138}, 6.5, 0.9};
        case Fill::in_range:
            return {{233, 229, 219}, Kind::plain, {}, 0, 0};
        case Fill::high:
            return {{240, 220, 168}, Kind::dots, {138, 94, 12}, 5.5, 0.8};
        case Fill::very_high:
            return {{112, 77, 46}, Kind::dots, {243, 228, 205}, 3.4, 0.75};
        case Fill::outer_ribbon:
            return {{226, 231, 234}, Kind::plain, {}, 0, 0};
        case Fill::inner_ribbon:
            return {{180, 194, 201}, Kind::plain, {}, 0, 0};
        case Fill::suspect:
            return {{250, 250, 250}, Kind::hatch, {120, 120, 120}, 4, 0.5};
        case Fill::lane:
            return {{246, 246, 244}, Kind::plain, {}, 0, 0};
        case Fill::paper:
            return {paper, Kind::plain, {}, 0, 0};
        case Fill::none:
            break;
    }
    return {{0, 0, 0, 0}, Kind::plain, {}, 0, 0};
}

}  // namespace tracewright
