#pragma once

#include <span>
#include <string_view>
#include <utility>

namespace tracewright {

/// What the audit's stable word for a deed says after a coach's name: "import_stored" is "kept a
/// file or diary entries". A word that is not known stands for itself.
std::string_view words_of_deed(std::string_view deed);

/// All that are known.
std::span<const std::pair<std::string_view, std::string_view>> worded_deeds();

}  // namespace tracewright
