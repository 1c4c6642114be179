#pragma once

#include <string>
#include <string_view>

namespace tracewright {

/// A PDF with its language told, marked as tagged and its title shown: an update appended to the
/// file (ISO 32000-1, 7.5.6), since cairo 1.16 can't set them. Comes back unchanged if its
/// catalogue is not where it should be.
std::string with_language(std::string pdf, std::string_view language);

}  // namespace tracewright
