#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A PDF with its language told, marked as tagged and its title shown: an update appended to the
/// file (ISO 32000-1, 7.5.6), since cairo 1.16 can't set them. Comes back unchanged if its
/// catalogue is not where it should be. `figure_texts` become what a reader hears in place of the
/// figures, in their order; left out unless there are as many figures as texts.
std::string with_language(std::string pdf, std::string_view language,
                          const std::vector<std::string>& figure_texts = {});

}  // namespace tracewright
