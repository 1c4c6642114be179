#pragma once

#include "render/canvas.hpp"

#include <cstdint>
#include <string>

namespace tracewright {

struct Colour {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    double opacity = 1;

    /// Relative luminance, 0 to 1 (WCAG 2.2).
    double luminance() const;
    /// "#rrggbb".
    std::string hex() const;
};

/// WCAG 2.2 contrast ratio, 1 to 21.
double contrast(const Colour& a, const Colour& b);

/// What a filled area shows: a ground, and lines or dots on it.
struct Pattern {
    enum class Kind { plain, hatch, dots };
    Colour ground;
    Kind kind = Kind::plain;
    Colour mark;
    double spacing = 0;  ///< between lines or dots, points
    double size = 0;     ///< line width or dot radius, points
};

Colour colour_of(Ink ink);
Pattern pattern_of(Fill fill);

inline constexpr const char* font_family = "Inter";

}  // namespace tracewright
