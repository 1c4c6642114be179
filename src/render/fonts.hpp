#pragma once

#include <string>
#include <string_view>

namespace tracewright {

/// The font that text is laid out with here and its version: "Inter 4.000". Where the house's font
/// isn't installed, the one that stands in for it. Lengths of text, and so page breaks, follow from
/// it.
std::string font_and_version();

/// How many letters of a text have no shape in any font installed here: in print they are boxes.
int letters_without_shape(std::string_view text);

}  // namespace tracewright
