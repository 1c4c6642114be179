#pragma once

#include "coaching/paper.hpp"
#include "render/figure.hpp"

#include <span>
#include <string>
#include <tl/expected.hpp>

namespace tracewright {

/// The smallest text of a paper in print, points: 12 for clients, 10 for all others.
double smallest_text(PaperReader reader);

/// Why a paper has no print: it must fit on one sheet and does not at its smallest text.
struct PaperTooLong {
    int pages = 0;
    std::string sentence() const;
};

/// The paper on A4, tagged, with title and language, fonts embedded. What must fit on one sheet is
/// set as large as fits, down to the reader's smallest text and narrow gaps; what still doesn't fit
/// is an error and never cut. The same paper gives the same bytes. Figures keep their size: their
/// texts should not be smaller than the reader's smallest either.
/// std::out_of_range where the paper asks for a figure that isn't given (a programmer's mistake).
tl::expected<std::string, PaperTooLong> paper_pdf(const Paper& paper,
                                                  std::span<const Figure> figures = {});

/// The same paper as one self-contained page: no script, nothing fetched, figures as inline SVG,
/// print style included.
std::string paper_html(const Paper& paper, std::span<const Figure> figures = {});

}  // namespace tracewright
