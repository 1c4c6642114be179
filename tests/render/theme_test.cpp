#include "render/theme.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

using namespace tracewright;

namespace {

constexpr std::array band_fills{Fill::very_low, Fill::low, Fill::in_range, Fill::high,
                                Fill::very_high};

// Share of an area that the marks of a pattern cover.
double covered(const Pattern& p) {
    switch (p.kind) {
        case Pattern::Kind::hatch:
            return p.size / p.spacing;
        case Pattern::Kind::dots:
            return std::numbers::pi * p.size * p.size / (p.spacing * p.spacing);
        case Pattern::Kind::plain:
            break;
    }
    return 0;
}

double grey(const Pattern& p) {
    return p.ground.luminance() * (1 - covered(p)) + p.mark.luminance() * covered(p);
}

}  // namespace

// WCAG 2.2, 1.4.3: text keeps a contrast of at least 4.5 to 1 on its ground.
TEST(Theme, text_inks_can_be_read_on_paper_and_lanes) {
    for (const Ink ink :
         {Ink::text, Ink::quiet, Ink::accent, Ink::low, Ink::high, Ink::very_high}) {
        EXPECT_GE(contrast(colour_of(ink), colour_of(Ink::paper)), 4.5) << static_cast<int>(ink);
    }
    for (const Fill fill : {Fill::lane, Fill::inner_ribbon}) {
        EXPECT_GE(contrast(colour_of(Ink::text), pattern_of(fill).ground), 4.5);
    }
}

// The formula of WCAG 2.2: black on white is 21 to 1.
TEST(Theme, contrast_is_the_published_ratio) {
    EXPECT_NEAR(contrast({0, 0, 0}, {255, 255, 255}), 21.0, 1e-9);
    EXPECT_NEAR(contrast({119, 119, 119}, {255, 255, 255}), 4.48, 0.01);
}

TEST(Theme, the_five_bands_differ_in_grey_or_by_their_pattern) {
    for (std::size_t i = 0; i < band_fills.size(); ++i) {
        for (std::size_t j = i + 1; j < band_fills.size(); ++j) {
            const Pattern a = pattern_of(band_fills[i]);
            const Pattern b = pattern_of(band_fills[j]);
            const bool by_kind = a.kind != b.kind;
            const bool by_grey = std::abs(grey(a) - grey(b)) > 0.1;
            EXPECT_TRUE(by_kind || by_grey) << i << " " << j;
        }
    }
}

TEST(Theme, neighbouring_bands_differ_by_their_pattern) {
    EXPECT_GT(covered(pattern_of(Fill::very_low)), 2 * covered(pattern_of(Fill::low)));
    EXPECT_GT(covered(pattern_of(Fill::very_high)), 2 * covered(pattern_of(Fill::high)));
    EXPECT_EQ(pattern_of(Fill::in_range).kind, Pattern::Kind::plain);
}
