#pragma once

#include "cli/streams.hpp"
#include "coaching/paper.hpp"
#include "render/figure.hpp"

#include <ostream>
#include <span>
#include <string>

namespace tracewright {

/// A paper's words, as text.
void print_paper(const Paper& paper, std::ostream& out);

/// Writes NAME.html and NAME.pdf into the folder; nothing where `folder` is empty. What is wrong is
/// said: a paper that doesn't fit on its one sheet is written as neither.
Exit write_paper(const Paper& paper, std::span<const Figure> figures, const std::string& folder,
                 const std::string& name, const Streams& streams);

}  // namespace tracewright
